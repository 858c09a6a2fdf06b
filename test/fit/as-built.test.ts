import { describe, expect, it } from 'vitest';
import { estimateAsBuilt, marginal, spreadOf, unknownAt } from '../../src/fit/as-built.ts';
import type { AsBuiltInput } from '../../src/fit/built-tube.ts';
import { uncutShape } from '../../src/fit/raw-tube.ts';
import { draws } from '../../src/practice/random.ts';
import { shapeEnd } from '../../src/tube/frames.ts';
import { angleReading, dropReading, legReading, toldBend, tooling } from '../helpers/shop/made-tube.ts';

const rad = Math.PI / 180;
const exact = { dieSpread: 0, bendSpread: 0, stretch: { value: 0, sd: 0 } };
const input = (parts: Partial<AsBuiltInput>): AsBuiltInput => ({
	bends: [],
	tooling: tooling(),
	piece: 60,
	readings: [],
	...parts,
});

describe('the estimate of a made tube, without readings', () => {
	it('is what was told, to the last digit', () => {
		const built = estimateAsBuilt(input({ bends: [toldBend(12, 30, 0), toldBend(30, 45, 90)] }));
		expect(marginal(built, 'mark', 1)).toEqual({ value: 30, sd: expect.closeTo(0.0125, 12) });
		expect(marginal(built, 'angle', 1)).toEqual({ value: 45, sd: expect.closeTo(0.25, 12) });
		expect(marginal(built, 'rotation', 1)).toEqual({ value: 90, sd: expect.closeTo(0.4, 12) });
		expect(built.covariance[unknownAt('angle', 0)]![unknownAt('mark', 1)]).toBe(0);
	});
});

