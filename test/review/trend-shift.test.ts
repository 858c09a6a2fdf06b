import { describe, expect, it } from 'vitest';
import { inverse } from '../../src/maths/cholesky.ts';
import { dot, times } from '../../src/maths/matrix.ts';
import { TaughtSoFar } from '../../src/review/trend-departure.ts';
import { runsOf } from '../../src/review/trend-runs.ts';
import { type Departure, ShiftSeeker, SOUGHT } from '../../src/review/trend-shift.ts';
import { filterPrior } from '../../src/springback/filter.ts';
import type { Kin, Lesson } from '../../src/springback/history.ts';
import { NOTHING_SEEN } from '../../src/springback/scatter.ts';
import { machinesOf } from '../../src/springback/several-dies.ts';
import { draws } from '../helpers/shop/plain-shop.ts';

const NONE: Departure = { score: 0, information: 0 };
const said = (departure: Departure) => ({ 'all-angles': departure, 'with-angle': NONE });

/** How many departures until a shift is called out, on average over `runs`, where each tells `information` and truly lies `by` off. */
function runLength(information: number, by: number, runs: number, seed: number): number {
	const draw = draws(seed);
	let taken = 0;
	for (let run = 0; run < runs; run++) {
		const seeker = new ShiftSeeker();
		for (let at = 0; ; at++) {
			taken++;
			const score = information * by + Math.sqrt(information) * draw.normal(0, 1);
			if (seeker.take(said({ score, information }), at)) break;
		}
	}
	return taken / runs;
}

/**
 * Siegmund's approximation of the run length of a cumulated sum (Montgomery, Introduction to Statistical Quality Control, equation 9.6), one side;
 * `k`, `h` and `shift` in standard deviations.
 */
function siegmund(k: number, h: number, shift: number): number {
	const drift = shift - k;
	const b = h + 1.166;
	return drift === 0 ? b * b : (Math.exp(-2 * drift * b) + 2 * drift * b - 1) / (2 * drift * drift);
}

describe('the cumulated sum', () => {
	// With information q a session's departure, in standard deviations, is summed less k = sqrt(q) / 2 up to h = 6 / sqrt(q).
	it.each([1, 1.5, 2])('runs as long as Siegmund has it, at %d standard deviations for a degree', (root) => {
		const [k, h] = [root / 2, 6 / root];
		const usual = 1 / (1 / siegmund(k, h, 0) + 1 / siegmund(k, h, 0));
		expect(runLength(root ** 2, 0, 150, 700 + root) / usual).toBeGreaterThan(0.9);
		expect(runLength(root ** 2, 0, 150, 700 + root) / usual).toBeLessThan(1.25);
		const shifted = siegmund(k, h, root * SOUGHT);
		expect(runLength(root ** 2, SOUGHT, 400, 800 + root) / shifted).toBeGreaterThan(0.9);
		expect(runLength(root ** 2, -SOUGHT, 400, 900 + root) / shifted).toBeLessThan(1.1);
	});

	it('takes one session, however far off, for no shift', () => {
		const seeker = new ShiftSeeker();
		expect(seeker.take(said({ score: 1e6, information: 4 }), 0)).toBeNull();
		expect(seeker.take(said(NONE), 1)).toBeNull();
	});
});

const KIN: Kin = { bender: 'shop', die: '6 in', od: 38.1, wall: 2.41, clr: 152.4, material: '1020-dom', k: 0.021 };
const OTHER: Kin = { ...KIN, die: '4 in', clr: 101.6 };

/** What a session teaches that read the unknowns themselves, with these variances: take-up, part at 90, curvature, lag, build-up. */
function lesson(unknowns: readonly number[], kin = KIN, variances = [0.2, 0.5, 0.3, 0.5, 0.2]): Lesson {
	const information = variances.map((variance, i) => variances.map((_, j) => (i === j ? 1 / variance : 0)));
	const about = { at: '2026-01-01T00:00:00.000Z', session: 'x', pulls: 3, readings: 6, right: 0 };
	return { kin, ...about, information, vector: times(information, unknowns), scatter: NOTHING_SEEN };
}

const USUAL = [3.4, 5, 0.1, 1, 0];
const plus = (takeUp: number, part = 0) => [USUAL[0]! + takeUp, USUAL[1]! + part, ...USUAL.slice(2)];

