/** Points and lines in space, apart from the project's own vectors: what is checked must not check itself. */
import type { Point } from '../../../src/tube/job.ts';

const dot = (a: Point, b: Point) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const less = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
/** From `a` so many times `d`. */
export const along = (a: Point, by: number, d: Point): Point => [a[0] + by * d[0], a[1] + by * d[1], a[2] + by * d[2]];
export const apart = (a: Point, b: Point) => Math.hypot(...less(a, b));

/** Where the lines of two straights meet: on the first, at the place nearest to the second. `u`, `v`: of length 1. */
export function meeting(a: Point, u: Point, b: Point, v: Point): Point {
	const [w, uv] = [less(b, a), dot(u, v)];
	return along(a, (dot(w, u) - dot(w, v) * uv) / (1 - uv * uv), u);
}
