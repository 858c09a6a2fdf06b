import { describe, expect, it } from 'vitest';
import { type CorrectionInput, correct } from '../../../src/fit/correct.ts';
import { judged, largestMiss } from '../../../src/fit/judged.ts';
import { draws } from '../../../src/practice/random.ts';
import { initial } from '../../../src/session/log/fold.ts';
import { type State, withBend } from '../../../src/session/log/state.ts';
import { correctedNumbers, correctionOf } from '../../../src/session/plan/correction.ts';
import { limitsOf } from '../../../src/session/plan/design.ts';
import { normalizeRotation } from '../../../src/tube/angles.ts';
import { frames } from '../../../src/tube/frames.ts';
import type { Job } from '../../../src/tube/job.ts';
import { mirrored } from '../../../src/tube/mirror.ts';
import type { Shape } from '../../../src/tube/shape.ts';
import { JOBS } from '../../bench/advice-jobs.ts';
import { startOf } from '../../helpers/session/session-run.ts';
import { hatJob } from '../../helpers/shop/hat.ts';
import { plainJob } from '../../helpers/shop/plain-job.ts';

/** Its first bends come out by so much off what was planned, each corrected for the one before. */
function bent(job: Job, errors: readonly number[], turned: readonly number[] = []): State {
	return errors.reduce(
		(state, error, i) => {
			const planned = state.plan.current[i]!;
			const now = withBend(state, i + 1, {
				seats: 1,
				readBack: true,
				mark: planned.fromStart,
				rotation: planned.rotation + (turned[i] ?? 0),
				made: { angle: planned.angle + error, sd: 0.1 },
			});
			return { ...now, plan: { ...now.plan, current: correctedNumbers(now) } };
		},
		initial(startOf(job)),
	);
}

const [shallowHat, mainHoop, brace] = JOBS as [Job, Job, Job];
const roomy = { trim: { start: 2, end: 3 } };
const hat = (shape: number): Job => hatJob({ tolerance: { ...hatJob().tolerance, shape }, ...roomy });

/** By least squares alone. */
const plainly = ({ edges: _, ...asked }: CorrectionInput): Shape => correct(asked).shape;

const miss = (state: State, shape: Shape): number => {
	const limits = limitsOf(state);
	return largestMiss(judged(frames(shape), limits), limits);
};

describe('a correction keeps corners, checks and end within their tolerances', () => {
	const draw = draws(83_200_000);
	const states = Array.from({ length: 60 }, () => bent(shallowHat, [draw.normal(0, 0.5), draw.normal(0, 0.5)]));

	it('where least squares alone leave one of them outside', () => {
		const brought = states.filter((state) => {
			const asked = correctionOf(state);
			return miss(state, plainly(asked)) > 1 && miss(state, correct(asked).shape) <= 1;
		});
		expect(brought.length).toBeGreaterThan(4);
	});

	it('and is never further outside for it', () => {
		for (const state of states) {
			const asked = correctionOf(state);
			expect(miss(state, correct(asked).shape)).toBeLessThanOrEqual(Math.max(1, miss(state, plainly(asked))) + 1e-6);
		}
	});

	it('and leaves alone what is well inside', () => {
		const state = bent(hat(2), [0.3]);
		const asked = correctionOf(state);
		const [ours, plain] = [correct(asked).shape, plainly(asked)];
		expect(frames(ours).straights.at(-1)!.end).toEqual(
			frames(plain)
				.straights.at(-1)!
				.end.map((part) => expect.closeTo(part, 6)),
		);
		for (const [i, bend] of ours.bends.entries()) expect(bend.angle).toBeCloseTo(plain.bends[i]!.angle, 6);
	});
});

const space = plainJob({
	shape: brace.shape,
	checks: [{ name: 'knees', kind: 'span', from: { bend: 1 }, to: { bend: 3 }, tolerance: 1 / 8 }],
	tooling: { growth: 1 },
	...roomy,
});

const hoop: Job = { ...mainHoop, tooling: { ...mainHoop.tooling, growth: 1 }, ...roomy };

describe('of a tube and its mirror image', () => {
	it.each([
		['in space', space],
		['of a shallow hat', hat(3 / 8)],
		['of a main hoop', hoop],
	])('the corrections mirror each other: %s', (_, job) => {
		const draw = draws(83_300_000);
		for (let i = 0; i < 8; i++) {
			const [a, b, turn] = [draw.normal(0, 0.6), draw.normal(0, 0.6), draw.normal(0, 0.6)];
			const one = bent(job, [a, b], [0, turn]).plan.current;
			const other = bent(mirrored(job), [a, b], [0, -turn]).plan.current;
			for (const [k, { angle, fromStart, rotation }] of one.entries()) {
				expect(other[k]!.angle).toBeCloseTo(angle, 4);
				expect(other[k]!.fromStart).toBeCloseTo(fromStart, 4);
				expect(normalizeRotation(other[k]!.rotation + rotation)).toBeCloseTo(0, 4);
			}
		}
	});
});

describe('on a tube that is alike on both sides', () => {
	it('an error that is alike on both sides is corrected alike', () => {
		const state = initial(startOf(hatJob({ checks: [], ...roomy })));
		const asked = correctionOf(state);
		for (const by of [-0.5, -0.2, 0.2, 0.5]) {
			// The tube is to be longer by so much, half of it on each side of its crown.
			const [x, y, z] = asked.goal.end;
			const places = asked.corners!.places.map(([a, b, c], i) => [a + (i * by) / 2, b, c] as const);
			const { shape } = correct({
				...asked,
				goal: { ...asked.goal, end: [x + by, y, z] },
				corners: { ...asked.corners!, places },
			});
			const [first, crown, last] = shape.bends;
			expect(first!.angle).toBeCloseTo(last!.angle, 1);
			expect(crown!.angle).toBeCloseTo(first!.angle + last!.angle, 1);
			expect(shape.straights[1]).toBeCloseTo(shape.straights[2]!, 1);
			expect(Math.sign(17 - first!.angle)).toBe(Math.sign(by));
		}
	});

	const ERRORS = [-0.8, -0.6, -0.4, -0.2, 0.2, 0.4, 0.6, 0.8];

	it.each(ERRORS)('the other side of a hat without checks follows the first where that came out %d off', (error) => {
		const { current } = bent(hatJob({ checks: [], ...roomy }), [error]).plan;
		const [first, crown, last] = current.map(({ angle }) => angle);
		// With the two outer corners in their places and the crown's between them, both slopes are one.
		const by = last! - 17;
		expect(by / error).toBeGreaterThan(0.5);
		expect(by / error).toBeLessThan(1.1);
		// The far foot lies in line with the first one.
		expect(Math.abs(crown! - first! - last!)).toBeLessThan(0.2);
	});

	it.each(ERRORS)('the other side of a hoop stays as drawn where the first bend came out %d off', (error) => {
		const [, second, third, last] = bent(hoop, [error]).plan.current.map(({ angle }) => angle);
		expect(Math.abs(second! - 75 + error)).toBeLessThan(0.15);
		expect([third, last].map((angle, i) => Math.abs(angle! - [75, 15][i]!) < 0.2)).toEqual([true, true]);
	});
});
