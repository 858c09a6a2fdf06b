import { sumOf } from '../maths/list.ts';
import { normalizeRotation } from './angles.ts';
import { arcLength } from './arcs.ts';
import type { Job } from './job.ts';

/** Where a mark goes round the tube, against bend 1's. */
export type Face = 'same' | 'opposite' | 'other';
export type TurnWay = 'clockwise' | 'counterclockwise' | 'either' | 'none';

export interface Around {
	face: Face;
	/** Degrees in (-180, 180], and that as a length on the outside; positive clockwise looking from start end to far end. */
	around: { degrees: number; length: number };
}
export interface TubeTurn {
	/** |rotation|. */
	degrees: number;
	/** Seen at the clamp side of the die, looking along the straight that lies in the die toward the far end. */
	way: TurnWay;
}

/** Rotations nearer to 0 or 180 than this, in degrees, need no turn or may go either way. */
const TURN_ROUNDING = 0.05;

/**
 * Where bend number `bend` (from 1) has its mark round the tube. `rotations` are all bends', bend 1's first; bend 1's own sets
 * where its mark lies and is not counted. A bend moves no line round the tube, so rotations simply add on the unbent tube.
 */
export function around(job: Job, rotations: readonly number[], bend: number): Around {
	const degrees = normalizeRotation(sumOf(rotations.slice(1, bend)));
	const near = (angle: number) => Math.abs(Math.abs(degrees) - angle) <= job.tolerance.rotation;
	const face = near(0) ? 'same' : near(180) ? 'opposite' : 'other';
	return { face, around: { degrees, length: arcLength(degrees, job.tube.od / 2) } };
}

/**
 * How the tube itself is turned before bend number `bend` (from 1). The machine's plane stands still, so the tube turns against
 * the rotation: a right-hand turn about the travel is clockwise to one who looks along it, its opposite counterclockwise.
 */
export function tubeTurn(rotation: number, bend: number): TubeTurn {
	const folded = normalizeRotation(rotation);
	const degrees = Math.abs(folded);
	if (bend === 1 || degrees <= TURN_ROUNDING) return { degrees, way: 'none' };
	if (degrees >= 180 - TURN_ROUNDING) return { degrees, way: 'either' };
	return { degrees, way: folded > 0 ? 'counterclockwise' : 'clockwise' };
}

/** How far the last bend's plane lies round the tube from the first one's, degrees, whole turns and all. */
export const rotationsAfterFirst = (bends: readonly { rotation: number }[]): number =>
	sumOf(bends.slice(1).map(({ rotation }) => rotation));