describe('what a session says of a shift', () => {
	it('is the generalized least squares of the difference from what was taught before', () => {
		const taught = new TaughtSoFar();
		const first = lesson(USUAL);
		const second = lesson(plus(0.8, 0.3));
		expect(taught.take(first)['all-angles']).toEqual(NONE);
		const told = taught.take(second)['all-angles'];
		// By covariances, where the program goes by information: readings r = y + N(0, R), y = x + shift, x ~ N(m, P) after the first session.
		const cold = machinesOf(filterPrior(KIN.k), [KIN.die]);
		const precision = inverse(cold.cov).map((line, i) => line.map((value, j) => value + first.information[i]![j]!));
		const P = inverse(precision);
		const m = times(
			P,
			times(inverse(cold.cov), cold.mean).map((value, i) => value + first.vector[i]!),
		);
		const R = inverse(second.information);
		const W = inverse(P.map((line, i) => line.map((value, j) => value + R[i]![j]!)));
		const miss = plus(0.8, 0.3).map((value, i) => value - m[i]!);
		expect(told.information).toBeCloseTo(W[0]![0]!, 9);
		expect(told.score).toBeCloseTo(dot(W[0]!, miss), 9);
	});

	it('is of a tube bent on two dies what both say together', () => {
		const two = (more: number) => {
			const [a, b] = [lesson(plus(more)), lesson(plus(more), OTHER)];
			const zeros = a.vector.map(() => 0);
			const information = [
				...a.information.map((line) => [...line, ...zeros]),
				...b.information.map((line) => [...zeros, ...line]),
			];
			return { ...a, besides: [{ kin: OTHER, pulls: 1 }], information, vector: [...a.vector, ...b.vector] };
		};
		const { newest } = runsOf(
			[...Array(12).fill(two(0)), ...Array(4).fill(two(1.5))].map((each) => ({ lesson: each })),
		);
		expect(newest).toMatchObject({ cause: 'all-angles', from: 12 });
		const taught = new TaughtSoFar();
		taught.take(two(0));
		// It is no session of either die alone.
		expect(taught.take(lesson(plus(1)))['all-angles']).toEqual(NONE);
		const one = new TaughtSoFar();
		one.take(lesson(USUAL));
		const alone = one.take(lesson(plus(1)))['all-angles'].information;
		expect(taught.take(two(1))['all-angles'].information).toBeGreaterThan(alone);
	});

	it('is nothing of a die that is bent on for the first time', () => {
		const taught = new TaughtSoFar();
		for (let i = 0; i < 5; i++) taught.take(lesson(USUAL));
		expect(taught.take(lesson(plus(3), OTHER))).toEqual({ 'all-angles': NONE, 'with-angle': NONE });
	});
});

describe('the runs between shifts', () => {
	const sessions = (...unknowns: readonly (readonly number[])[]) => unknowns.map((each) => ({ lesson: lesson(each) }));
	const many = (count: number, unknowns: readonly number[]) => Array.from({ length: count }, () => unknowns);

	it('have no shift where springback stays', () => {
		expect(runsOf(sessions(...many(30, USUAL))).newest).toBeNull();
		expect(runsOf([]).newest).toBeNull();
		expect(runsOf([{ lesson: null }]).departures).toEqual([null]);
	});

	it.each([
		['all-angles', 1.5, 0],
		['all-angles', -1.5, 0],
		['with-angle', 0, 4],
		['with-angle', 0, -4],
	] as const)('tell a shift %s by %d and %d', (cause, takeUp, part) => {
		const { newest } = runsOf(sessions(...many(12, USUAL), ...many(5, plus(takeUp, part))));
		const at45 = takeUp + part / 2;
		expect(newest).toMatchObject({ cause, from: 12, before: 0 });
		expect(Math.abs(newest!.by - at45)).toBeLessThan(0.35 * Math.abs(at45));
	});

	it('begin anew with a shift, and tell the newest', () => {
		const { newest } = runsOf(sessions(...many(12, USUAL), ...many(12, plus(2)), ...many(5, plus(0))));
		expect(newest).toMatchObject({ before: 12, from: 24 });
		expect(newest!.by).toBeLessThan(-1);
	});

	it('pass over sessions that taught nothing', () => {
		const told = sessions(...many(12, USUAL), ...many(5, plus(1.5)));
		const { newest } = runsOf([...told.slice(0, 6), { lesson: null }, ...told.slice(6)]);
		expect(newest).toMatchObject({ from: 13 });
	});
});
