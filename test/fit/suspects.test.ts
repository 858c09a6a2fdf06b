import { describe, expect, it } from 'vitest';
import { estimateAsBuilt, marginal } from '../../src/fit/as-built.ts';
import type { TubeReading } from '../../src/fit/built-tube.ts';
import { uncutShape } from '../../src/fit/raw-tube.ts';
import { suspectsOf } from '../../src/fit/suspects.ts';
import type { Shape } from '../../src/tube/shape.ts';
import { angleReading, dropReading, legReading, spanReading, toldBend, tooling } from '../helpers/shop/made-tube.ts';

interface Truth {
	mark: number;
	angle: number;
	rotation: number;
}

/** A tube of three bends, turned out of plane; `wrong` is what was really done where it was told otherwise. */
const planned: readonly Truth[] = [
	{ mark: 12, angle: 40, rotation: 0 },
	{ mark: 30, angle: 60, rotation: 120 },
	{ mark: 48, angle: 50, rotation: -70 },
];
const PIECE = 70;

const shapeOf = (truth: readonly Truth[]): Shape =>
	uncutShape(
		{
			bends: truth.map((bend) => ({ ...bend, radius: 6, wrapped: bend.angle })),
			stretch: 0,
			markOffset: 0,
			radius: 6,
		},
		PIECE,
	);

const really = (bend: number, wrong: Partial<Truth>): Truth[] =>
	planned.map((told, i) => (i === bend ? { ...told, ...wrong } : told));

const wanted = (): TubeReading[] => [
	dropReading(1, { straight: 3 }, null, 0.02),
	dropReading(2, { straight: 4 }, null, 0.02),
	dropReading(3, { bend: 1 }, null, 0.02),
	spanReading(1, 3, null, 0.02),
	angleReading(1, 3, null, 0.25),
	angleReading(1, 4, null, 0.25),
	angleReading(2, 4, null, 0.25),
	legReading(2, null, 1 / 32),
];

/** The tube that `truth` is, read without error, told as it was planned. */
function estimate(truth: readonly Truth[], change: (readings: TubeReading[]) => TubeReading[] = (same) => same) {
	const shape = shapeOf(truth);
	const readings = change(wanted().map((reading) => ({ ...reading, value: reading.of(shape) })));
	const bends = planned.map(({ mark, angle, rotation }) => toldBend(mark, angle, rotation));
	return estimateAsBuilt({ bends, tooling: tooling(), piece: PIECE, readings });
}

describe('what a tube that was told wrong is suspected of', () => {
	it('is nothing where all agrees', () => {
		for (const { off } of suspectsOf(estimate(planned))) expect(off).toBeLessThan(1e-6);
	});

	it.each([
		['a mark off by an inch', 1, 'mark', { mark: 31 }],
		['another mark off by an inch', 2, 'mark', { mark: 47 }],
		['a plane off by 12 degrees', 1, 'rotation', { rotation: 132 }],
		['an angle off by 5 degrees', 1, 'angle', { angle: 65 }],
	] as const)('is %s, with what it should have been', (_, bend, kind, wrong) => {
		const [first] = suspectsOf(estimate(really(bend, wrong)));
		expect(first).toMatchObject({ kind, bend, reading: null, value: planned[bend]![kind] });
		expect(first!.off).toBeGreaterThan(4);
		// What it would have been, within the readings' errors and what an error of this size bends out of the straight.
		const tolerance = { mark: 0.1, rotation: 0.5, angle: 0.3 }[kind];
		expect(Math.abs(first!.would - (wrong as Record<string, number>)[kind]!)).toBeLessThan(tolerance);
	});

	it.each([
		['the first drop', 0, 0.5],
		['the second drop', 1, -0.5],
		['a span', 3, 1],
		['an angle', 5, 6],
	])('is %s where that was misread', (_, place, by) => {
		const misread = (readings: TubeReading[]) =>
			readings.map((reading, i) => (i === place ? { ...reading, value: reading.value + by } : reading));
		const [first] = suspectsOf(estimate(planned, misread));
		expect(first).toMatchObject({ kind: 'reading', bend: null, reading: place });
		expect(first!.off).toBeGreaterThan(4);
		expect(first!.would).toBeCloseTo(wanted()[place]!.of(shapeOf(planned)), 1);
	});

	it('is as much one thing as another where only one reading speaks', () => {
		// One reading more than there are unknowns: by how much it is off is all there is to know, and all share it.
		const readings = [{ ...legReading(2, null, 1 / 32), value: shapeOf(planned).straights[1]! + 0.01 }];
		const bends = planned.slice(0, 2).map(({ mark, angle, rotation }) => toldBend(mark, angle, rotation));
		const found = suspectsOf(estimateAsBuilt({ bends, tooling: tooling(), piece: PIECE, readings }));
		const [leg, ...others] = found.filter(({ kind, bend }) => kind === 'mark' || kind === 'reading' || bend === 0);
		for (const { off } of others.filter(({ kind }) => kind !== 'rotation')) expect(off).toBeCloseTo(leg!.off, 4);
		// By hand: a hundredth of an inch over the errors of both marks, the angle's and the radius's part of the arc, stretch, and the reading.
		const arc = (6 * 40 * Math.PI) / 180;
		const sd = Math.hypot(0.0125, 0.0125, (6 * 0.25 * Math.PI) / 180, arc * Math.hypot(0.01, 0.005, 0.0045), 1 / 32);
		expect((leg!.off * sd) / 0.01).toBeCloseTo(1, 2);
		const reading = found.find(({ kind }) => kind === 'reading')!;
		// An error of the reading by so many of its own, either way, moves what is read by so much: the densities at a hundredth, beside that of none.
		const density = (by: number) => Math.exp(-0.5 * ((0.01 - by) / sd) ** 2);
		const sizes = [3, 4, 5, 6, 7, 8, 9, 10, 11, 12].flatMap((size) => [size / 32, -size / 32]);
		const likelier = sizes.reduce((sum, by) => sum + density(by), 0) / sizes.length / density(0);
		expect(reading.likely).toBeCloseTo(Math.log(likelier), 2);
		// Of the reading's own variance as much is left as the rest does not say.
		expect(reading.alone).toBeCloseTo(1 - (1 / 32 / sd) ** 2, 2);
	});
});

