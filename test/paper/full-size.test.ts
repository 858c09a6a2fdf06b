import { describe, expect, it } from 'vitest';
import { PAPERS, printJob } from '../../src/paper/index.ts';
import { chalkPlanes } from '../../src/tube/chalk.ts';
import type { Job } from '../../src/tube/job.ts';
import { drawnPages, EDGE, hasPoppler, type Picture, textsOff } from '../helpers/paper/off-page.ts';
import { readPdf } from '../helpers/paper/pdf.ts';
import { type DrawnLine, readPaths } from '../helpers/paper/pdf-paths.ts';
import { onPaper } from '../helpers/shop/on-paper.ts';
import { byBends, plainJob } from '../helpers/shop/plain-job.ts';

type Place = readonly [number, number];

/** Millimeters in a point: 72 to the inch (ISO 32000-1, 8.3.2.3), 25.4 mm to the inch. */
const MM = 25.4 / 72;
/** What may be off at full size, in mm. */
const CLOSE = 0.1;

const apart = ([a, b]: Place, [c, d]: Place) => Math.hypot(c - a, d - b);
const length = ({ places }: DrawnLine) => apart(places[0]!, places.at(-1)!) * MM;
const middle = ({ places }: DrawnLine): Place => {
	const [[a, b], [c, d]] = [places[0]!, places[1]!];
	return [(a + c) / 2, (b + d) / 2];
};

/** How much further up the page a line ends than it begins. */
const rise = ({ places }: DrawnLine) => places[0]![1] - places.at(-1)![1];

/** A tube in mm, flat, its bends going both ways, that takes several sheets. */
const rail = (changes: Partial<Job> = {}): Job =>
	plainJob({
		name: 'Rescue rail',
		units: 'mm',
		tube: { ...plainJob().tube, od: 38.1, wall: 2.1 },
		tooling: { clr: 120, growth: 1.02, markOffset: 7, tape: 1 },
		shape: byBends(
			[
				[160, 40, 0],
				[230, 75, 180],
				[190, 52, 180],
			],
			90,
		),
		...changes,
	});

/** Lines of all sheets of a profile in one frame, in mm: laid cross on cross, as their words say. */
async function joined(bytes: Uint8Array): Promise<DrawnLine[]> {
	const [pages, paths] = [await readPdf(bytes), await readPaths(bytes)];
	return pages.flatMap(({ text }, i) => {
		const [, row, column] = /Sheet ([A-Z])(\d+) of/.exec(text) ?? [];
		if (row === undefined) return [];
		// A register mark is a cross of 20 points with a circle round its middle.
		const crosses = paths[i]!.filter(
			({ places }) => places.length === 2 && Math.abs(apart(places[0]!, places[1]!) - 20) < 1e-3,
		);
		const at = crosses.map(middle);
		const [xs, ys] = [at.map(([x]) => x), at.map(([, y]) => y)];
		const [left, top] = [Math.min(...xs), Math.min(...ys)];
		const [wide, tall] = [Math.max(...xs) - left, Math.max(...ys) - top];
		const moved = ([x, y]: Place): Place => [
			x - left + (Number(column) - 1) * wide,
			y - top + (row.charCodeAt(0) - 65) * tall,
		];
		return paths[i]!.map((line) => ({ ...line, places: line.places.map(moved) }));
	});
}

/** Without what two sheets both show. */
const once = (places: readonly Place[]): Place[] =>
	places.filter((place, i) => places.findIndex((other) => apart(place, other) < 0.5) === i);

const allApart = (places: readonly Place[], unit: number): number[] =>
	places.flatMap((a, i) => places.slice(i + 1).map((b) => apart(a, b) * unit)).sort((a, b) => a - b);

function expectAlike(found: readonly number[], wanted: readonly number[]): void {
	expect(found).toHaveLength(wanted.length);
	expect(Math.max(...found.map((value, i) => Math.abs(value - wanted[i]!)))).toBeLessThan(CLOSE);
}

