import { describe, expect, it } from 'vitest';
import { type Filter, newBend, newTube, pull, reach } from '../../src/springback/filter.ts';
import { learned } from '../../src/springback/history.ts';
import { covarianceOf, type Kin } from '../../src/springback/kin.ts';
import { lessonFrom } from '../../src/springback/lesson.ts';
import { TUBE_PROPORTION, TUBE_TAKE_UP } from '../../src/springback/model.ts';
import { observe } from '../../src/springback/reading.ts';
import { SCATTER_KINDS } from '../../src/springback/scatter.ts';
import { atDie, jointCovariance, machinesOf, priorOn } from '../../src/springback/several-dies.ts';

const WIDE: Kin = { bender: 'shop', die: 'wide', od: 38.1, wall: 2.4, clr: 177.8, material: '1020-dom', k: 0.026 };
const TIGHT: Kin = { ...WIDE, die: 'tight', clr: 114.3, k: 0.0167 };
const KINS = [WIDE, TIGHT];
const STEP = 0.5;

/** One bend on the die in the machine: pulled, and measured twice. */
const bent = (f: Filter, stop: number, angle: number): Filter =>
	observe(observe(pull(newBend(f), stop, stop), 'released', angle + 1), 'angle', angle, { readings: 2 });

type Matrix = readonly (readonly number[])[];
const times = (a: Matrix, b: Matrix): number[][] =>
	a.map((row) => b[0]!.map((_, j) => row.reduce((sum, x, k) => sum + x * b[k]![j]!, 0)));
const turned = (a: Matrix): number[][] => a[0]!.map((_, j) => a.map((row) => row[j]!));
const plus = (a: Matrix, b: Matrix, sign = 1): number[][] => a.map((row, i) => row.map((x, j) => x + sign * b[i]![j]!));

/** Gauss and Jordan's elimination: no code of ours. */
function inverse(a: Matrix): number[][] {
	const n = a.length;
	const work = a.map((row, i) => [...row, ...Array.from({ length: n }, (_, j) => (i === j ? 1 : 0))]);
	for (let c = 0; c < n; c++) {
		const best = work.reduce((b, row, r) => (r >= c && Math.abs(row[c]!) > Math.abs(work[b]![c]!) ? r : b), c);
		[work[c], work[best]] = [work[best]!, work[c]!];
		const by = work[c]![c]!;
		work[c] = work[c]!.map((x) => x / by);
		for (let r = 0; r < n; r++) if (r !== c) work[r] = work[r]!.map((x, j) => x - work[r]![c]! * work[c]![j]!);
	}
	return work.map((row) => row.slice(n));
}

function near(a: Matrix, b: Matrix, digits = 9): void {
	for (const [i, row] of a.entries()) for (const [j, x] of row.entries()) expect(x).toBeCloseTo(b[i]![j]!, digits);
}

describe('a filter for two dies', () => {
	it('knows the die at work as a filter for that die alone does', () => {
		const [both, alone] = [newTube(priorOn(KINS, STEP)), newTube(priorOn([WIDE], STEP))];
		const [after, own] = [bent(both, 62, 55), bent(alone, 62, 55)];
		near([after.mean.slice(0, 9)], [own.mean], 12);
		near(
			after.cov.slice(0, 9).map((row) => row.slice(0, 9)),
			own.cov,
			12,
		);
		for (const kind of SCATTER_KINDS) expect(after.scatter[kind].sum).toBeCloseTo(own.scatter[kind].sum, 12);
	});

	// Readings on one die tell of the other only by way of what both share. For normal vectors A and B with A's distribution changed to (m, S):
	// B becomes m_B + G (m - m_A), V_B - G (V_A - S) G' with G = C_BA V_A^-1 (any text on conditional normal distributions).
	it('learns of the other die what both share, no more', () => {
		const before = newTube(priorOn(KINS, STEP));
		const after = bent(bent(before, 62, 55), 33, 27.6);
		const [a, b] = [machinesOf(before, ['wide']), machinesOf(before, ['tight'])];
		const told = machinesOf(after, ['wide']);
		const gain = times(covarianceOf(TIGHT, WIDE), inverse(a.cov));
		const shift = times(
			gain,
			told.mean.map((x, i) => [x - a.mean[i]!]),
		);
		const found = machinesOf(after, ['tight']);
		near([found.mean], [b.mean.map((x, i) => x + shift[i]![0]!)]);
		near(found.cov, plus(b.cov, times(times(gain, plus(a.cov, told.cov, -1)), turned(gain)), -1));
		expect(found.cov[0]![0]).toBeLessThan(b.cov[0]![0]!);
		expect(found.cov[0]![0]).toBeGreaterThan(told.cov[0]![0]!);
	});

	it('is the same again when a die is put in and taken out, and keeps what is special about the tube', () => {
		const f = bent(newTube(priorOn(KINS, STEP)), 62, 53);
		const there = atDie(f, 'tight');
		const again = atDie(there, 'wide');
		near([again.mean], [f.mean], 12);
		near(again.cov, f.cov, 12);
		expect(atDie(f, 'wide')).toBe(f);
		expect(there.mean[TUBE_TAKE_UP]).toBe(f.mean[TUBE_TAKE_UP]);
		// A tube that takes back a tenth more does so on either die: of less, less.
		const ratio = there.mean[TUBE_PROPORTION]! / f.mean[TUBE_PROPORTION]!;
		expect(ratio).toBeCloseTo((TIGHT.k + 0.049) / (WIDE.k + 0.049), 12);
		expect(() => atDie(f, 'none')).toThrow('die "none" is none of those that this filter knows');
	});

	it('gives the other die another springback where the dies differ', () => {
		const f = newTube(priorOn(KINS, STEP));
		// Mechanics alone: the smaller radius takes back less of each degree.
		expect(reach(atDie(f, 'tight'), 90).mean - reach(f, 90).mean).toBeCloseTo(90 * (WIDE.k - TIGHT.k), 9);
	});
});