describe('the estimate against the posterior that is reckoned otherwise', () => {
	// What follows is linear, so that one update by the gain is exact (R. E. Kalman, Trans. ASME J. Basic Eng. 82 (1960) 35-45).
	it('is the weighted mean of a mark and of the leg to it', () => {
		const bends = [toldBend(12, 30, 0, { mark: { value: 12, sd: 0.03 } })];
		const built = estimateAsBuilt(input({ bends, readings: [legReading(1, 12.1, 0.04)] }));
		// By hand: weights 1/.0009 and 1/.0016, so 16/25 of 12 and 9/25 of 12.1; sd .03 x .04 / .05.
		const mark = marginal(built, 'mark', 0);
		expect(mark.value).toBeCloseTo(12.036, 9);
		expect(mark.sd).toBeCloseTo(0.024, 9);
	});

	it('shares what a leg between two bends reads among both marks and the angle, with their covariances', () => {
		const [m1, a1, m2] = [0.03, 0.5, 0.02];
		const bends = [
			toldBend(12, 60, 0, { mark: { value: 12, sd: m1 }, angle: { value: 60, sd: a1 } }),
			toldBend(32, 20, 0, { mark: { value: 32, sd: m2 } }),
		];
		const [reading, sd] = [13.8, 0.025];
		const made = { ...tooling(), ...exact, markOffset: 0.25 };
		const built = estimateAsBuilt(input({ bends, tooling: made, readings: [legReading(2, reading, sd)] }));
		// Leg 2 is mark 2 - mark 1 - R a1, whatever the offset of the marks.
		const by = [-1, -6 * rad, 1];
		const variance = [m1 ** 2, a1 ** 2, m2 ** 2];
		const shared = by.map((slope, k) => slope * variance[k]!);
		const whole = by.reduce((sum, slope, k) => sum + slope * shared[k]!, sd ** 2);
		const gain = shared.map((part) => part / whole);
		const off = reading - (32 - 12 - 60 * 6 * rad);
		const places = [unknownAt('mark', 0), unknownAt('angle', 0), unknownAt('mark', 1)];
		const told = [12, 60, 32];
		for (const [i, place] of places.entries()) {
			expect(built.mean[place]).toBeCloseTo(told[i]! + gain[i]! * off, 8);
			for (const [j, other] of places.entries()) {
				const posterior = (i === j ? variance[i]! : 0) - gain[i]! * shared[j]!;
				expect(built.covariance[place]![other]).toBeCloseTo(posterior, 9);
			}
		}
	});

	it('is the mean and spread of a hundred thousand tubes, weighed by how well each fits the drop and the angle read', () => {
		const bends = [
			toldBend(12, 25, 0, { angle: { value: 25, sd: 0.6 } }),
			toldBend(30, 40, 180, { angle: { value: 40, sd: 0.8 }, rotation: { value: 180, sd: 1e-9 } }),
		];
		const made = { ...tooling(), dieSpread: 0.01, bendSpread: 0.005, stretch: { value: 0, sd: 0.0045 } };
		const [drop, between] = [
			{ value: 7.25, sd: 0.04 },
			{ value: 15.6, sd: 0.4 },
		];
		const readings = [
			dropReading(1, { straight: 3 }, drop.value, drop.sd),
			angleReading(1, 3, between.value, between.sd),
		];
		const built = estimateAsBuilt(input({ bends, tooling: made, readings }));

		const draw = draws(401);
		const sums = { weight: 0, square: 0, a1: 0, a2: 0, a1a1: 0, a2a2: 0, a1a2: 0 };
		for (let i = 0; i < 100_000; i++) {
			const [m1, m2] = [draw.normal(12, 0.0125), draw.normal(30, 0.0125)];
			const [a1, a2] = [draw.normal(25, 0.6), draw.normal(40, 0.8)];
			const die = 6 * Math.exp(draw.normal(0, 0.01));
			const [r1, r2] = [die * Math.exp(draw.normal(0, 0.005)), die * Math.exp(draw.normal(0, 0.005))];
			const leg = m2 - m1 - (r1 * a1 * rad) / (1 + draw.normal(0, 0.0045));
			// Up by a1, then back by a2: what the tube rises in bend 1, along the leg, and in bend 2.
			const rise =
				r1 * (1 - Math.cos(a1 * rad)) +
				leg * Math.sin(a1 * rad) +
				r2 * (Math.cos((a1 - a2) * rad) - Math.cos(a1 * rad));
			const off = ((rise - drop.value) / drop.sd) ** 2 + ((a2 - a1 - between.value) / between.sd) ** 2;
			const weight = Math.exp(-off / 2);
			sums.weight += weight;
			sums.square += weight ** 2;
			sums.a1 += weight * a1;
			sums.a2 += weight * a2;
			sums.a1a1 += weight * a1 ** 2;
			sums.a2a2 += weight * a2 ** 2;
			sums.a1a2 += weight * a1 * a2;
		}
		const of = (sum: number) => sum / sums.weight;
		const [mean1, mean2] = [of(sums.a1), of(sums.a2)];
		const [var1, var2] = [of(sums.a1a1) - mean1 ** 2, of(sums.a2a2) - mean2 ** 2];
		const [one, two] = [marginal(built, 'angle', 0), marginal(built, 'angle', 1)];
		// As many as so many tubes of equal weight; five standard errors of their mean and of their spread.
		const count = sums.weight ** 2 / sums.square;
		expect(count).toBeGreaterThan(3000);
		expect(Math.abs(one.value - mean1) / one.sd).toBeLessThan(5 / Math.sqrt(count));
		expect(Math.abs(two.value - mean2) / two.sd).toBeLessThan(5 / Math.sqrt(count));
		expect(Math.abs(one.sd / Math.sqrt(var1) - 1)).toBeLessThan(5 / Math.sqrt(2 * count));
		expect(Math.abs(two.sd / Math.sqrt(var2) - 1)).toBeLessThan(5 / Math.sqrt(2 * count));
		const together = built.covariance[unknownAt('angle', 0)]![unknownAt('angle', 1)]!;
		const correlation = (of(sums.a1a2) - mean1 * mean2) / Math.sqrt(var1 * var2);
		expect(Math.abs(together / (one.sd * two.sd) - correlation)).toBeLessThan(5 / Math.sqrt(count));
	});
});

