import { leastWithin } from '../maths/golden-section.ts';
import { clamp } from '../maths/scalar.ts';
import { radians } from './angles.ts';
import { pointAt } from './drop.ts';
import type { ArcFrame } from './frames.ts';
import type { Point } from './job.ts';
import { distance, dot, step, subtract } from './vector.ts';

export interface Segment {
	start: Point;
	end: Point;
}

/** Distance of a point from a segment, which may have no length. */
export function pointToSegment(point: Point, { start, end }: Segment): number {
	const along = subtract(end, start);
	const squared = dot(along, along);
	const at = squared === 0 ? 0 : clamp(dot(subtract(point, start), along) / squared, 0, 1);
	return distance(point, step(start, at, along));
}

/**
 * Least distance between two segments. It is reached at an end of one of them, or else where both lines come nearest, which is
 * then inside both.
 */
export function segmentToSegment(a: Segment, b: Segment): number {
	const ends = Math.min(
		pointToSegment(a.start, b),
		pointToSegment(a.end, b),
		pointToSegment(b.start, a),
		pointToSegment(b.end, a),
	);
	const u = subtract(a.end, a.start);
	const v = subtract(b.end, b.start);
	const [uu, uv, vv] = [dot(u, u), dot(u, v), dot(v, v)];
	const determinant = uu * vv - uv * uv;
	// Near parallel lines the ends tell as much, and this quotient nothing.
	if (determinant <= 1e-12 * uu * vv) return ends;
	const between = subtract(b.start, a.start);
	const onA = (dot(u, between) * vv - dot(v, between) * uv) / determinant;
	const onB = (dot(u, between) * uv - dot(v, between) * uu) / determinant;
	if (onA < 0 || onA > 1 || onB < 0 || onB > 1) return ends;
	return Math.min(ends, distance(step(a.start, onA, u), step(b.start, onB, v)));
}

/** Least distance of a point from the part of an arc that lies `from` radians and more into it. */
export function pointToArc(point: Point, arc: ArcFrame, from: number): number {
	const to = radians(arc.angle);
	const spoke = subtract(point, arc.center);
	const nearest = Math.atan2(dot(spoke, arc.tangent), -dot(spoke, arc.normal));
	const ends = Math.min(distance(point, pointAt(arc, from)), distance(point, pointAt(arc, to)));
	if (nearest < from || nearest > to) return ends;
	return Math.min(ends, distance(point, pointAt(arc, nearest)));
}

/**
 * Least value of a distance `f` over [low, high], `f` changing by no more than `slope` times its argument. A part in which it cannot
 * fall under `limit`, or under the best so far by more than `precision`, is left out; the best place is then searched on to the last
 * digits. Infinity where nothing under `limit` was met: what lies under it by less than `precision` may be missed.
 */
export function leastOver(
	[low, high]: readonly [number, number],
	f: (x: number) => number,
	slope: number,
	{ limit, precision }: { limit: number; precision: number },
): number {
	let best = { value: limit, from: low, to: high };
	const open: [number, number][] = [[low, high]];
	for (let part = open.pop(); part; part = open.pop()) {
		const [a, b] = part;
		const middle = (a + b) / 2;
		const value = f(middle);
		if (value < best.value) best = { value, from: a, to: b };
		const reach = slope * ((b - a) / 2);
		if (Math.max(0, value - reach) < best.value - precision) open.push([a, middle], [middle, b]);
	}
	if (best.value === limit) return Number.POSITIVE_INFINITY;
	return Math.min(best.value, leastWithin(best.from, best.to, f), f(low), f(high));
}
