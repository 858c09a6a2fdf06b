import type { Point } from '../../tube/job.ts';
import { cross, dot, scale, subtract } from '../../tube/vector.ts';

/** Directions of a drawing on paper: to the right and up. Both are units and square to one another. */
export interface View {
	name: string;
	right: Point;
	up: Point;
}

/** A tube whose corners stand out of a plane by less than this part of its length is drawn as flat. */
const FLAT = 0.02;

type Matrix = [number[], number[], number[]];

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
	const up = heights.reduce((sum, height) => sum + height, 0) < 0 ? scale(axes[1], -1) : axes[1];
	const front: View = { name: 'front view', right, up };
	if (extent(points, axes[2]) < FLAT * extent(points, axes[0])) return [front];
	// Looking down, what is up on the paper leads away from who stands in front.
	return [front, { name: 'top view', right, up: scale(cross(right, up), -1) }];
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
	) as Matrix;
	const { values, vectors } = symmetricAxes(spread);
	const order = [0, 1, 2].sort((a, b) => values[b]! - values[a]!);
	return order.map((k) => [0, 1, 2].map((i) => vectors[i]![k]!) as unknown as Point) as [Point, Point, Point];
}

/** Enough for three by three: each sweep squares what is left beside the diagonal. */
const SWEEPS = 12;

/**
 * Eigenvalues and unit eigenvectors (columns) of a symmetric matrix.
 * Source: Golub and Van Loan, "Matrix Computations", the cyclic Jacobi method.
 */
function symmetricAxes(symmetric: Matrix): { values: number[]; vectors: Matrix } {
	const a = symmetric.map((row) => [...row]) as Matrix;
	const v: Matrix = [
		[1, 0, 0],
		[0, 1, 0],
		[0, 0, 1],
	];
	for (let sweep = 0; sweep < SWEEPS; sweep++) {
		for (const [p, q] of [
			[0, 1],
			[0, 2],
			[1, 2],
		] as const) {
			if (Math.abs(a[p]![q]!) < 1e-300) continue;
			const tau = (a[q]![q]! - a[p]![p]!) / (2 * a[p]![q]!);
			const t = (tau >= 0 ? 1 : -1) / (Math.abs(tau) + Math.hypot(1, tau));
			const c = 1 / Math.hypot(1, t);
			rotate(a, v, p, q, c, t * c);
		}
	}
	return { values: [0, 1, 2].map((i) => a[i]![i]!), vectors: v };
}

function rotate(a: Matrix, v: Matrix, p: number, q: number, c: number, s: number): void {
	for (const row of [...a, ...v]) {
		const [x, y] = [row[p]!, row[q]!];
		row[p] = c * x - s * y;
		row[q] = s * x + c * y;
	}
	const [from, to] = [a[p]!, a[q]!];
	for (let i = 0; i < 3; i++) {
		const [x, y] = [from[i]!, to[i]!];
		from[i] = c * x - s * y;
		to[i] = s * x + c * y;
	}
}
