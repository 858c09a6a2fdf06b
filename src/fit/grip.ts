import { pointAt } from '../tube/drop.ts';
import type { ArcFrame, StraightFrame } from '../tube/frames.ts';
import type { Point, StraightPlace } from '../tube/job.ts';
import { combine, dot } from '../tube/vector.ts';

/** What moves a place on the tube: the straights, rotations and angles before these counts (from 0). */
export interface Carrier {
	straights: number;
	rotations: number;
	angles: number;
}

/** A point or a direction that a value follows. */
export interface Grip extends Carrier {
	of: 'point' | 'direction';
	at: Point;
	/** By how much the value grows per unit of each coordinate. */
	pull: Point;
	/** By how much more per degree of the first angle that does not carry it: of a corner, whose setback follows from its own angle. */
	own: number;
	/** The same per unit of that bend's radius: of a corner, and of a place within an arc. */
	wider: number;
}

export const before = (straight: number): Carrier => ({ straights: straight, rotations: straight, angles: straight });
export const placeGrip = (at: Point, pull: Point, by: Carrier): Grip => ({
	of: 'point',
	at,
	pull,
	own: 0,
	wider: 0,
	...by,
});
export const directionGrip = (at: Point, pull: Point, by: Carrier): Grip => ({
	of: 'direction',
	at,
	pull,
	own: 0,
	wider: 0,
	...by,
});

export function straightGrip({ straight, at }: StraightPlace, straights: readonly StraightFrame[], pull: Point): Grip {
	const by = before(straight - 1);
	const { start, end } = straights[straight - 1]!;
	return at === 'end' ? placeGrip(end, pull, { ...by, straights: straight }) : placeGrip(start, pull, by);
}

/** A place on an arc that the arc's own angle does not carry is moved by a wider arc all the same. */
export function withinGrip(arc: ArcFrame, turn: number, pull: Point, by: Carrier): Grip {
	const carried = by.angles === by.straights;
	return { ...placeGrip(pointAt(arc, turn), pull, by), wider: carried ? 0 : dot(pull, chordAt(arc, turn)) };
}

/** From an arc's start to its place at `turn` radians, over its radius. */
export const chordAt = ({ tangent, normal }: ArcFrame, turn: number): Point =>
	combine(Math.sin(turn), tangent, 1 - Math.cos(turn), normal);
