import { zeroBetween } from '../maths/halving.ts';
import { clamp } from '../maths/scalar.ts';
import { angleBetween, cosine, degrees, radians } from './angles.ts';
import type { ArcFrame, StraightFrame } from './frames.ts';
import type { Point } from './job.ts';
import { across, combine, cross, dot, norm, subtract } from './vector.ts';

/** Distance of a point from the line of a straight. */
export const distanceFromLine = (line: StraightFrame, point: Point): number =>
	norm(cross(line.direction, subtract(point, line.start)));

/** Direction of travel at `turn` radians into an arc. */
export const tangentAt = (arc: ArcFrame, turn: number): Point =>
	combine(Math.cos(turn), arc.tangent, Math.sin(turn), arc.normal);

/** The point of the center line at `turn` radians into an arc. */
export const pointAt = (arc: ArcFrame, turn: number): Point => {
	const radial = combine(Math.sin(turn), arc.tangent, -Math.cos(turn), arc.normal);
	return combine(1, arc.center, arc.radius, radial);
};

/** Steps in which an arc is searched: the slope of the squared distance has at most four zeros in a full circle. */
const STEPS = 24;

/**
 * The largest perpendicular distance of an arc's center line from the line of a straight, and how far into the arc it lies
 * (radians). In one plane that is where the tube runs parallel to the line, else an end of the arc; out of plane it is where the
 * distance stops growing, which is found as the zero of its slope.
 */
export function farthestFromLine(line: StraightFrame, arc: ArcFrame): { distance: number; turn: number } {
	// Seen along the line, the arc is w(x) = middle + R (sin x along - cos x aside).
	const u = line.direction;
	const middle = across(subtract(arc.center, line.start), u);
	const along = across(arc.tangent, u);
	const aside = across(arc.normal, u);
	const [ma, mn, aa, nn, an] = [
		dot(middle, along),
		dot(middle, aside),
		dot(along, along),
		dot(aside, aside),
		dot(along, aside),
	];
	// Half the derivative of |w|^2 by x, over R.
	const slope = (x: number) => {
		const [s, c] = [Math.sin(x), Math.cos(x)];
		return ma * c + mn * s + arc.radius * ((aa - nn) * s * c + an * (s * s - c * c));
	};
	const end = radians(arc.angle);
	let best = { distance: distanceFromLine(line, arc.start), turn: 0 };
	const offer = (distance: number, turn: number) => {
		if (distance > best.distance) best = { distance, turn };
	};
	offer(distanceFromLine(line, arc.end), end);
	let before = slope(0);
	for (let i = 1; i <= STEPS; i++) {
		const [low, high] = [(end * (i - 1)) / STEPS, (end * i) / STEPS];
		const after = slope(high);
		// Only a fall from growing to shrinking is a largest distance.
		if (before > 0 && after <= 0) {
			const turn = zeroBetween(slope, low, high);
			offer(distanceFromLine(line, pointAt(arc, turn)), turn);
		}
		before = after;
	}
	return best;
}

/** The acute angle between two directions' lines, in degrees. */
export function acuteAngle(a: Point, b: Point): number {
	const angle = angleBetween(a, b);
	return Math.min(angle, 180 - angle);
}

/** What `"surface": "across"` adds: OD/2 for the straight edge's face, and as much of OD/2 as a ring round the tube rises. */
export const acrossSurface = (od: number, acute: number): number => (od / 2) * (1 + cosine(acute));

/** Directions this near, in degrees, count as parallel: finer than any instrument at the bench shows. */
const PARALLEL = 0.1;

/** Whether the tube runs parallel to the line of a straight anywhere in an arc, its ends included. */
export function runsParallel(line: StraightFrame, arc: ArcFrame): boolean {
	const u = line.direction;
	// In the arc's plane the tangent comes nearest to the line at this turn, and to the line reversed half a turn on.
	const nearest = degrees(Math.atan2(dot(u, arc.normal), dot(u, arc.tangent)));
	return [nearest, nearest - 180, nearest + 180].some((turn) => {
		const inside = clamp(turn, 0, arc.angle);
		return acuteAngle(u, tangentAt(arc, radians(inside))) <= PARALLEL;
	});
}
