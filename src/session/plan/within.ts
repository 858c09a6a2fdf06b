/** A correction that keeps everything within what the finished tube is held against, as far as that can be had. */
import { type CorrectionInput, correct } from '../../fit/correct.ts';
import { type Judged, judged, type Limits, largestMiss } from '../../fit/judged.ts';
import { halved } from '../../maths/halving.ts';
import { at } from '../../maths/list.ts';
import { frames } from '../../tube/frames.ts';
import type { Shape } from '../../tube/shape.ts';
import type { State } from '../log/state.ts';
import { limitsOf, measuresAfter } from './design.ts';
import { costBeyondHope, HOPELESS, isMadeBeyondHope } from './hope.ts';

/** Of its tolerance: nearer to its edge than this nothing is left, since the bends to come err as well. */
const USED_UP = 0.8;

/** How often what is off too far may be weighed anew; and the most that a weight grows each time. */
const ROUNDS = 5;
const MOST = 4;

/** Halvings of the way between the weights begun with and those come to. */
const HALVINGS = 3;

export interface Within {
	/** With the weights that were come to. */
	input: CorrectionInput;
	shape: Shape;
}

/**
 * The correction as asked, and where something is nearer to the edge of its tolerance then than it should be, what is too far off weighs more by as
 * much as it is off, until nothing is or the largest miss grows no smaller: C. L. Lawson's way to the least largest miss (Contributions to the
 * Theory of Linear Least Maximum Approximation, 1961, from memory), begun from the least squares. Of the way there only what is needed is gone.
 */
export function correctWithin(state: State, asked: CorrectionInput): Within {
	const limits = limitsOf(state);
	const allowed = measuresAfter(state.design, state.start.job, asked.made).map(({ tolerance }) => tolerance);
	const tried = (input: CorrectionInput): Tried => {
		const { shape, cost } = correct(input);
		const tube = judged(frames(shape), limits);
		const isLost = cost > costBeyondHope(input, limits, allowed);
		return { input, shape, isLost, tube, left: largestMiss(tube, limits) };
	};
	const first = tried(asked);
	if (first.isLost || isMadeBeyondHope(first.tube, asked, limits)) return first;
	let best = first;
	for (let round = 0; round < ROUNDS && best.left > USED_UP; round++) {
		const next = tried(weighedAnew(state, { ...best.input, shape: best.shape }, best.tube, limits));
		// Whatever is weighed then leaves as much: nothing is given up for it.
		if (next.isLost) return first;
		if (next.left >= best.left) break;
		best = next;
	}
	if (best === first) return first;
	const goneOn = (way: number) => tried(partWay({ ...asked, shape: best.shape }, best.input, way));
	const far = best.left > USED_UP ? 1 : halved((way) => goneOn(way).left > USED_UP, 0, 1, HALVINGS)[1];
	const wayTo = far * Math.min(1, Math.max(0, (HOPELESS - best.left) / (HOPELESS - 1)));
	if (wayTo === 0) return first;
	const { shape, input } = goneOn(wayTo);
	return { input: { ...input, shape: asked.shape }, shape };
}

/** With the weights of another correction of the same tube. */
export const withWeightsOf = (input: CorrectionInput, like: CorrectionInput): CorrectionInput =>
	partWay(input, like, 1);

interface Tried extends Within {
	/** It costs more than any tube within hope. */
	isLost: boolean;
	tube: Judged;
	left: number;
}

/** Weights between two, the part `s` of the way, by ratios. */
function partWay(from: CorrectionInput, to: CorrectionInput, s: number): CorrectionInput {
	const between = (a: number, b: number) => a ** (1 - s) * b ** s;
	const { tolerance, measures, corners } = to;
	return reweighed(from, {
		position: (t) => between(t, tolerance.position),
		direction: (t) => between(t, tolerance.direction),
		measure: (t, i) => between(t, at(measures, i).tolerance),
		corner: (t, i) => (corners ? between(t, at(corners.tolerances, i)) : t),
	});
}

/** What each tolerance becomes: the far end's, those of the measures and of the corners. */
interface Weighing {
	position(tolerance: number): number;
	direction(tolerance: number): number;
	measure(tolerance: number, i: number): number;
	corner(tolerance: number, i: number): number;
}

function reweighed(input: CorrectionInput, { position, direction, measure, corner }: Weighing): CorrectionInput {
	const { tolerance, measures, corners } = input;
	return {
		...input,
		tolerance: { position: position(tolerance.position), direction: direction(tolerance.direction) },
		measures: measures.map((m, i) => ({ ...m, tolerance: measure(m.tolerance, i) })),
		...(corners ? { corners: { ...corners, tolerances: corners.tolerances.map(corner) } } : {}),
	};
}

function weighedAnew(state: State, input: CorrectionInput, tube: Judged, limits: Limits): CorrectionInput {
	const heavier = (tolerance: number, miss: number) => tolerance / Math.min(MOST, Math.max(1, miss / USED_UP) ** 2);
	const free = measuresAfter(state.design, state.start.job, input.made).map(({ name }) => name);
	const missOf = (name: string) => {
		const i = state.design.checks.findIndex(({ check }) => check.name === name);
		return Math.abs(at(tube.values, i) - at(limits.measures, i).design) / at(limits.measures, i).tolerance;
	};
	return reweighed(input, {
		position: (t) => heavier(t, tube.endOffset / limits.shape),
		direction: (t) => heavier(t, tube.endAngle / limits.turn),
		measure: (t, i) => heavier(t, missOf(at(free, i))),
		corner: (t, i) => heavier(t, at(tube.off, i) / limits.shape),
	});
}
