import { afterAll, describe, expect, it } from 'vitest';
import { documentFaults } from '../helpers/cli/documents.ts';
import { runHere } from '../helpers/disk/run-here.ts';
import {
	across,
	angleBetween,
	dropToBend,
	dropToStraight,
	keepCorners,
	marks,
	out,
	type PlainTube,
	span,
	tapeText,
	type Vector,
	walk,
	wrapped,
} from '../helpers/shop/contract-geometry.ts';
import { jobOf, RAIL, Shop } from '../helpers/shop/contract-shop.ts';
import { draws } from '../helpers/shop/plain-shop.ts';

const shop = new Shop();
const home = shop.home();
afterAll(() => shop.close());

/** Of tube 0, 1, 2 ... */
const GROWTHS = [0.98, 1, 1.06, 1.02, 1.015, 0.99, 1.03, 1.045, 1];

async function layout(job: object) {
	const run = await runHere(['layout', shop.file(job), '--json'], { home });
	expect([run.code, run.err]).toEqual([0, '']);
	const document = JSON.parse(run.out);
	expect(documentFaults('layout', document)).toEqual([]);
	return document;
}

function anyTube(seed: number): PlainTube {
	const draw = draws(900 + seed);
	const scale = seed % 3 === 0 ? 25.4 : 1;
	const count = 1 + (seed % 5);
	return {
		od: draw.uniform(1, 2) * scale,
		radius: draw.uniform(6, 9) * scale,
		stretch: draw.uniform(0, 0.02),
		markOffset: draw.uniform(-0.5, 0.5) * scale,
		trim: { start: draw.uniform(0, 2) * scale, end: draw.uniform(0, 2) * scale },
		bends: Array.from({ length: count }, (_, i) => ({
			straight: draw.uniform(5, 15) * scale,
			angle: draw.uniform(5, 130),
			rotation: i === 0 ? 0 : draw.uniform(-500, 500),
		})),
		last: draw.uniform(2, 12) * scale,
	};
}