describe('what a reading tells', () => {
	it('a drop over a leg of 12 in, read to 1/32 in, tells an angle to about .15 degree', () => {
		// The leg ends 12 in past the arc; an arc that keeps its length moves the leg's end by L cos a square to straight 1.
		for (const angle of [5, 17]) {
			const bends = [toldBend(20, angle, 0, { mark: { value: 20, sd: 1e-6 }, angle: { value: angle, sd: 5 } })];
			const piece = 20 + 6 * angle * rad + 12;
			const drop = 6 * (1 - Math.cos(angle * rad)) + 12 * Math.sin(angle * rad);
			const readings = [dropReading(1, { straight: 2, at: 'end' }, drop, 1 / 32)];
			const built = estimateAsBuilt(input({ bends, piece, tooling: { ...tooling(), ...exact }, readings }));
			const { value, sd } = marginal(built, 'angle', 0);
			expect(value).toBeCloseTo(angle, 6);
			const told = 1 / 32 / (12 * Math.cos(angle * rad)) / rad;
			expect(sd).toBeCloseTo((told * 5) / Math.hypot(told, 5), 5);
			expect(sd).toBeGreaterThan(0.145);
			expect(sd).toBeLessThan(0.16);
		}
	});

	const bends = [toldBend(12, 30, 0), toldBend(30, 50, 120), toldBend(48, 40, -70)];
	const shape = uncutShape(
		{
			...tooling(),
			stretch: 0,
			bends: bends.map(({ mark, angle, rotation }) => ({
				mark: mark!.value,
				angle: angle.value,
				rotation: rotation.value,
				radius: 6,
				wrapped: angle.value,
			})),
		},
		70,
	);
	const whole = { bends, piece: 70 };
	const before = estimateAsBuilt(input(whole));

	it.each([
		['leg 1', 'mark', 0, legReading(1, null, 1 / 64)],
		['drop to the second bend', 'angle', 0, dropReading(1, { straight: 3 }, null, 0.01)],
		['angle between straights 2 and 3', 'angle', 1, angleReading(2, 3, 50, 0.1)],
		['angle between straights 1 and 3', 'rotation', 1, angleReading(1, 3, null, 0.1)],
	] as const)('%s sharpens the %s of the bend with index %i, and blunts nothing', (_, kind, bend, reading) => {
		const value = Number.isNaN(reading.value) ? reading.of(shape) : reading.value;
		const after = estimateAsBuilt(input({ ...whole, readings: [{ ...reading, value }] }));
		expect(marginal(after, kind, bend).sd).toBeLessThan(0.95 * marginal(before, kind, bend).sd);
		for (const place of before.mean.keys()) {
			expect(after.covariance[place]![place]!).toBeLessThanOrEqual(before.covariance[place]![place]! * (1 + 1e-9));
			// It read what was expected: it confirms.
			expect(Math.abs(after.mean[place]! - before.mean[place]!)).toBeLessThan(1e-6);
		}
	});

	it('a leg tells a mark that nobody told, from wherever the search begins', () => {
		const untold = bends.map((bend, i) => (i === 1 ? { ...bend, mark: null } : bend));
		const readings = [legReading(2, 15.25, 1 / 32)];
		const built = estimateAsBuilt(input({ ...whole, bends: untold, readings }));
		// Mark 1, arc 1 and the leg; the errors of all three, and the radius's within the arc's length.
		const arc = 30 * 6 * rad;
		expect(marginal(built, 'mark', 1).value).toBeCloseTo(12 + arc + 15.25, 4);
		const spread = Math.hypot(0.0125, 0.25 * 6 * rad, 1 / 32, arc * Math.hypot(0.01, 0.005), arc * 0.0045);
		expect(marginal(built, 'mark', 1).sd).toBeCloseTo(spread, 4);
	});

	it('what the bends to come lead to has the spread of what it follows', () => {
		const { mean, covariance } = spreadOf(before, ({ bends: [one] }) => [2 * one!.angle, one!.mark - one!.angle]);
		expect(mean).toEqual([60, -18]);
		expect(covariance[0]![0]).toBeCloseTo(4 * 0.25 ** 2, 9);
		expect(covariance[0]![1]).toBeCloseTo(-2 * 0.25 ** 2, 9);
		expect(covariance[1]![1]).toBeCloseTo(0.0125 ** 2 + 0.25 ** 2, 9);
	});
});