describe('what a session on two dies teaches', () => {
	const start = newTube(priorOn(KINS, STEP));
	const bothBent = bent(atDie(bent(start, 62, 55), 'tight'), 50, 44.2);
	const about = { at: '2026-01-01', session: 'a', readings: 6 };
	const joint = lessonFrom(WIDE, start, bothBent, { ...about, pulls: 1, besides: [{ kin: TIGHT, pulls: 1 }] });

	it('is all that its filter came to know of both, taken in by the next session on them', () => {
		const { prior, from, besides } = learned(WIDE, priorOn(KINS, STEP), [joint], [TIGHT]);
		const names = ['wide', 'tight'];
		const [found, known] = [machinesOf(prior, names), machinesOf(bothBent, names)];
		near([found.mean], [known.mean], 6);
		near(found.cov, known.cov, 6);
		expect([from, ...besides!].map(({ exact }) => exact)).toEqual([
			{ sessions: 1, pulls: 1 },
			{ sessions: 1, pulls: 1 },
		]);
	});

	it('serves a session on either die alone as it serves that die beside the other', () => {
		const both = learned(WIDE, priorOn(KINS, STEP), [joint], [TIGHT]).prior;
		for (const kin of KINS) {
			const alone = machinesOf(learned(kin, priorOn([kin], STEP), [joint]).prior, [kin.die]);
			const beside = machinesOf(both, [kin.die]);
			near([alone.mean], [beside.mean], 9);
			near(alone.cov, beside.cov, 9);
		}
	});

	it('from one die alone is the same whether the job names another die or not', () => {
		const single = newTube(priorOn([WIDE], STEP));
		const one = lessonFrom(WIDE, single, bent(single, 62, 55), { ...about, pulls: 1 });
		const ofTwo = lessonFrom(WIDE, start, bent(start, 62, 55), { ...about, pulls: 1 });
		near(ofTwo.information, one.information);
		near([ofTwo.vector], [one.vector]);
		expect(ofTwo).not.toHaveProperty('besides');
		const prior = learned(WIDE, priorOn(KINS, STEP), [one], [TIGHT]).prior;
		const told = machinesOf(prior, ['wide', 'tight']);
		const own = machinesOf(learned(WIDE, priorOn([WIDE], STEP), [one]).prior, ['wide']);
		near([told.mean.slice(0, 5)], [own.mean], 9);
		expect(told.cov[5]![5]!).toBeLessThan(jointCovariance(KINS, KINS)[5]![5]!);
	});

	it('is one lesson with another of the same two dies, whichever of them was the job’s own', () => {
		const other = lessonFrom(TIGHT, start, bothBent, {
			...about,
			session: 'b',
			pulls: 1,
			besides: [{ kin: WIDE, pulls: 1 }],
		});
		const [there, back] = [joint, other].map((lesson) => learned(WIDE, priorOn(KINS, STEP), [lesson], [TIGHT]).prior);
		near([there!.mean], [back!.mean], 6);
		near(there!.cov, back!.cov, 6);
	});
});