describe('readings that were read again and stand', () => {
	const confirmed = (readings: TubeReading[]) => readings.map((reading) => ({ ...reading, confirmed: true }));

	it('give up the mark that they contradict, so that it comes out where it is', () => {
		const truth = really(1, { mark: 31 });
		const [kept, given] = [estimate(truth), estimate(truth, confirmed)].map((built) => marginal(built, 'mark', 1));
		expect(Math.abs(given!.value - 31)).toBeLessThan(0.06);
		expect(Math.abs(given!.value - 31)).toBeLessThan(Math.abs(kept!.value - 31));
		expect(given!.sd).toBeGreaterThan(kept!.sd);
	});

	it('give up a plane as well, and leave what was told rightly', () => {
		const built = estimate(really(1, { rotation: 132 }), confirmed);
		expect(Math.abs(marginal(built, 'rotation', 1).value - 132)).toBeLessThan(0.5);
		for (const bend of [0, 1, 2]) {
			expect(Math.abs(marginal(built, 'mark', bend).value - planned[bend]!.mark)).toBeLessThan(0.01);
			expect(Math.abs(marginal(built, 'angle', bend).value - planned[bend]!.angle)).toBeLessThan(0.1);
		}
	});

	it('give up nothing where they contradict nothing', () => {
		const [kept, given] = [estimate(planned), estimate(planned, confirmed)];
		expect(given.mean).toEqual(kept.mean);
		expect(given.covariance).toEqual(kept.covariance);
	});
});

describe('one check on two bends', () => {
	/** Up by 17 degrees, over and down again and there opened a little, its crown .6 in lower than the bends told lead to. */
	const crown = (confirmed: boolean) => {
		const bends = [toldBend(16, 17, 0), toldBend(39, 34, 180, { relievedFrom: 35 })];
		const shape = uncutShape(
			{
				bends: [
					{ mark: 16, angle: 17, rotation: 0, radius: 6, wrapped: 17 },
					{ mark: 39, angle: 34, rotation: 180, radius: 6, wrapped: 35 },
				],
				stretch: 0,
				markOffset: 0,
				radius: 6,
			},
			80,
		);
		const drop = dropReading(1, { bend: 2 }, null, 0.025);
		const readings = [{ ...drop, value: drop.of(shape) - 0.6, confirmed }];
		return estimateAsBuilt({ bends, tooling: tooling(), piece: 80, readings });
	};

	it('suspects the bend that it hangs on most, where no two can be told apart by how far they are off', () => {
		const suspects = suspectsOf(crown(false));
		const [first] = suspects.toSorted((a, b) => b.likely - a.likely);
		expect(first).toMatchObject({ kind: 'angle', bend: 0 });
		for (const { off } of suspects) expect(off).toBeCloseTo(suspects[0]!.off, 6);
		const last = suspects.find(({ kind, bend }) => kind === 'angle' && bend === 1)!;
		expect(last.likely).toBeLessThan(first!.likely - 1);
	});

	it('tells nothing so loosely, when it stands, that a tube cannot be like that', () => {
		const built = crown(true);
		for (const bend of [0, 1]) expect(marginal(built, 'angle', bend).sd).toBeLessThan(5);
		expect(marginal(built, 'angle', 0).value).toBeLessThan(16.7);
	});
});
