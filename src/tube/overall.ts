import { pointAt, tangentAt } from './drop.ts';
import type { Frames } from './frames.ts';
import type { Axis, Point, StraightPlace } from './job.ts';
import { summits } from './swing.ts';
import { cross, dot } from './vector.ts';

/** The finished tube's size along bend 1's axes, outside to outside: x along straight 1, y toward bend 1's inside, z square to both. */
export type Overall = Record<Axis, number>;

/** The ring round the tube at a place: its middle, the tube's direction there, and how far it stands along the axis that was asked for. */
export interface Ring {
	of: StraightPlace | { bend: number; turn: number };
	place: Point;
	direction: Point;
}

export function overall(at: Frames, od: number): Overall {
	return { x: overallIn(at, od, 'x'), y: overallIn(at, od, 'y'), z: overallIn(at, od, 'z') };
}

/** The same along one axis. `end`: along the last bend's axes. */
export function overallIn(at: Frames, od: number, axis: Axis, end?: 'end'): number {
	return sizeAlong(at, od, axisOf(at, axis, end));
}

/** The same along any direction. */
export function sizeAlong(at: Frames, od: number, up: Point): number {
	const { top, bottom } = outermost(at, od, up);
	return height(top, up, od / 2) - height(bottom, up, -od / 2);
}

/** Bend 1's axis in space, or with `end` the last bend's: along the last straight, toward that bend's inside, square to both. */
export function axisOf({ straights, arcs }: Frames, axis: Axis, end?: 'end'): Point {
	const x = straights.at(end ? -1 : 0)!.direction;
	if (axis === 'x') return x;
	const y = end ? arcs.at(-1)!.endNormal : arcs[0]!.normal;
	return axis === 'y' ? y : cross(x, y);
}

/**
 * The rings on which the tube's outside comes farthest along a direction and against it. A straight does so at its ends; an arc there or where it
 * runs square to the direction, since its outside bends no sharper than its center line stands off its center.
 */
export function outermost(at: Frames, od: number, up: Point): { top: Ring; bottom: Ring } {
	const half = od / 2;
	const rings = ringsOf(at, up);
	const farther = (a: Ring, b: Ring) => (height(b, up, half) > height(a, up, half) ? b : a);
	const lower = (a: Ring, b: Ring) => (height(b, up, -half) < height(a, up, -half) ? b : a);
	return { top: rings.reduce(farther), bottom: rings.reduce(lower) };
}

function ringsOf({ straights, arcs }: Frames, up: Point): Ring[] {
	return [
		...straights.flatMap(({ start, end, direction }, i): Ring[] => [
			{ of: { straight: i + 1 }, place: start, direction },
			{ of: { straight: i + 1, at: 'end' }, place: end, direction },
		]),
		...arcs.flatMap((arc, i) =>
			summits(arc, up).map(
				(turn): Ring => ({ of: { bend: i + 1, turn }, place: pointAt(arc, turn), direction: tangentAt(arc, turn) }),
			),
		),
	];
}

/** How much of its radius a ring rises along a direction: all where the tube runs square to it, none along it. */
export const ringRise = (direction: Point, up: Point): number => Math.sqrt(Math.max(0, 1 - dot(direction, up) ** 2));

const height = ({ place, direction }: Ring, up: Point, half: number): number =>
	dot(place, up) + half * ringRise(direction, up);
