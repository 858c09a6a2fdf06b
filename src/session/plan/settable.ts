import { type CorrectionInput, correct } from '../../fit/correct.ts';
import type { Bounds } from '../../fit/correction-input.ts';
import { at } from '../../maths/list.ts';
import { ceilTo, floorTo, nearestTo } from '../../maths/scalar.ts';
import { normalizeRotation } from '../../tube/angles.ts';
import type { Tooling } from '../../tube/job.ts';
import type { Shape } from '../../tube/shape.ts';
import { type MarkedBy, numbersOf } from '../estimate/tube-at-work.ts';
import type { Numbers } from '../protocol/asks.ts';

/** The least change of a number that hands can make: lengths in the job's unit, degrees. */
export interface Steps {
	/** The tape's division: a mark is changed by half of it or more, to a division. */
	tape: number;
	angle: number;
	rotation: number;
}

/** The part of a dial step that a target's change must have to count: a stop goes by whole steps, where it lands does not. */
const OF_DIAL_STEP = 0.1;
/** The same of what a rotation may be off by. */
const OF_ROTATION = 0.1;

export function stepsOf({ tape, dialStep }: Tooling, tolerance: { rotation: number }): Steps {
	return { tape, angle: OF_DIAL_STEP * dialStep, rotation: OF_ROTATION * tolerance.rotation };
}

/** What rounding leaves is taken up near what was found: changes for it are so much dearer, or a division of the tape would turn bends. */
const DEARER = 10;

/** A bend that is set a degree beside what was found moves those after it by no more than this, in degrees. */
const STEADY_WHERE_SET = 1;

const stiffer = ({ straight, angle, rotation }: CorrectionInput['dear']): CorrectionInput['dear'] => ({
	straight: straight / DEARER,
	angle: angle / DEARER,
	rotation: rotation / DEARER,
});

/** What is needed to turn a shape into marks. */
export interface Marking {
	trimStart: number;
	/** Of each bend. */
	by: readonly MarkedBy[];
}

/**
 * The numbers of a corrected shape as tape and dial can set them: bend by bend from the first that is free, what changes less than
 * hands can set stays as it is in `now`, marks go to a division of the tape, and all that is still to come takes that up, near what was found.
 */
export function settable(
	input: CorrectionInput,
	found: Shape,
	now: readonly Numbers[],
	steps: Steps,
	marking: Marking,
): Numbers[] {
	let shape = found;
	const numbers = numbersOf(found, marking.trimStart, marking.by);
	for (let i = input.made; i < found.bends.length; i++) {
		const wanted = at(numbersOf(shape, marking.trimStart, marking.by), i);
		const room = shifted(at(input.bounds.straights, i), wanted.fromStart - at(shape.straights, i));
		const set = setNear(wanted, at(now, i), steps, room);
		numbers[i] = set;
		const moved = withNumbers(shape, i, set, set.fromStart - wanted.fromStart);
		const near = { nominal: found, dear: stiffer(input.dear), steady: STEADY_WHERE_SET };
		const next = { ...input, ...near, shape: moved, made: i + 1 };
		shape = i + 1 < found.bends.length && moved !== shape ? correct(next).shape : moved;
	}
	return numbers;
}

const shifted = ([low, high]: Bounds, by: number): Bounds => [low + by, high + by];

function setNear(wanted: Numbers, now: Numbers, { tape, angle, rotation }: Steps, room: Bounds): Numbers {
	const turned = Math.abs(normalizeRotation(wanted.rotation - now.rotation));
	return {
		fromStart: markNear(wanted.fromStart, now.fromStart, tape, room),
		angle: Math.abs(wanted.angle - now.angle) < angle ? now.angle : wanted.angle,
		rotation: turned < rotation ? now.rotation : wanted.rotation,
	};
}

/**
 * A mark stays where it would move by less than half a division, or to the division that a tape shows for it already. Else it goes to the nearest
 * division that the limits allow.
 */
function markNear(wanted: number, now: number, tape: number, [low, high]: Bounds): number {
	const isAllowed = (mark: number) => mark >= low && mark <= high;
	const places = [nearestTo(wanted, tape), floorTo(wanted, tape), ceilTo(wanted, tape)];
	const mark = places.find(isAllowed) ?? wanted;
	const isSame = Math.abs(wanted - now) < tape / 2 || mark === nearestTo(now, tape);
	return isSame && isAllowed(now) ? now : mark;
}

function withNumbers(shape: Shape, i: number, { angle, rotation }: Numbers, by: number): Shape {
	const bend = at(shape.bends, i);
	if (by === 0 && angle === bend.angle && rotation === bend.rotation) return shape;
	return {
		straights: shape.straights.map((s, k) => (k === i ? s + by : s)),
		bends: shape.bends.map((b, k) => (k === i ? { ...b, angle, rotation } : b)),
	};
}
