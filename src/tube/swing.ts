import { radians } from './angles.ts';
import { farthestFromLine, pointAt } from './drop.ts';
import { type ArcFrame, frames, type StraightFrame } from './frames.ts';
import type { Point } from './job.ts';
import type { Shape } from './shape.ts';
import { across, dot, norm, step, subtract } from './vector.ts';

/**
 * The room that a part of the tube takes round the die, measured to the outside of the tube. `above` and `below` the machine's plane (the
 * plane of the die and of the tube in it) go for a die that lies to the left of the tube, as seen standing at the clamp and looking
 * toward the far end; where it lies to the right, the two change places.
 */
export interface Swing {
	/** Greatest distance from the die's center, in the machine's plane. */
	reach: number;
	above: number;
	below: number;
}

/** Diameter of the tube, and the raw length beyond the finished end that swings or stands along with the part. */
interface RawEnd {
	od: number;
	trim: number;
}

/**
 * What swings while bend number `bend` (from 1) is pulled: the part already made, which lies beyond the clamp, with the raw start end.
 * It turns with the die about the die's axis, so that no point of it changes its distance from the axis or its height: both can be
 * taken from the shape as it is, with this bend's plane for the machine's.
 */
export function swing(shape: Shape, bend: number, { od, trim }: RawEnd, at = frames(shape)): Swing {
	const straights = at.straights.slice(0, bend);
	const { start, direction, end } = straights[0]!;
	straights[0] = { start: step(start, -trim, direction), end, direction };
	return roomOf(straights, at.arcs.slice(0, bend - 1), at.arcs[bend - 1]!, od);
}

/**
 * What stands still behind the die while bend number `bend` is pulled once more although bends after it are made: everything from
 * this bend's end on, with the raw far end.
 */
export function trailing(shape: Shape, bend: number, { od, trim }: RawEnd): Swing {
	const at = frames(shape);
	const straights = at.straights.slice(bend);
	const { start, direction, end } = straights.at(-1)!;
	straights[straights.length - 1] = { start, end: step(end, trim, direction), direction };
	return roomOf(straights, at.arcs.slice(bend), at.arcs[bend - 1]!, od);
}

function roomOf(straights: readonly StraightFrame[], arcs: readonly ArcFrame[], die: ArcFrame, od: number): Swing {
	// A straight comes farthest at its ends; an arc perhaps between them, but its ends are ends of straights.
	const ends = straights.flatMap(({ start, end }) => [start, end]);
	const fromAxis = (point: Point) => norm(across(subtract(point, die.center), die.binormal));
	const height = (point: Point) => dot(subtract(point, die.center), die.binormal);
	const axis = { start: die.center, end: die.center, direction: die.binormal };
	const reaches = [...ends.map(fromAxis), ...arcs.map((arc) => farthestFromLine(axis, arc).distance)];
	const heights = [...ends, ...arcs.flatMap((arc) => summits(arc, die.binormal).map((turn) => pointAt(arc, turn)))].map(
		height,
	);
	const half = od / 2;
	return {
		reach: Math.max(...reaches) + half,
		above: Math.max(0, ...heights) + half,
		below: half - Math.min(0, ...heights),
	};
}

/** The places inside an arc, in radians into it, that lie highest and lowest along a direction, if it has any there. */
export function summits(arc: ArcFrame, up: Point): number[] {
	// Height along the arc is R (sin x tangent - cos x normal).up and the center's: level where tan x = -tangent.up / normal.up.
	const level = Math.atan2(-dot(arc.tangent, up), dot(arc.normal, up));
	const end = radians(arc.angle);
	return [level - Math.PI, level, level + Math.PI].filter((x) => x > 0 && x < end);
}
