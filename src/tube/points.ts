import { upToThousandth } from '../maths/scalar.ts';
import { angleBetween, degrees, normalizeRotation } from './angles.ts';
import { setback } from './arcs.ts';
import { corners } from './frames.ts';
import type { Bend, Point } from './job.ts';
import { cross, distance, dot, norm, subtract } from './vector.ts';

/** A shape as a fabricator bends it, all bends on one die. */
export interface BendList {
	bends: Bend[];
	last: number;
}

/** What a list of points wants at one of them to be a tube. */
export type PointFact =
	| { code: 'three-points' | 'another-point' | 'out-of-line' | 'aside' }
	/** So much further from the point before it: these bends need that room. */
	| { code: 'further'; by: number; bends: readonly number[] };

/** What keeps a list of points from being a tube: `point` counts from 0. */
export interface PointFault {
	point: number;
	fact: PointFact;
}

/** Corners flatter than this, in degrees, or folded back to within this of 180, have no bend to speak of. */
const LEAST_ANGLE = 0.01;

/** A straight shorter than this part of what it lies between (corners, radii) is none, and surely not a negative one. */
export const NO_STRAIGHT = 1e-12;

/**
 * Torsion angle of four points in degrees, (-180, 180]: how far the plane of p1 p2 p3 is turned from the plane of p0 p1 p2
 * about the direction p1 -> p2, by the right-hand rule (the IUPAC sign: clockwise seen along p1 -> p2 is positive).
 */
export function torsion(p0: Point, p1: Point, p2: Point, p3: Point): number {
	const a = subtract(p1, p0);
	const b = subtract(p2, p1);
	const c = subtract(p3, p2);
	const bc = cross(b, c);
	return normalizeRotation(degrees(Math.atan2(norm(b) * dot(a, bc), dot(cross(a, b), bc))));
}

/** Faults of the corners alone, whatever the radius: points that coincide, lie in a line or turn straight back. */
function cornerFaults(points: readonly Point[]): PointFault[] {
	if (points.length < 3) {
		return [{ point: 0, fact: { code: 'three-points' } }];
	}
	return points.slice(1).flatMap((point, i): PointFault[] => {
		const at = i + 1;
		const before = subtract(point, points[i]!);
		if (norm(before) === 0) return [{ point: at, fact: { code: 'another-point' } }];
		const next = points[at + 1];
		if (!next || distance(point, next) === 0) return [];
		const angle = angleBetween(before, subtract(next, point));
		if (angle < LEAST_ANGLE) return [{ point: at, fact: { code: 'out-of-line' } }];
		return angle > 180 - LEAST_ANGLE ? [{ point: at, fact: { code: 'aside' } }] : [];
	});
}

/** Bends for points that have been found faultless; straights may come out negative where corners are too near. */
function bendsBetween(points: readonly Point[], radius: number): BendList {
	const corner = points.slice(1, -1).map((point, i) => {
		const angle = angleBetween(subtract(point, points[i]!), subtract(points[i + 2]!, point));
		return { angle, back: setback(angle, radius) };
	});
	const straight = (i: number) => {
		const whole = distance(points[i]!, points[i + 1]!);
		const rest = whole - (corner[i - 1]?.back ?? 0) - (corner[i]?.back ?? 0);
		return Math.abs(rest) < NO_STRAIGHT * whole ? 0 : rest;
	};
	const bends = corner.map(({ angle }, i) => ({
		straight: straight(i),
		angle,
		rotation: i === 0 ? 0 : torsion(points[i - 1]!, points[i]!, points[i + 1]!, points[i + 2]!),
	}));
	return { bends, last: straight(corner.length) };
}

/** The bends at the ends of straight k, of a tube with so many bends, that want more room than there is between them. */
export function bendsWanting(k: number, bends: number, before = 0): number[] {
	return [k - 1, k].filter((bend) => bend >= 1 && bend <= bends).map((bend) => bend + before);
}

/**
 * All that keeps these points from being a tube of this radius, in the points' order; empty when nothing does. `before`: how many points of
 * the drawing stand before the first of these.
 */
export function pointFaults(points: readonly Point[], radius: number, before = 0): PointFault[] {
	const faults = cornerFaults(points);
	if (faults.length > 0) return faults;
	const { bends, last } = bendsBetween(points, radius);
	return [...bends.map((bend) => bend.straight), last].flatMap((straight, i) => {
		if (straight >= 0) return [];
		const by = upToThousandth(-straight);
		return [{ point: i + 1, fact: { code: 'further', by, bends: bendsWanting(i + 1, bends.length, before) } }];
	});
}

/**
 * Bends for sharp-corner points, ends included; the first rotation is 0. Straights may be negative where corners lie closer
 * than their setbacks: the caller checks, or asks `pointFaults` first.
 * Throws RangeError for points that coincide, lie in a line or turn straight back.
 */
export function pointsToBends(points: readonly Point[], radius: number): BendList {
	const fault = cornerFaults(points)[0];
	if (fault) throw new RangeError(`points[${fault.point}] makes no tube: ${fault.fact.code}`);
	return bendsBetween(points, radius);
}

/** The sharp-corner points of a list of bends, ends included, in the tube's own frame (see `frames`). */
export function bendsToPoints({ bends, last }: BendList, radius: number): Point[] {
	return corners({
		straights: [...bends.map((bend) => bend.straight), last],
		bends: bends.map(({ angle, rotation }) => ({ angle, rotation, radius })),
	});
}
