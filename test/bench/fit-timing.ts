/** One correction of a tube of 8 bends, 4 of them made: how long it takes, and a general-purpose solver on the same residuals. */
import { readFileSync } from 'node:fs';
import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { type CorrectionInput, correct } from '../../src/fit/correct.ts';
import { gripsOf } from '../../src/fit/grips.ts';
import { posed, shapeUnknowns } from '../../src/fit/problem.ts';
import { scales } from '../../src/fit/scales.ts';
import { costAt, solve } from '../../src/maths/least-squares.ts';
import { draws } from '../../src/practice/random.ts';
import { type Frames, shapeEnd } from '../../src/tube/frames.ts';
import { finishedShape } from '../../src/tube/resolve.ts';
import type { Shape } from '../../src/tube/shape.ts';
import { END_TO_END, type Reference } from '../helpers/shop/scipy-fits.ts';
import { anyTube } from './fit-jobs.ts';
import { median } from './rounds.ts';

const MADE = 4;
const TUBES = 40;
const ROUNDS = 25;

function problems(seed: number, bounded: boolean): CorrectionInput[] {
	return Array.from({ length: TUBES }, (_, i) => {
		const draw = draws(seed + i);
		const job = anyTube(8, draw);
		const nominal = finishedShape(job, { value: job.tooling.growth ?? 1 });
		const off = (sd: number, k: number) => (k < MADE ? draw.normal(0, sd) : 0);
		const shape: Shape = {
			straights: nominal.straights,
			bends: nominal.bends.map((b, k) => ({ ...b, angle: b.angle + off(0.7, k), rotation: b.rotation + off(0.7, k) })),
		};
		const open = [-Infinity, Infinity] as const;
		return {
			shape,
			nominal,
			made: MADE,
			goal: shapeEnd(nominal),
			measures: [],
			...scales('in'),
			bounds: {
				straights: nominal.straights.map((s) => (bounded ? ([2, s + 4] as const) : open)),
				angles: nominal.bends.map(() => (bounded ? ([1, 175] as const) : open)),
			},
		};
	});
}

const timed = (act: () => void): number => {
	const from = performance.now();
	act();
	return performance.now() - from;
};

export interface Timings {
	/** Milliseconds, medians. */
	correction: number;
	unbounded: number;
	general: number;
	/** The largest difference of cost to the general solver, over the cost where that is above 1. */
	apart: number;
}

export function timings(seed: number): Timings {
	const bounded = problems(seed, true);
	const open = problems(seed, false).map((input) => {
		const unknowns = shapeUnknowns(input);
		return { problem: posed(input, unknowns), start: unknowns.map((u) => u.now) };
	});
	const times = { correction: [] as number[], unbounded: [] as number[], general: [] as number[] };
	let apart = 0;
	for (let round = 0; round <= ROUNDS; round++) {
		for (const [i, { problem, start }] of open.entries()) {
			const taken = {
				correction: timed(() => correct(bounded[i]!)),
				unbounded: timed(() => solve(problem, start)),
			};
			// The first round only warms the code up; the slow solver needs no more than a few.
			if (round > 0) for (const key of ['correction', 'unbounded'] as const) times[key].push(taken[key]);
			if (round > 2) continue;
			let found: readonly number[] = [];
			const slow = timed(() => {
				found = general(problem, start);
			});
			if (round > 0) times.general.push(slow);
			const ours = solve(problem, start).cost;
			const theirs = costAt(problem, found, problem.residuals(found));
			apart = Math.max(apart, Math.abs(ours - theirs) / Math.max(1, ours));
		}
	}
	const { correction, unbounded, general: slow } = times;
	return { correction: median(correction), unbounded: median(unbounded), general: median(slow), apart };
}

function general(problem: ReturnType<typeof posed>, start: readonly number[]): number[] {
	const whole = (x: readonly number[]) => [...problem.residuals(x), ...x.map((v, i) => v - problem.drawnTo![i]!)];
	const rows = whole(start).map((_, i) => i);
	const curve = (x: readonly number[]) => {
		const residuals = whole(x);
		return (i: number) => residuals[i]!;
	};
	const options = {
		initialValues: [...start],
		centralDifference: true,
		gradientDifference: 1e-5,
		damping: 1e-7,
		maxIterations: 100,
		errorTolerance: 1e-14,
	};
	return levenbergMarquardt({ x: rows, y: rows.map(() => 0) }, curve, options).parameterValues;
}

/** The largest difference of cost to scipy's trf over the committed cases, bounds slack and bounds active. */
export function againstScipy(): { slack: number; active: number } {
	const { cases } = JSON.parse(readFileSync(new URL('../fixtures/fit-scipy.json', import.meta.url), 'utf8')) as {
		cases: Reference[];
	};
	const apart = { slack: 0, active: 0 };
	for (const c of cases) {
		const key = c.active > 0 ? 'active' : 'slack';
		apart[key] = Math.max(apart[key], Math.abs(correct(inputOf(c)).cost - c.cost) / Math.max(1, c.cost));
	}
	return apart;
}

function inputOf({ made, room, chord, design, shape, radius, goal }: Reference): CorrectionInput {
	const tube = ({ straights, angles, rotations }: Reference['design']): Shape => ({
		straights,
		bends: angles.map((angle, i) => ({ angle, rotation: rotations[i]!, radius })),
	});
	const dear = { straight: 10, angle: 2, rotation: 4 };
	const around = (values: number[], unit: number) => values.map((v) => [v - room * unit, v + room * unit] as const);
	const value = (s: Shape) => Math.hypot(...shapeEnd(s).end);
	const grips = (at: Frames) => gripsOf(END_TO_END, at, { od: 0 });
	return {
		shape: tube(shape),
		nominal: tube(design),
		made,
		goal,
		measures: chord ? [{ name: 'end to end', ...chord, value, grips }] : [],
		tolerance: { position: 0.5, direction: 0.25 },
		dear,
		bounds: {
			straights: around(design.straights, dear.straight),
			angles: around(design.angles, dear.angle),
			rotations: around(design.rotations, dear.rotation),
		},
	};
}
