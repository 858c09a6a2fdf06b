import { eigen } from '../maths/eigen.ts';
import { sumOf } from '../maths/list.ts';
import { radians } from './angles.ts';
import type { Axis, Point } from './job.ts';
import { combine, cross, dot, scale, subtract } from './vector.ts';

/** How a view looks at the tube. */
export type ViewName = 'front' | 'top' | 'oblique' | 'x-y' | 'x-z' | 'turned';

/** Directions of a drawing on paper: to the right and up. Both are units and square to one another. */
export interface View {
	name: ViewName;
	right: Point;
	up: Point;
}

/** A tube whose corners stand out of a plane by less than this part of its length is drawn as flat. */
const DRAWN_FLAT = 0.02;

/**
 * The one or two views that show corner points best: square to the directions in which they spread most, second most and least. The direction
 * of greatest spread is to the right in both, the start end at the left; the second view is the first seen from above. One view
 * where all points lie in a plane.
 */
export function principalViews(points: readonly Point[]): View[] {
	const axes = spreadAxes(points);
	const [first, last] = [points[0]!, points.at(-1)!];
	const turned = dot(subtract(last, first), axes[0]) < 0;
	const right = turned ? scale(axes[0], -1) : axes[0];
	const heights = points.map((point) => dot(subtract(point, first), axes[1]));
	// What bulges, bulges upwards.
	const up = sumOf(heights) < 0 ? scale(axes[1], -1) : axes[1];
	const front: View = { name: 'front', right, up };
	if (extent(points, axes[2]) < DRAWN_FLAT * extent(points, axes[0])) return [front];
	// Looking down, what is up on the paper leads away from who stands in front.
	return [front, { name: 'top', right, up: scale(cross(right, up), -1) }];
}

/**
 * The views that a drawing by points has: its own x to the right and y up, and where the points do not lie in that plane, x to the right and z up.
 */
export function drawnViews(points: readonly Point[], { x, y, z }: Record<Axis, Point>): View[] {
	const front: View = { name: 'x-y', right: x, up: y };
	return isFlat(points, { x, y, z }) ? [front] : [front, { name: 'x-z', right: x, up: z }];
}

/** How far to the side and from above the oblique view looks, degrees. */
const ASIDE = 35;
const ABOVE = 25;

/**
 * The views of a workshop drawing along these axes: from the front (x to the right, y up), from above, and from aside and above. `from above` has
 * what lies behind further up, as it stands over the front view in third-angle projection (ISO 5456-2).
 */
export function workshopViews({ x, y, z }: Record<Axis, Point>): { front: View; top: View; oblique: View } {
	const [aside, above] = [radians(ASIDE), radians(ABOVE)];
	const right = combine(Math.cos(aside), x, -Math.sin(aside), z);
	const toward = combine(Math.sin(aside), x, Math.cos(aside), z);
	return {
		front: { name: 'front', right: x, up: y },
		top: { name: 'top', right: x, up: scale(z, -1) },
		oblique: { name: 'oblique', right, up: combine(Math.cos(above), y, -Math.sin(above), toward) },
	};
}

/** Whether points stand out of a plane so little that one view of it shows them all. */
export function isFlat(points: readonly Point[], { x, y, z }: Record<Axis, Point>): boolean {
	return extent(points, z) < DRAWN_FLAT * Math.max(extent(points, x), extent(points, y));
}

function extent(points: readonly Point[], axis: Point): number {
	const along = points.map((point) => dot(point, axis));
	return Math.max(...along) - Math.min(...along);
}

/** Unit vectors along which the points spread, the greatest spread first. */
function spreadAxes(points: readonly Point[]): [Point, Point, Point] {
	const middle = [0, 1, 2].map((i) => points.reduce((sum, point) => sum + point[i]!, 0) / points.length);
	const spread = [0, 1, 2].map((i) =>
		[0, 1, 2].map((j) => points.reduce((sum, point) => sum + (point[i]! - middle[i]!) * (point[j]! - middle[j]!), 0)),
	);
	const axes = eigen(spread).sort((a, b) => b.value - a.value);
	return axes.map(({ vector }) => vector) as unknown as [Point, Point, Point];
}