describe('layout --json, each number reckoned again from the published sentences', () => {
	it.each([0, 1, 2, 3, 4, 5, 6, 7, 8])('tube %i: lengths, marks, corners and turns', async (seed) => {
		const tube = anyTube(seed);
		const mm = seed % 3 === 0;
		const growth = GROWTHS[seed] ?? 1;
		const clr = tube.radius / growth;
		// What the file says: points, or bends of the die's radius, or of one that the drawing has for itself.
		const radius = seed % 4 === 2 ? 1.1 * clr : clr;
		const drawn = keepCorners(tube, radius);
		const own = radius === clr ? {} : { radius };
		const shape = seed % 2 ? { points: walk(tube).corners } : { bends: drawn.bends, last: drawn.last, ...own };
		const doc = await layout(jobOf(tube, { clr, growth }, { units: mm ? 'mm' : 'in', shape }));
		expect(doc.growth).toEqual({ value: growth, from: 'job' });
		expect(Object.keys(doc)).toEqual([
			...['job', 'units', 'growth', 'developedLength', 'cutLength', 'bends', 'corners', 'overall'],
			...['checks', 'warnings', 'ends'],
		]);
		const want = marks(tube);
		expect(doc.developedLength).toBeCloseTo(want.developed, 6);
		expect(doc.cutLength).toBeCloseTo(want.cut, 6);
		expect(doc.corners.flat()).toHaveLength(3 * (tube.bends.length + 2));
		for (const [i, x] of walk(tube).corners.flat().entries()) expect(doc.corners.flat()[i]).toBeCloseTo(x, 5);
		for (const [i, row] of want.rows.entries()) {
			const [bend, given] = [doc.bends[i], tube.bends[i] as (typeof tube.bends)[0]];
			for (const key of ['arc', 'setback', 'external'] as const) expect(bend[key]).toBeCloseTo(row[key], 5);
			expect(bend.mark.fromStart).toBeCloseTo(row.fromStart, 5);
			expect(bend.mark.fromFarEnd).toBeCloseTo(row.fromFarEnd, 5);
			if (row.fromLastBend === null) expect(bend.mark.fromLastBend).toBeNull();
			else expect(bend.mark.fromLastBend).toBeCloseTo(row.fromLastBend, 5);
			expect(bend.mark.tape).toBe(mm ? `${Math.round(row.fromStart)}` : tapeText(row.fromStart, 1 / 16));
			expect(bend.angle).toBeCloseTo(given.angle, 6);
			expect(bend.straight).toBeCloseTo(given.straight, 5);
			const rotation = wrapped(given.rotation);
			expect(bend.rotation).toBeCloseTo(rotation, 5);
			expect(bend.tubeTurn.degrees).toBeCloseTo(Math.abs(rotation), 5);
			expect(bend.tubeTurn.way).toBe(i === 0 ? 'none' : rotation > 0 ? 'counterclockwise' : 'clockwise');
			expect(bend.around.degrees).toBeCloseTo(row.around.degrees, 4);
			expect(bend.around.length).toBeCloseTo(row.around.length, 4);
			const off = Math.abs(row.around.degrees);
			expect(bend.face).toBe(off <= 1 ? 'same' : off >= 179 ? 'opposite' : 'other');
		}
	});

	it('checks of all kinds, in the order of the file, with the bend after which each is due', async () => {
		const tube = { ...anyTube(4), markOffset: 0 };
		const [t1, , , t4] = walk(tube).directions as [Vector, Vector, Vector, Vector];
		const to = (bend: number) => ({ to: { bend } });
		const rows: [object, number, number, number][] = [
			[{ drop: { from: 1, ...to(3) } }, dropToBend(tube, 1, 3).distance, 0.0625, 3],
			[{ drop: { from: 1, ...to(1), surface: 'across' } }, across(dropToBend(tube, 1, 1), tube.od), 0.0625, 1],
			[{ drop: { from: 2, to: { straight: 4 } } }, dropToStraight(tube, 2, 4).distance, 0.0625, 3],
			[
				{ drop: { from: 2, to: { straight: 5 }, surface: 'across' }, tolerance: '1/8' },
				across(dropToStraight(tube, 2, 5), tube.od),
				0.125,
				4,
			],
			[{ angle: { between: [4, 1] } }, angleBetween(t4, t1), 0.5, 3],
			[{ span: { from: { bend: 1 }, ...to(3) } }, span(tube, 1, 3), 0.0625, 3],
			[{ span: { from: { end: 'start' }, to: { end: 'far' } } }, span(tube, 0, 6), 0.0625, 5],
			[{ out: { plane: [1, 2], to: { straight: 4 } } }, out(tube, [1, 2], 4), 0.0625, 3],
			[{ ovality: { bend: 2 } }, 1, 0.1, 2],
		];
		const checks = rows.map(([check], i) => ({ name: `c${i}`, ...check }));
		// The finished radius is 4 % over the die's; the file has the straights of a drawing with one of its own.
		const radius = 0.95 * tube.radius;
		const drawn = keepCorners(tube, radius);
		const shape = { bends: drawn.bends, last: drawn.last, radius };
		const doc = await layout(jobOf(tube, { clr: tube.radius / 1.04, growth: 1.04 }, { checks, shape }));
		expect(doc.checks).toHaveLength(rows.length);
		for (const [i, [check, design, tolerance, after]] of rows.entries()) {
			expect(doc.checks[i]).toMatchObject({ name: `c${i}`, kind: Object.keys(check)[0], tolerance, after });
			expect(doc.checks[i].design).toBeCloseTo(design, 4);
		}
	});

	it('reads lengths as a fabricator writes them', async () => {
		const shape = { bends: RAIL.bends.map((bend, i) => ({ ...bend, straight: WRITTEN[i]?.[0] })), last: '254 mm' };
		const doc = await layout(jobOf(RAIL, { clr: '6 1/16', tape: '1/32' }, { shape, trim: { start: '3/8' } }));
		const tube = { ...RAIL, radius: 6.0625, trim: { start: 0.375, end: 0 } };
		const want = marks({ ...tube, bends: tube.bends.map((b, i) => ({ ...b, straight: WRITTEN[i]?.[1] ?? 0 })) });
		expect(doc.cutLength).toBeCloseTo(want.cut, 9);
		expect(doc.bends.map((bend: { mark: { tape: string } }) => bend.mark.tape)).toEqual(
			want.rows.map((row) => tapeText(row.fromStart, 1 / 32)),
		);
	});

	it('warnings are no faults', async () => {
		const tight = { clr: 4, clamp: 14, follow: 11.5, maxAngle: 45 };
		const tube = { material: '1020-dom', od: 1.5, wall: 0.095, stock: 40 };
		const checks = [{ name: 'crown', drop: { from: 1, to: { bend: 1 } } }];
		const { warnings } = await layout(jobOf(RAIL, tight, { tube, checks }));
		for (const warning of warnings) expect(Object.keys(warning)).toEqual(['at', 'code', 'text']);
		const codes = new Set(warnings.map((warning: { code: string }) => warning.code));
		const all = ['short-clamp', 'short-follow', 'dial-limit', 'stock-short', 'tight-radius'];
		for (const code of all) expect(codes).toContain(code);
	});
});

const WRITTEN: [string, number][] = [
	['9 3/8', 9.375],
	['9-3/8', 9.375],
	['2\' 6 1/2"', 30.5],
];

describe('check', () => {
	it('says every fault at once, with its place counted from 0', async () => {
		const shape = { bends: [...RAIL.bends, { straight: -2, angle: 200, rotation: 0 }], last: -1 };
		const checks = [
			{ name: 'a', drop: { from: 1, to: { bend: 9 } } },
			{ name: 'a', out: { plane: [1, 1], to: { straight: 2 } } },
		];
		const tube = { material: 'cheese', od: 1.5, wall: 0.8 };
		const file = shop.file(jobOf(RAIL, { frob: 1 }, { pullbook: 'job/9', shape, checks, tube }));
		const run = await runHere(['check', file, '--json'], { home });
		expect(run.code).toBe(2);
		const faults: { at: string; found: string; right: string }[] = JSON.parse(run.out).files[0].faults;
		const places = faults.map((fault) => fault.at);
		for (const at of ['pullbook', 'tube.material', 'tube.wall', 'tooling.frob']) expect(places).toContain(at);
		for (const at of ['shape.bends[3].straight', 'shape.bends[3].angle', 'shape.last']) expect(places).toContain(at);
		expect(places).toContain('checks[1].name');
		expect(faults.find((fault) => fault.at === 'tube.material')?.right).toContain('4130-normalized');
	});
});