describe('the full-size profile, read back from the PDF', () => {
	const of = onPaper(rail());
	let printed: Promise<DrawnLine[]> | null = null;
	/** Printed once. */
	const profile = () => {
		printed ??= printJob(['profile'], of, PAPERS.a4).then(joined);
		return printed;
	};

	it('has every tangent point where the chalk-out table has it, over all its sheets', async () => {
		const lines = await profile();
		const tangents = lines.filter(
			(line) => line.width === 0.4 && line.dash.length === 0 && Math.abs(length(line) - 38.1) < CLOSE,
		);
		const wanted = chalkPlanes(of.shape)[0]!.points.filter(({ what }) => what === 'begins' || what === 'ends');
		expectAlike(
			allApart(once(tangents.map(middle)), MM),
			allApart(
				wanted.map(({ along, off }): Place => [along, off]),
				1,
			),
		);
	});

	it('has its edges half a diameter from the center line, which is as long as the tube', async () => {
		const lines = await profile();
		const center = lines.filter(({ dash }) => dash.length === 4);
		const edges = lines.filter(({ width, places }) => width === 0.8 && places.length > 2);
		expect(edges.length).toBeGreaterThan(5);
		for (const { places } of edges)
			for (const place of places) expect(Math.abs(nearest(place, center) * MM - 19.05)).toBeLessThan(CLOSE);
		const parts = [...new Map(center.map((line) => [middleOf(line).map(Math.round).join(), line])).values()];
		const total = parts.reduce((sum, { places }) => sum + runLength(places) * MM, 0);
		const arcs = of.shape.bends.reduce((sum, { angle, radius }) => sum + (angle * Math.PI * radius) / 180, 0);
		expect(total).toBeCloseTo(of.shape.straights.reduce((sum, straight) => sum + straight, 0) + arcs, 1);
	});

	it('has each mark 7 mm before its bend, as the die is offset', async () => {
		const lines = await profile();
		const marks = once(lines.filter(({ width }) => width === 1.8).map(middle));
		const tangents = once(
			lines.filter((line) => line.width === 0.4 && Math.abs(length(line) - 38.1) < CLOSE).map(middle),
		);
		expect(marks).toHaveLength(3);
		for (const mark of marks)
			expect(Math.min(...tangents.map((tangent) => apart(mark, tangent) * MM))).toBeCloseTo(7, 1);
	});

	it('is one drawing a plane', async () => {
		const shape = byBends(
			[
				[60, 40, 0],
				[120, 30, 90],
			],
			60,
		);
		const pages = await readPdf(await printJob(['profile'], onPaper(rail({ shape })), PAPERS.a4));
		expect(pages.filter(({ text }) => text.includes('the plane of bend 1')).length).toBeGreaterThan(1);
		expect(pages.filter(({ text }) => text.includes('the plane of bend 2')).length).toBeGreaterThan(1);
	});

	it('of a tube that takes too many sheets is the table alone, which says so', async () => {
		const pages = await readPdf(
			await printJob(['profile'], onPaper(rail({ shape: byBends([[40_000, 40, 0]], 40_000) })), PAPERS.a4),
		);
		expect(pages).toHaveLength(1);
		expect(pages[0]!.text).toContain('more than the 100 that are printed');
		expect(pages[0]!.text).toContain('bend 1 corner');
	});
});

const middleOf = ({ places }: DrawnLine): Place => places[Math.floor(places.length / 2)]!;

const runLength = (places: readonly Place[]): number =>
	places.slice(1).reduce((sum, place, i) => sum + apart(places[i]!, place), 0);

/** How far a place lies from lines drawn as short pieces. */
function nearest([x, y]: Place, lines: readonly DrawnLine[]): number {
	let least = Number.POSITIVE_INFINITY;
	for (const { places } of lines)
		for (let i = 1; i < places.length; i++) {
			const [[a, b], [c, d]] = [places[i - 1]!, places[i]!];
			const [dx, dy] = [c - a, d - b];
			const part = Math.min(1, Math.max(0, ((x - a) * dx + (y - b) * dy) / (dx * dx + dy * dy)));
			least = Math.min(least, Math.hypot(x - a - part * dx, y - b - part * dy));
		}
	return least;
}

/** Three bends, each in its own plane. */
const turned = byBends(
	[
		[300, 40, 0],
		[300, 30, 75],
		[300, 30, 150],
	],
	300,
);

describe('wrap strips, read back from the PDF', () => {
	it('are as long as the tube is round, with the inside of each bend as far round as it is turned', async () => {
		const [page] = await readPaths(await printJob(['wraps'], onPaper(rail({ shape: turned })), PAPERS.a4));
		const round = Math.PI * 38.1;
		const boxes = page!.filter(({ width, places }) => width === 0.8 && places.length === 5);
		expect(boxes).toHaveLength(3);
		const lines = page!.filter(({ width }) => width === 1.8);
		// Bend 3 lies 75 + 150 = 225 degrees on from bend 1.
		for (const [i, degrees] of [0, 75, 225].entries()) {
			const { places } = boxes[i]!;
			const left = Math.min(...places.map(([x]) => x));
			const [top, low] = [Math.min(...places.map(([, y]) => y)), Math.max(...places.map(([, y]) => y))];
			const own = lines.filter((line) => middle(line)[1] > top && middle(line)[1] < low);
			expect((Math.max(...places.map(([x]) => x)) - left) * MM).toBeCloseTo(round, 1);
			const [across] = own.filter((line) => Math.abs(rise(line)) < 1e-6);
			expect(length(across!)).toBeCloseTo(round, 1);
			const along = own.filter((line) => line !== across).map((line) => (middle(line)[0] - left) * MM);
			expectAlike(along, degrees === 0 ? [0, round] : [(degrees / 360) * round]);
		}
	});
});

