import { solveDefinite } from './cholesky.ts';
import { dot } from './matrix.ts';
import { clamp } from './scalar.ts';

/** Columns of a matrix A with few rows, and for each what its variable may be. */
export interface Levers {
	columns: readonly (readonly number[])[];
	lower: readonly number[];
	upper: readonly number[];
}

/** From so short a step on, rounding decides whether the dual falls. */
const SHORTEST = 1e-9;
/** Each step but the last changes which variables their bounds hold; more than this no problem of a tube's size took. */
const MOST_CHANGES = 200;
/** A part of a sum that is no more than what rounding makes of it, a dozen rows over. */
const SWALLOWED = 1e-13;

/**
 * What is left of `misses`: A x + misses for the x within its bounds for which |A x + misses|^2 + |x|^2 is least.
 *
 * With few misses and many variables the work is in the dual (Saunders, Gammerman, Vovk: Ridge regression learning algorithm in dual variables, 1998):
 * at the least, x_j is -a_j.r held to its bounds, r being what is left. So r is where r - misses - A x(r) is 0, which is the slope of a convex function
 * made of parabolas, and Newton's method finds it in a few steps; their work grows with the number of variables, not with its cube.
 */
export function residualOf(misses: readonly number[], levers: Levers): number[] {
	let r = misses.map(() => 0);
	let now = dualAt(r, misses, levers);
	for (let step = 0; step < MOST_CHANGES; step++) {
		const by = downhillStep(curvatureOf(now.held, r.length, levers), now.slope);
		const fall = dot(by, now.slope);
		for (let part = 1; ; part /= 2) {
			const to = r.map((each, i) => each - part * by[i]!);
			const next = dualAt(to, misses, levers);
			// Where no bound was met or left, the step led to the bottom of the parabola.
			if (part === 1 && next.held.every((held, k) => held === now.held[k])) return to;
			if (part > SHORTEST && next.value > now.value - part * fall * 1e-4) continue;
			if (part <= SHORTEST) return r;
			[r, now] = [to, next];
			break;
		}
	}
	return r;
}

/** Newton's step. Beside levers so long that rounding swallows the 1 on the diagonal, as much as rounding swallows is put in its place. */
function downhillStep(curvature: number[][], slope: readonly number[]): number[] {
	const exact = solveDefinite(curvature, slope);
	if (exact !== null) return exact;
	const swallowed = SWALLOWED * curvature.reduce((sum, line, i) => sum + line[i]!, 0);
	const held = curvature.map((line, i) => line.map((value, j) => (i === j ? value + swallowed : value)));
	return solveDefinite(held, slope)!;
}

/** |r|^2 / 2 - misses.r + the sum of each variable's greatest x t - x^2 / 2, t = -a.r; its slope, and which variables their bounds hold there. */
function dualAt(r: readonly number[], misses: readonly number[], { columns, lower, upper }: Levers) {
	let value = dot(r, r) / 2 - dot(misses, r);
	const slope = r.map((each, i) => each - misses[i]!);
	const held = columns.map((a, k) => {
		const t = -dot(a, r);
		const x = clamp(t, lower[k]!, upper[k]!);
		value += x * t - x ** 2 / 2;
		for (let i = 0; i < a.length; i++) slope[i]! -= a[i]! * x;
		return Math.sign(t - x);
	});
	return { value, slope, held };
}

/** By the variables that no bound holds. */
function curvatureOf(held: readonly number[], size: number, { columns }: Levers): number[][] {
	const curvature = Array.from({ length: size }, (_, i) => Array.from({ length: size }, (__, j) => (i === j ? 1 : 0)));
	for (const [k, a] of columns.entries()) {
		if (held[k] !== 0) continue;
		for (let i = 0; i < size; i++) for (let j = 0; j <= i; j++) curvature[i]![j]! += a[i]! * a[j]!;
	}
	return curvature;
}
