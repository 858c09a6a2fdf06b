import { rawArc } from '../tube/arcs.ts';
import { shapeEnd } from '../tube/frames.ts';
import type { ArcBend, Shape } from '../tube/shape.ts';
import type { Design } from './design.ts';
import type { Numbers } from './protocol.ts';
import type { Start } from './start.ts';
import type { BendState, State } from './state.ts';

/** The tube as it is and is planned, with where it lies in the raw piece. Lengths in the job's unit. */
export interface TubeAtWork {
	shape: Shape;
	/** To cut off at the start end so that straight 1 comes out as designed. */
	trimStart: number;
	/** Raw tube used from the raw start end to the last bend's end tangent. */
	used: number;
	/** To cut off at the far end; below 0 where the piece is short of the last straight by that much. */
	trimEnd: number;
}

type Known = Pick<State, 'start' | 'design' | 'bends' | 'piece'>;

/**
 * The centre line with each made bend as made and every other as in `numbers`. An arc keeps the length it was
 * wrapped with: opening it lets its radius grow. The last straight is the one that brings the far end nearest to its
 * designed place, since that is decided only when the end is cut; a short piece ends before it.
 */
export function tubeAtWork(state: Known, numbers: readonly Numbers[]): TubeAtWork {
	const { start, design } = state;
	const { stretch, markOffset } = start.job.tooling;
	const straights: number[] = [];
	const bends: ArcBend[] = [];
	let trimStart = 0;
	let end = 0;
	for (const [i, bend] of state.bends.entries()) {
		const planned = at(numbers, i);
		const from = (bend.mark ?? planned.fromStart) + markOffset;
		if (i === 0) trimStart = from - at(design.nominal.straights, 0);
		straights.push(from - (i === 0 ? trimStart : end));
		// The tube is laid with bend 1's plane as the drawing has it: how it lay in the machine does not matter.
		const rotation = i === 0 ? at(design.shape.bends, 0).rotation : (bend.rotation ?? planned.rotation);
		const arc = { ...arcOf(bend, planned, design.radius), rotation };
		bends.push(arc);
		end = from + rawArc(arc.angle, arc.radius, stretch);
	}
	const wanted = lastStraight(straights, bends, design);
	const left = Math.max(0, state.piece - end);
	const shape = { straights: [...straights, Math.min(wanted, left)], bends };
	return { shape, trimStart, used: end, trimEnd: state.piece - end - wanted };
}

function arcOf(bend: BendState, planned: Numbers, radius: number): Omit<ArcBend, 'rotation'> {
	const angle = bend.made?.angle ?? planned.angle;
	const wrapped = Math.max(angle, bend.relievedFrom ?? 0);
	return { angle, radius: (radius * wrapped) / angle };
}

/** Length of the last straight that brings the far end nearest to its designed place, not below 0. */
function lastStraight(straights: readonly number[], bends: readonly ArcBend[], design: Design): number {
	const { end, direction } = shapeEnd({ straights: [...straights, 0], bends });
	const along = direction.reduce((sum, d, i) => sum + d * (at(design.goal.end, i) - at(end, i)), 0);
	return Math.max(0, along);
}

/** Distance from the raw start end to the end tangent of the bend before a bend (counted from 1); 0 before bend 1. */
export function endBefore(state: Known & Pick<State, 'plan'>, bend: number): number {
	return tubeAtWork({ ...state, bends: state.bends.slice(0, bend - 1) }, state.plan.current).used;
}

/** Marks, angles and rotations by which a shape is made; marks from the raw start end. */
export function numbersOf(shape: Shape, trimStart: number, start: Start): Numbers[] {
	const { stretch, markOffset } = start.job.tooling;
	let end = trimStart;
	return shape.bends.map((bend, i) => {
		const from = end + at(shape.straights, i);
		end = from + rawArc(bend.angle, bend.radius, stretch);
		return { fromStart: from - markOffset, angle: bend.angle, rotation: bend.rotation };
	});
}

export function at<T>(list: readonly T[], index: number): T {
	const found = list[index];
	if (found === undefined) throw new RangeError(`index ${index} lies outside a list of ${list.length}`);
	return found;
}