describe('cope templates, read back from the PDF', () => {
	// E. W. Weisstein, MathWorld, "Steinmetz Curve": cylinders of radius a and b whose axes meet at a right angle meet where
	// z = sqrt(a^2 - b^2 sin^2 t) (from memory).
	it('are the Steinmetz curve where the tubes meet square, from bend 1’s line on', async () => {
		const far = { cope: { od: 60, angle: 90, offset: 0, turn: 50 } };
		const [page] = await readPaths(await printJob(['copes'], onPaper(rail({ ends: { far } })), PAPERS.a4));
		const [b, a] = [19.05, 30];
		const curve = page!.find(({ width, places }) => width === 0.8 && places.length > 100)!.places;
		const edge = page!.find(({ width, places }) => width === 0.8 && places.length === 4)!.places[1]!;
		const height = (degrees: number) => Math.sqrt(a ** 2 - (b * Math.sin((degrees * Math.PI) / 180)) ** 2);
		const left = curve[0]![0];
		expect((curve.at(-1)![0] - left) * MM).toBeCloseTo(Math.PI * 38.1, 1);
		for (const [x, y] of curve) {
			const degrees = (((x - left) * MM) / b / Math.PI) * 180;
			// The paper behind the deepest place, which lies a radius of the other tube before the drawing's end, is 30 mm.
			expect(Math.abs((edge[1] - y) * MM - (30 + a - height(degrees - 50)))).toBeLessThan(CLOSE);
		}
	});

	it('say what to do where no end is coped', async () => {
		const [page] = await readPdf(await printJob(['copes'], onPaper(rail()), PAPERS.a4));
		expect(page!.text).toContain('No end of this job is coped');
	});
});

describe('full-size pages of any job', () => {
	const bends = (count: number): (readonly [number, number, number])[] =>
		Array.from({ length: count }, (_, i) => [60 + i, 20 + i, 50 * i] as const);
	const cope = { od: 90, angle: 40, offset: 35, turn: 170 };
	const thin = { ...rail().tube, od: 6, wall: 1 };

	it.each([
		['1 bend, inches', plainJob({ name: 'W'.repeat(80), ends: { far: { cope: { ...cope, od: 3, offset: 1 } } } })],
		[
			'8 bends of a thin tube',
			rail({ tube: thin, shape: byBends(bends(8), 90), name: 'Поручень 栏杆 rail'.repeat(4) }),
		],
		['20 bends, coped', rail({ shape: byBends(bends(20), 90), ends: { start: { cope } } })],
		['a thick tube', rail({ tube: { ...thin, od: 65 }, ends: { far: { cope } } })],
	])('have all of their words on the paper: %s', async (_, job) => {
		const pages = await readPdf(await printJob(['wraps', 'copes'], onPaper(job), PAPERS.letter));
		const words = pages.flatMap(({ text }) => text.split('\n'));
		const count = job.shape.kind === 'bends' ? job.shape.bends.length : 0;
		for (let bend = 1; bend <= count; bend++)
			expect(words.some((text) => text.includes(`Bend ${bend}: mark`))).toBe(true);
		for (const page of pages) {
			expect(page.fonts.every(({ embedded }) => embedded)).toBe(true);
			expect(textsOff(page)).toEqual([]);
		}
	});
});

describe('the ruler on each sheet', () => {
	it('is 100 mm and 4 in long', async () => {
		const [page] = await readPaths(await printJob(['wraps'], onPaper(rail()), PAPERS.letter));
		const ticks = page!.filter(({ width }) => width === 0.5).filter((line) => length(line) < 4);
		const up = ticks.filter((line) => rise(line) > 0).map((line) => middle(line)[0]);
		const down = ticks.filter((line) => rise(line) < 0).map((line) => middle(line)[0]);
		expect((Math.max(...up) - Math.min(...up)) * MM).toBeCloseTo(100, 2);
		expect((Math.max(...down) - Math.min(...down)) * MM).toBeCloseTo(101.6, 2);
	});
});

