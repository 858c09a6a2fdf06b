import { type CorrectionInput, predict, scales } from '../fit/correct.ts';
import { leastMoved } from '../fit/least-moved.ts';
import { at, numbersOf, rawTube, tubeAtWork } from './as-built.ts';
import { allMeasures, measuresAfter } from './design.ts';
import { limits } from './limits.ts';
import type { CorrectedNote, Numbers, Predicted } from './protocol.ts';
import { settable, stepsOf } from './settable.ts';
import type { PlanState, State } from './state.ts';
import { madeCount } from './state.ts';

/** What the last leg's direction may be off by, in degrees; its place may be off by the job's tolerance of a length. */
export const DIRECTION = 0.25;

/** The part of its tolerance that the far end's place is aimed at within: the rest is for what the last bend is off by itself. */
const PLACE = 0.5;

/**
 * How many bends the correction may no longer touch: those made, and one whose mark is already in the die or that
 * has been pulled, since its mark and plane are what they are.
 */
function outOfReach(state: State): number {
	const made = madeCount(state);
	const next = state.bends[made];
	return next && next.mark !== null ? made + 1 : made;
}

/**
 * The numbers for all bends after what is known now: made ones as made, the rest corrected.
 * At least one bend is settled: before that the nominal numbers stand.
 */
export function correctedNumbers(state: State): readonly Numbers[] {
	const fixed = outOfReach(state);
	const { start, design, bends } = state;
	const current = tubeAtWork(state, state.plan.current);
	const { stretch, markOffset } = rawTube(state, state.plan.current);
	const marking = { trimStart: current.trimStart, stretch, markOffset };
	if (fixed === bends.length) return numbersOf(current.shape, current.trimStart, marking);
	const input: CorrectionInput = {
		shape: current.shape,
		made: fixed,
		nominal: design.nominal,
		goal: design.goal,
		measures: measuresAfter(design, start.job, fixed),
		tolerance: { position: PLACE * start.job.tolerance.length, direction: DIRECTION },
		dear: scales(start.job.units).dear,
		bounds: limits(state, current),
		stock: { length: state.piece - current.trimStart, stretch },
	};
	const steps = stepsOf(start.job.tooling, start.job.tolerance);
	const { shape, dear } = leastMoved(input);
	return settable({ ...input, dear }, shape, state.plan.current, steps, marking);
}

/** What a set of numbers is expected to lead to, everything made being as it is. */
export function predicted(state: State, numbers: readonly Numbers[]): Predicted {
	const { shape } = tubeAtWork(state, numbers);
	const { endOffset, endAngle, checks } = predict(shape, state.design.goal, allMeasures(state.design, state.start.job));
	return { endOffset, endAngle, checks: checks.map(({ name, value }) => ({ name, value })) };
}

/** The drawing's own numbers, as the layout prints them. */
export function drawingNumbers(state: Pick<State, 'design'>): Numbers[] {
	const { design } = state;
	return design.shape.bends.map((bend, i) => ({
		fromStart: at(design.marks, i),
		angle: bend.angle,
		rotation: bend.rotation,
	}));
}

/** Takes new numbers into force and writes the note that says so. */
export function recorrect(state: State, after: CorrectedNote['after']): State {
	const numbers = correctedNumbers(state);
	return { ...state, plan: planWith(state, numbers, after) };
}

export function planWith(state: State, numbers: readonly Numbers[], after: CorrectedNote['after']): PlanState {
	const before = state.plan.current;
	const remaining = state.bends.flatMap((bend, i) =>
		bend.made === null ? [{ bend: i + 1, ...at(numbers, i), was: at(before, i) }] : [],
	);
	const note: CorrectedNote = {
		note: 'corrected',
		after,
		remaining,
		predicted: predicted(state, numbers),
		without: predicted(state, drawingNumbers(state)),
	};
	return { plan: 'new', current: numbers, before, corrected: numbers, note };
}

/** True where two sets of numbers differ by more than rounding in the arithmetic. */
export function differ(a: readonly Numbers[], b: readonly Numbers[]): boolean {
	return a.some((numbers, i) => {
		const other = at(b, i);
		const gap = Math.max(
			Math.abs(numbers.fromStart - other.fromStart),
			Math.abs(numbers.angle - other.angle),
			Math.abs(numbers.rotation - other.rotation),
		);
		return gap > 1e-9;
	});
}
