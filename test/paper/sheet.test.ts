import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { loadJob } from '../../src/job/load.ts';
import { PAPERS, printJob } from '../../src/paper/index.ts';
import { draws } from '../../src/practice/random.ts';
import type { Job } from '../../src/tube/job.ts';
import { tapeValue } from '../../src/words/lengths.ts';
import { EDGE, textsOff, textsOnOneAnother } from '../helpers/paper/off-page.ts';
import { type PdfPage, readPdf } from '../helpers/paper/pdf.ts';
import { onPaper } from '../helpers/shop/on-paper.ts';
import { byBends, plainJob } from '../helpers/shop/plain-job.ts';

const SAMPLES = ['bow-rail', 'console-frame', 'mast-brace', 'trailer-hoop'];
const sample = (name: string): Job => loadJob(`jobs/${name}.json`).job;
const PRINTED = new Map<string, Promise<PdfPage[]>>();

/** Printed once, however many tests look at it: each takes half a second. */
function sheetOf(job: Job, page: 'letter' | 'a4' = 'letter'): Promise<PdfPage[]> {
	const key = JSON.stringify([job, page]);
	const printed = PRINTED.get(key) ?? printJob(['sheet'], onPaper(job), PAPERS[page]).then(readPdf);
	PRINTED.set(key, printed);
	return printed;
}

/** Everything that stands on a page outside of what printers can print. */
function offThePage(page: PdfPage): string[] {
	const { width, height, paths } = page;
	return [
		...textsOff(page),
		...paths.flatMap(({ left, top, right, bottom }) =>
			left < EDGE || top < EDGE || right > width - EDGE || bottom > height - EDGE
				? [`path to ${right}, ${bottom}`]
				: [],
		),
	];
}

/** A tube of so many bends, every other one out of the plane. */
const zigzag = (bends: number, units: 'in' | 'mm' = 'in'): Job => {
	const k = units === 'in' ? 1 : 25;
	const turns = Array.from({ length: bends }, (_, i) => [14 * k, 25 + i, i === 0 ? 0 : (i % 3) * 90 - 90] as const);
	const { tube } = plainJob();
	return plainJob({
		units,
		tube: { ...tube, od: tube.od * k, wall: 0.1 * k },
		tooling: { clr: 4 * k, tape: units === 'in' ? 1 / 16 : 1 },
		trim: { start: k, end: 2 * k },
		shape: byBends(turns, 12 * k),
		checks: [{ name: 'knee', kind: 'angle', between: [1, 2], tolerance: 0.5 }],
	});
};