describe('pages as a printer would draw them', () => {
	it.skipIf(!hasPoppler)('are full size to a tenth of a millimeter (by pdftoppm of poppler-utils)', async () => {
		const bytes = await printJob(['wraps'], onPaper(rail({ shape: turned })), PAPERS.a4);
		const runs = longestRuns(drawnPages(bytes, 600)[0]!);
		const mm = 25.4 / 600;
		// The thick lines round the tube, and what the pens of their ends add; of few rows only where the flap begins.
		const upper = mostOften(runs.slice(0, Math.floor(runs.length * 0.8)).filter((run) => run * mm > 100)) * mm;
		expect(Math.abs(upper - (Math.PI * 38.1 + 0.8 * MM))).toBeLessThan(CLOSE);
		const lower = Math.max(...runs.slice(Math.floor(runs.length * 0.8))) * mm;
		expect(Math.abs(lower - (101.6 + 0.5 * MM))).toBeLessThan(CLOSE);
	});
});

describe('full-size sheets', () => {
	const cope = { od: 48.3, angle: 60, offset: 5, turn: 30 };
	const job = rail({
		name: 'Поручень '.repeat(8).trim(),
		shape: byBends(
			[
				[330, 75, 0],
				[410, 60, 180],
				[280, 90, 90],
			],
			260,
		),
		ends: { start: { cope }, far: { cope: { ...cope, turn: -100 } } },
	});

	it.skipIf(!hasPoppler).each(['letter', 'a4'] as const)(
		'keep to what a printer can print on %s, and none is empty (by pdftoppm of poppler-utils)',
		async (page) => {
			const dpi = 36;
			const bytes = await printJob(['profile', 'wraps', 'copes'], onPaper(job), PAPERS[page]);
			expect((await readPdf(bytes)).flatMap(textsOff)).toEqual([]);
			const pages = drawnPages(bytes, dpi);
			expect(pages.length).toBeGreaterThan(12);
			for (const picture of pages) {
				const edge = (EDGE * dpi) / 72;
				expect(darkIn(picture, 0) - darkIn(picture, edge)).toBe(0);
				expect(darkIn(picture, 3 * edge)).toBeGreaterThan(0);
			}
		},
	);
});

/** Dots that are not white, those left out that lie this near to an edge. */
function darkIn({ width, height, dots }: Picture, edge: number): number {
	let dark = 0;
	for (let y = edge; y < height - edge; y++)
		for (let x = edge; x < width - edge; x++) if (dots[y * width + x]! < 250) dark++;
	return dark;
}

describe('the profile as a printer would draw it', () => {
	it.skipIf(!hasPoppler)(
		'has the edges of the tube its diameter apart, to a tenth of a millimeter (by pdftoppm of poppler-utils)',
		async () => {
			const job = rail({ shape: byBends([[60, 30, 0]], 30) });
			const [, sheet] = drawnPages(await printJob(['profile'], onPaper(job), PAPERS.a4), 600);
			const mm = 25.4 / 600;
			const apartBy = columnsOf(sheet!).flatMap((lines) =>
				lines.flatMap((top, i) => lines.slice(i + 1).map((low) => (low - top) * mm)),
			);
			// Straight 1 lies level on the sheet: in most of its 60 mm nothing but its two edges and its center line is crossed.
			const diameters = apartBy.filter((distance) => Math.abs(distance - 38.1) < CLOSE);
			expect(diameters.length * mm).toBeGreaterThan(30);
			expect(apartBy.filter((distance) => Math.abs(distance - 38.1 * 0.99) < CLOSE).length * mm).toBeLessThan(4);
		},
	);
});

/** The middles of the dark runs of each column of a picture. */
function columnsOf({ width, height, dots }: Picture): number[][] {
	return Array.from({ length: width }, (_, x) => {
		const middles: number[] = [];
		let start = -1;
		for (let y = 0; y <= height; y++) {
			const isDark = y < height && dots[y * width + x]! < 128;
			if (isDark && start < 0) start = y;
			if (!isDark && start >= 0) {
				middles.push((start + y - 1) / 2);
				start = -1;
			}
		}
		return middles;
	});
}

function mostOften(values: readonly number[]): number {
	const counts = new Map<number, number>();
	for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
	return [...counts].reduce((best, next) => (next[1] > best[1] ? next : best))[0];
}

/** The longest dark run of each row of a picture. */
function longestRuns({ width, height, dots }: Picture): number[] {
	return Array.from({ length: height }, (_, row) => {
		let [longest, run] = [0, 0];
		for (let x = 0; x < width; x++) {
			run = dots[row * width + x]! < 128 ? run + 1 : 0;
			if (run > longest) longest = run;
		}
		return longest;
	});
}
