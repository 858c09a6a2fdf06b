import { type CorrectionInput, correct } from '../../fit/correct.ts';
import { type Judged, judged, keeps, type Limits, largestMiss } from '../../fit/judged.ts';
import { dieOn } from '../../fit/raw-tube.ts';
import { scales } from '../../fit/scales.ts';
import { at } from '../../maths/list.ts';
import { exceeds } from '../../maths/scalar.ts';
import { corners, frames } from '../../tube/frames.ts';
import type { Units } from '../../tube/job.ts';
import type { Shape } from '../../tube/shape.ts';
import { numbersOf, rawTube, type TubeAtWork, tubeAtWork } from '../estimate/tube-at-work.ts';
import type { PlanState, State } from '../log/state.ts';
import { madeCount } from '../log/state.ts';
import type { Numbers, Predicted, TubeOutcome } from '../protocol/asks.ts';
import type { Correction } from '../protocol/notes.ts';
import { limits } from './correction-bounds.ts';
import { limitsOf, measuresAfter } from './design.ts';
import { type Marking, settable, stepsOf } from './settable.ts';

/**
 * The part of its tolerance that the last direction, or a check, is aimed at within: the rest is for what the bends to come are off by themselves. The
 * far end is aimed at within the tolerance of a length, a part of what its place may be off by.
 */
const AIM = 0.5;

/**
 * A corner is drawn to its place in units of one and a half of its tolerances: end, direction and checks come first, and of all ways to meet them
 * the one near the drawing is taken. Drawn closer, a bend made a degree short costs a check.
 */
const CORNERS = 1.5;

/**
 * What changes cost beside the scales that the method was tried with. Where the corners lie keeps the tube near the drawing; this settles
 * what they leave open, the plane of a bend of a few degrees most of all, and with it how steady the correction is.
 */
const CHEAPER = { straight: 2.5, angle: 2.5, rotation: 0.625 };

/**
 * How many degrees a degree more in a made bend may move a bend left, by the slopes at the drawing. What hands can set, and what is not straight about
 * it, come on top: a tenth of a degree then moves them by half a degree at most.
 */
const STEADY = 3;

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
	const { tooling, tolerance } = state.start.job;
	const current = tubeAtWork(state, state.plan.current);
	const marking = markingOf(state, current);
	if (outOfReach(state) === state.bends.length) return numbersOf(current.shape, current.trimStart, marking.by);
	const input = correctionOf(state);
	return settable(input, correct(input).shape, state.plan.current, stepsOf(tooling, tolerance), marking);
}

/** Fine enough to weigh one way against another: a step at this slope changes no residual by a thousandth of its tolerance. */
const NEAR_FLAT = () => 1e-4;

/**
 * The numbers of states that differ from this one by little, as they are found and not as hands set them: each is looked for from what
 * was found here, which is near.
 */
export function correctedNear(state: State): (other: State) => readonly Numbers[] {
	const made = outOfReach(state);
	const found = made === state.bends.length ? null : correct(correctionOf(state)).shape;
	return (other) => {
		const current = tubeAtWork(other, other.plan.current);
		const marking = markingOf(other, current);
		if (found === null) return numbersOf(current.shape, current.trimStart, marking.by);
		const input = correctionOf(other);
		const shape = asDrawn(input.shape, found, made);
		return numbersOf(correct({ ...input, shape }, NEAR_FLAT).shape, current.trimStart, marking.by);
	};
}

/** What the correction is asked: it begins at the drawing, whatever was planned before, so that the same tube gets the same numbers. */
export function correctionOf(state: State): CorrectionInput {
	const { start, design } = state;
	const { tolerance, units } = start.job;
	const made = outOfReach(state);
	const { shape, trimStart } = tubeAtWork(state, state.plan.current);
	const marking = markingOf(state, { trimStart });
	const places = corners(design.shape).slice(1, -1);
	const measures = measuresAfter(design, start.job, made);
	const drawn = tubeAtWork(state, numbersOf(asDrawn(shape, design.nominal, made), trimStart, marking.by));
	return {
		shape: drawn.shape,
		made,
		nominal: design.nominal,
		goal: design.goal,
		corners: { places, tolerances: places.map(() => CORNERS * tolerance.shape) },
		measures: measures.map((m) => ({ ...m, tolerance: AIM * m.tolerance })),
		tolerance: { position: tolerance.length, direction: AIM * tolerance.direction },
		edges: {
			shape: tolerance.shape,
			turn: tolerance.direction,
			measures: measures.map((measure) => measure.tolerance),
		},
		dear: dear(units),
		steady: STEADY,
		bounds: limits(state, drawn),
		stock: { length: state.piece - trimStart, stretch: marking.by.map(({ stretch }) => stretch) },
	};
}

function markingOf(state: State, { trimStart }: Pick<TubeAtWork, 'trimStart'>): Marking {
	const tube = rawTube(state, state.plan.current);
	return { trimStart, by: tube.bends.map((bend) => dieOn(tube, bend)) };
}

/** What is made as it is, the rest as drawn. */
function asDrawn(shape: Shape, drawn: Shape, made: number): Shape {
	return {
		straights: shape.straights.map((straight, i) => (i < made ? straight : at(drawn.straights, i))),
		bends: shape.bends.map((bend, i) => (i < made ? bend : { ...at(drawn.bends, i), radius: bend.radius })),
	};
}

function dear(units: Units): CorrectionInput['dear'] {
	const { straight, angle, rotation } = scales(units).dear;
	return {
		straight: CHEAPER.straight * straight,
		angle: CHEAPER.angle * angle,
		rotation: CHEAPER.rotation * rotation,
	};
}

/** What a set of numbers is expected to lead to, everything made being as it is. */
export function predicted(state: State, numbers: readonly Numbers[]): Predicted {
	return predictedOf(state, judgedTube(state, numbers, limitsOf(state)));
}

/** The same beside the limits of the finished tube. `left`: the largest miss in units of its tolerance, corners and all. */
export function tubeOutcome(state: State, numbers: readonly Numbers[]): TubeOutcome {
	const limits = limitsOf(state);
	const tube = judgedTube(state, numbers, limits);
	return { ...predictedOf(state, tube), left: largestMiss(tube, limits), within: keeps(tube, limits) };
}

const judgedTube = (state: State, numbers: readonly Numbers[], limits: Limits): Judged =>
	judged(frames(tubeAtWork(state, numbers).shape), limits);

function predictedOf(state: State, { endOffset, endAngle, off, values }: Judged): Predicted {
	const checks = state.design.checks.map(({ check }, i) => ({ name: check.name, value: at(values, i) }));
	return { endOffset, endAngle, shape: farthestCorner(off), checks };
}

/** The bend whose corner lies farthest from its place. */
export function farthestCorner(off: readonly number[]): { bend: number; off: number } {
	const bend = off.reduce((far, each, i) => (exceeds(each, at(off, far)) ? i : far), 0);
	return { bend: bend + 1, off: at(off, bend) };
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
export function recorrect(state: State, after: Correction['after']): State {
	const numbers = correctedNumbers(state);
	return { ...state, plan: planWith(state, numbers, after) };
}

export function planWith(state: State, numbers: readonly Numbers[], after: Correction['after']): PlanState {
	const before = state.plan.current;
	const remaining = state.bends.flatMap((bend, i) =>
		bend.made === null ? [{ bend: i + 1, ...at(numbers, i), was: at(before, i) }] : [],
	);
	const note: Correction = {
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