describe('the shop sheet', () => {
	it.each(SAMPLES)(
		'of %s tells every mark from both ends, every angle and what each check should read',
		async (name) => {
			const job = sample(name);
			const { document, stops } = onPaper(job);
			const [page, ...more] = await sheetOf(job, job.units === 'in' ? 'letter' : 'a4');
			const said = page!.texts.map(({ text }) => text);
			for (const { mark } of document.bends) {
				expect(said).toContain(tapeValue(mark.fromStart, job));
				expect(said).toContain(tapeValue(mark.fromFarEnd, job));
			}
			for (const { stop } of stops) expect(said).toContain(`${stop}°`);
			for (const { name: check } of job.checks) expect(page!.text).toContain(`${check}:`);
			expect(more).toEqual([]);
		},
	);

	it.each([
		['righting-arch', 'letter'],
		['console-frame', 'a4'],
		['wheelhouse-rail', 'letter'],
	] as const)('of %s is one page on %s, whatever warnings and dies it has to tell of', async (name, paper) => {
		expect(await sheetOf(sample(name), paper)).toHaveLength(1);
	});

	it.each([
		[1, 'letter', 'in', 1],
		[8, 'letter', 'in', 1],
		[8, 'a4', 'mm', 1],
		[20, 'a4', 'in', 3],
		[20, 'letter', 'mm', 3],
	] as const)('of %i bends on %s in %s keeps to its pages, at most %i of them', async (bends, paper, units, most) => {
		const pages = await sheetOf(zigzag(bends, units), paper);
		expect(pages.flatMap(offThePage)).toEqual([]);
		expect(pages.flatMap(textsOnOneAnother)).toEqual([]);
		expect(pages.length).toBeLessThanOrEqual(most);
		const rows = pages.flatMap(({ texts }) => texts).filter(({ text, size }) => size === 10 && /^\d+$/.test(text));
		expect(rows.map(({ text }) => Number(text))).toEqual(Array.from({ length: bends }, (_, i) => i + 1));
	});

	it('of eight bends is one page on Letter also with several checks and a warning', async () => {
		const job = zigzag(8);
		const checks = [1, 2, 3, 4].map((j) => ({
			...job.checks[0]!,
			name: `knee ${j}`,
			between: [j, j + 2] as [number, number],
		}));
		const pages = await sheetOf({ ...job, tooling: { ...job.tooling, clamp: 8 }, checks: checks as Job['checks'] });
		expect(pages).toHaveLength(1);
		expect(pages[0]!.text).toContain('clamp');
		expect(pages.flatMap(offThePage)).toEqual([]);
		expect(pages.flatMap(textsOnOneAnother)).toEqual([]);
	});

	it.each([
		['letter', 'in'],
		['a4', 'in'],
		['a4', 'mm'],
	] as const)('breaks no word and no number of its table on %s in %s', async (paper, units) => {
		const job = zigzag(8, units);
		const [page] = await sheetOf({ ...job, tooling: { ...job.tooling, clr: 4.3 * (units === 'in' ? 1 : 25) } }, paper);
		const said = page!.texts.map(({ text }) => text);
		for (const word of ['bend', `mark, ${units}`, 'release', 'measured']) expect(said).toContain(word);
		const { document } = onPaper(job);
		expect(document.bends.some(({ tubeTurn }) => tubeTurn.way === 'counterclockwise')).toBe(true);
		expect(said.filter((text) => /clock|wise/.test(text) && !/clockwise/.test(text))).toEqual([]);
		expect(said.filter((text) => /^\/|^\d+\/\d*$|\d \d+\/$|^[.°]/.test(text))).toEqual([]);
	});

	// None of them so flat that the page's width is what keeps its drawing small.
	it.each(['wheelhouse-rail', 'righting-arch', 'handrail-knee'])(
		'of %s fills its page, the drawing as large as there is room',
		async (name) => {
			const [page] = await sheetOf(sample(name));
			const foot = page!.height - 60;
			const lowest = Math.max(...page!.texts.filter(({ y }) => y < foot + 15).map(({ y }) => y));
			expect(foot - lowest).toBeLessThan(70);
		},
	);

	it.each(readdirSync('jobs').flatMap((file) => /(.*)\.json$/.exec(file)?.[1] ?? []))(
		'of %s has no text that stands on another',
		async (name) => {
			const job = sample(name);
			for (const page of await sheetOf(job, job.units === 'in' ? 'letter' : 'a4'))
				expect(textsOnOneAnother(page)).toEqual([]);
		},
	);

	it('of eight bends has no number on another in any view, whichever way the tube goes', async () => {
		for (const seed of [1, 2, 3, 4]) {
			const draw = draws(seed);
			const bends = Array.from(
				{ length: 8 },
				(_, i) => [draw.uniform(9, 22), draw.uniform(15, 95), i === 0 ? 0 : draw.uniform(-180, 180)] as const,
			);
			const pages = await sheetOf({ ...zigzag(8), shape: byBends(bends, 12) });
			expect([seed, ...pages.flatMap(textsOnOneAnother)]).toEqual([seed]);
		}
	});

	it('has the checks in the order in which they can be read, whatever the order of the file', async () => {
		const job = sample('stretcher-offset');
		const [page] = await sheetOf({ ...job, checks: job.checks.toReversed() });
		const [other] = await sheetOf(job);
		for (const { text } of [page!, other!])
			for (const name of ['offset', 'rails over all'])
				expect(text.indexOf('first slope:')).toBeLessThan(text.lastIndexOf(`${name}:`));
	});

	it('says where sides are measured from, what angles are by and how far one may be off', async () => {
		const { text } = (
			await sheetOf({ ...sample('mast-brace'), tolerance: { ...plainJob().tolerance, under: 0.75, over: 0.25 } })
		)[0]!;
		const said = text.replaceAll('\n', ' ');
		expect(said).toContain('Draw one straight line along the tube, the side of bend 1');
		expect(said).toContain('by the angle finder, not by the dial; one may end 0.75° under and 0.25° over.');
		expect(said).toContain('Stop further by what is missing, less 0.25°.');
	});

	it('says at which end of the drawing the tube is begun', async () => {
		const [page] = await sheetOf(sample('bow-rail'));
		expect(page!.texts.filter(({ text }) => text === 'START')).toHaveLength(2);
	});

	it.each([
		['Latin without a blank', 'W'.repeat(80)],
		['Chinese', '栏'.repeat(80)],
		['Arabic', 'مسند اليد '.repeat(8).trim()],
		['Hindi', 'रेलिंग'.repeat(12)],
		['signs beyond 16 bits', '🚤'.repeat(40)],
		['marks that stand on others', `${'e\u0301\u0302'.repeat(26)}`],
	])('keeps names of the greatest length in %s on its pages', async (_, name) => {
		const { tube, tooling } = plainJob();
		const pages = await sheetOf(
			plainJob({
				name,
				tube: { ...tube, heat: name, material: { ...tube.material, name } },
				tooling: { ...tooling, bender: name, die: name },
				checks: [{ name, kind: 'angle', between: [1, 2], tolerance: 0.5 }],
			}),
		);
		expect(pages.flatMap(offThePage)).toEqual([]);
		expect(pages.map(({ text }) => text).join()).toContain('first stop');
	});
});
