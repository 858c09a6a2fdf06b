/** What is counted of tubes, as numbers. */
import { marginal, spreadOf } from '../../src/fit/as-built.ts';
import { uncutShape } from '../../src/fit/raw-tube.ts';
import type { TrueBend } from '../../src/practice/true-tube.ts';
import { tubeAtWork } from '../../src/session/estimate/tube-at-work.ts';
import type { State } from '../../src/session/log/state.ts';
import { angleBetween } from '../../src/tube/angles.ts';
import { checkValue } from '../../src/tube/checks.ts';
import { shapeEnd } from '../../src/tube/frames.ts';
import type { Shape } from '../../src/tube/shape.ts';
import { distance } from '../../src/tube/vector.ts';
import { trimmed } from './fit-made.ts';

/** The value below which a part `q` of them lies. */
export const quantile = (values: readonly number[], q: number): number =>
	[...values].sort((a, b) => a - b)[Math.floor(q * (values.length - 1))] ?? Number.NaN;

export const endMiss = (shape: Shape, { design }: State): number => distance(shapeEnd(shape).end, design.goal.end);

export const directionMiss = (shape: Shape, { design }: State): number =>
	angleBetween(shapeEnd(shape).direction, design.goal.direction);

/** By how much every check is truly missed, and how much it may be. */
export const checkMisses = (shape: Shape, { design, start }: State): { miss: number; tolerance: number }[] =>
	design.checks.map(({ check, design: wanted }) => ({
		miss: Math.abs(checkValue(check, shape, start.job.tube) - wanted),
		tolerance: check.tolerance,
	}));

/** The largest miss of any check. */
export const checkMiss = (shape: Shape, state: State): number =>
	Math.max(...checkMisses(shape, state).map(({ miss }) => miss));

/** Half the width of the band that nine in ten of a normal distribution lie in, in standard deviations. */
const NINE_IN_TEN = 1.6449;

/** How many of the true values lie in the estimate's 90 % bands. */
export interface Honesty {
	inside: number;
	of: number;
}

export function honestAngles({ built }: State, bends: readonly TrueBend[]): Honesty {
	const inside = bends.filter(({ angle }, i) => {
		const { value, sd } = marginal(built!, 'angle', i);
		return Math.abs(angle - value) <= NINE_IN_TEN * sd;
	});
	return { inside: inside.length, of: bends.length };
}

/** The far end's coordinates in the first leg's frame as estimated, the ends cut as they were; a flat tube has two. */
export function endAxes(state: State, truth: Shape): { value: number; sd: number; truly: number }[] {
	const { trimStart, trimEnd } = tubeAtWork(state, state.plan.current);
	const trim = { start: trimStart, end: Math.max(0, trimEnd) };
	const { mean, covariance } = spreadOf(state.built!, (tube) => [
		...shapeEnd(trimmed(uncutShape(tube, state.piece), trim, state)).end,
	]);
	const flat = state.design.shape.bends.every(({ rotation }) => rotation % 180 === 0);
	const { end } = shapeEnd(truth);
	const axes = flat ? [0, 1] : [0, 1, 2];
	return axes.map((k) => ({ value: mean[k]!, sd: Math.sqrt(covariance[k]![k]!), truly: end[k]! }));
}

export function honestEnd(state: State, truth: Shape): Honesty {
	const axes = endAxes(state, truth);
	const inside = axes.filter(({ value, sd, truly }) => Math.abs(truly - value) <= NINE_IN_TEN * sd);
	return { inside: inside.length, of: axes.length };
}

export function share(all: readonly Honesty[]): number {
	const sum = (of: keyof Honesty) => all.reduce((total, each) => total + each[of], 0);
	return (100 * sum('inside')) / sum('of');
}
