import { type Correction, correct, predict, scales } from '../fit/correct.ts';
import type { CorrectionInput, Range } from '../fit/problem.ts';
import type { Shape } from '../tube/shape.ts';
import { at, numbersOf, rawTube, type TubeAtWork, tubeAtWork } from './as-built.ts';
import { allMeasures, measuresAfter } from './design.ts';
import type { CorrectedNote, Numbers, Predicted } from './protocol.ts';
import type { PlanState, State } from './state.ts';
import { madeCount } from './state.ts';

/** What the last leg's direction may be off by, in degrees; its place may be off by the job's tolerance of a length. */
export const DIRECTION = 0.25;

/** How far a straight may be moved by a correction, in parts of the piece: further is another tube. */
const FURTHEST = 0.25;

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
	const { markOffset } = start.job.tooling;
	const tooling = { markOffset, stretch: rawTube(state, state.plan.current).stretch };
	if (fixed === bends.length) return numbersOf(current.shape, current.trimStart, tooling);
	const shape = leastMoved({
		shape: current.shape,
		made: fixed,
		nominal: design.nominal,
		goal: design.goal,
		measures: measuresAfter(design, start.job, fixed),
		tolerance: { position: start.job.tolerance.length, direction: DIRECTION },
		dear: scales(start.job.units).dear,
		bounds: bounds(state, current),
	});
	return numbersOf(shape, current.trimStart, tooling);
}

/** Ever cheaper changes: nothing is moved further than needed, but as far as it is needed. */
const CHEAPER = [1, 4, 16, 64];

/** What is worth moving further for, when the design cannot be reached: a tenth of what is missed. */
const WORTH = 1.1;

/** The first correction that reaches everything, with changes as dear as they can be; where none does, the dearest that comes about as near. */
function leastMoved(input: CorrectionInput): Shape {
	const { straight, angle, rotation } = input.dear;
	const tried: Correction[] = [];
	for (const factor of CHEAPER) {
		const dear = { straight: straight * factor, angle: angle * factor, rotation: rotation * factor };
		const found = correct({ ...input, dear });
		if (found.reached) return found.shape;
		tried.push(found);
	}
	const misses = tried.map((found) => missOf(found, input));
	const least = Math.min(...misses);
	return at(
		tried,
		misses.findIndex((miss) => miss <= WORTH * least),
	).shape;
}

/** How far from the design, in units of the tolerances: only what the finished tube shows, not what was moved for it. */
function missOf({ endOffset, endAngle, measures }: Correction, { tolerance }: CorrectionInput): number {
	const end = endOffset / tolerance.position;
	const direction = endAngle / tolerance.direction;
	return Math.hypot(end, direction, ...measures.map((measure) => measure.residual));
}

function bounds(state: State, { shape, used }: TubeAtWork): { straights: Range[]; angles: Range[] } {
	const { job } = state.start;
	const { clamp, markOffset, follow } = job.tooling;
	const last = shape.straights.length - 1;
	const nominal = state.design.nominal;
	// What the marks may move outwards before too little tube lies behind the last bend.
	const spare = Math.max(0, state.piece - used - follow);
	return {
		straights: shape.straights.map((now, i) => {
			const least = i === last ? 0 : clamp + markOffset - (i === 0 ? job.trim.start : 0);
			// A design that is itself shorter than the clamp wants is warned of, not made impossible.
			const low = Math.max(0, Math.min(least, at(nominal.straights, i)));
			const room = i === last ? state.piece : Math.min(spare, FURTHEST * state.piece);
			return [low, Math.max(low, now + room)];
		}),
		angles: shape.bends.map((bend, i) => {
			const design = at(nominal.bends, i).angle;
			return [Math.min(1, design), Math.max(design, bend.angle, Math.min(state.design.reach, 179))];
		}),
	};
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