describe('an opened bend', () => {
	it('keeps the tube it was wrapped with: bends after it lie where its largest angle puts them', () => {
		const opened = (relievedFrom: number | null) =>
			estimateAsBuilt(input({ bends: [toldBend(12, 40, 0, { relievedFrom }), toldBend(30, 20, 0)] }));
		const leg = (relievedFrom: number | null) =>
			spreadOf(opened(relievedFrom), (tube) => [uncutShape(tube, 60).straights[1]!]).mean[0]!;
		expect(leg(null)).toBeCloseTo(30 - 12 - 40 * 6 * rad, 9);
		expect(leg(44)).toBeCloseTo(30 - 12 - 44 * 6 * rad, 9);
		// The same length of arc bent flatter.
		const { mean } = spreadOf(opened(44), (tube) => [uncutShape(tube, 60).bends[0]!.radius]);
		expect(mean[0]).toBeCloseTo((6 * 44) / 40, 9);
	});
});

describe('the bands of the estimate', () => {
	it('hold the true angles and far ends of simulated tubes as often as they say', () => {
		const draw = draws(77);
		const inside = { angle: 0, angles: 0, end: 0, ends: 0 };
		const BAND = 1.645;
		for (let k = 0; k < 150; k++) {
			const die = draw.normal(0, 0.01);
			const stretch = draw.normal(0, 0.0045);
			const design = [0, 1, 2].map((i) => ({
				mark: 12 + 18 * i,
				angle: draw.uniform(20, 100),
				rotation: i === 0 ? 0 : draw.uniform(-180, 180),
			}));
			const truth = design.map(({ mark, angle, rotation }, i) => ({
				mark: mark + draw.normal(0, 0.0125),
				angle: angle + draw.normal(0, 0.25),
				wrapped: 0,
				rotation: i === 0 ? 0 : rotation + draw.normal(0, 0.4),
				radius: 6 * Math.exp(die + draw.normal(0, 0.005)),
			}));
			const tube = {
				bends: truth.map((bend) => ({ ...bend, wrapped: bend.angle })),
				stretch,
				markOffset: 0,
				radius: 6,
			};
			const shape = uncutShape(tube, 70);
			const readings = [
				dropReading(1, { straight: 3 }, null, 0.02),
				dropReading(2, { straight: 4 }, null, 0.02),
				angleReading(1, 3, null, 0.25),
				legReading(2, null, 1 / 32),
			].map((reading) => ({ ...reading, value: reading.of(shape) + draw.normal(0, reading.sd) }));
			const bends = design.map(({ mark, angle, rotation }, i) =>
				toldBend(mark, angle, rotation, i === 0 ? { rotation: { value: 0, sd: 1e-6 } } : {}),
			);
			const built = estimateAsBuilt(input({ bends, piece: 70, readings }));
			for (const [i, { angle }] of truth.entries()) {
				const { value, sd } = marginal(built, 'angle', i);
				inside.angles++;
				if (Math.abs(angle - value) <= BAND * sd) inside.angle++;
			}
			const end = spreadOf(built, (raw) => [...shapeEnd(uncutShape(raw, 70)).end]);
			for (const [axis, place] of shapeEnd(shape).end.entries()) {
				inside.ends++;
				if (Math.abs(place - end.mean[axis]!) <= BAND * Math.sqrt(end.covariance[axis]![axis]!)) inside.end++;
			}
		}
		// 450 of each: three standard errors of a share of .9 are .042.
		expect(Math.abs(inside.angle / inside.angles - 0.9)).toBeLessThan(0.042);
		expect(Math.abs(inside.end / inside.ends - 0.9)).toBeLessThan(0.042);
	});
});
