/** Symmetric matrices, as few rows as a handful of unknowns of some dozens of machines need. Row by row, plain arrays. */

import { dot } from './gaussian.ts';

type Matrix = readonly (readonly number[])[];

/** The lower triangle L with L L' = `matrix`, which must be symmetric and positive definite. */
export function cholesky(matrix: Matrix): number[][] {
	const lower: number[][] = [];
	for (let i = 0; i < matrix.length; i++) {
		const line: number[] = [];
		for (let j = 0; j <= i; j++) {
			const other = j < i ? lower[j]! : line;
			let rest = matrix[i]![j]!;
			for (let n = 0; n < j; n++) rest -= line[n]! * other[n]!;
			if (j < i) line.push(rest / other[j]!);
			else if (rest > 0) line.push(Math.sqrt(rest));
			else throw new RangeError(`not positive definite: pivot ${i + 1} of ${matrix.length} is ${rest}`);
		}
		lower.push(line);
	}
	return lower;
}

/** The y with L y = `right`, L a lower triangle. */
export function forward(lower: Matrix, right: readonly number[]): number[] {
	const y: number[] = [];
	for (let i = 0; i < lower.length; i++) {
		const line = lower[i]!;
		let rest = right[i]!;
		for (let j = 0; j < i; j++) rest -= line[j]! * y[j]!;
		y.push(rest / line[i]!);
	}
	return y;
}

/** Inverse of a symmetric positive definite matrix. */
export function inverse(matrix: Matrix): number[][] {
	const lower = cholesky(matrix);
	// Column i of L^-1; the inverse is L^-T L^-1.
	const columns = matrix.map((_, i) =>
		forward(
			lower,
			matrix.map((_line, j) => (i === j ? 1 : 0)),
		),
	);
	return columns.map((a) => columns.map((b) => dot(a, b)));
}

/** matrix . vector */
export function times(matrix: Matrix, vector: readonly number[]): number[] {
	return matrix.map((line) => dot(line, vector));
}

const SWEEPS = 50;

/**
 * Eigenvalues of a symmetric matrix, each with its eigenvector of length 1, in no order. Jacobi's rotations (1846), cyclic:
 * slow for large matrices, exact and short for small ones.
 */
export function eigen(matrix: Matrix): { value: number; vector: number[] }[] {
	const size = matrix.length;
	const a = matrix.map((line) => line.slice());
	// Row i of `v` becomes the eigenvector of a[i][i].
	const v = a.map((_, i) => a.map((_line, j) => (i === j ? 1 : 0)));
	for (let sweep = 0; sweep < SWEEPS; sweep++) {
		let turned = false;
		for (let p = 0; p < size; p++) for (let q = p + 1; q < size; q++) turned = rotate(a, v, p, q) || turned;
		if (!turned) break;
	}
	return v.map((vector, i) => ({ value: a[i]![i]!, vector }));
}

/** Turns the plane of `p` and `q` so that a[p][q] becomes 0; false where it is so small that nothing changes. */
function rotate(a: number[][], v: number[][], p: number, q: number): boolean {
	const [app, aqq, apq] = [a[p]![p]!, a[q]![q]!, a[p]![q]!];
	if (Math.abs(apq) <= 1e-17 * Math.sqrt(Math.abs(app * aqq)) || apq === 0) return false;
	const half = (aqq - app) / (2 * apq);
	const t = (half < 0 ? -1 : 1) / (Math.abs(half) + Math.hypot(half, 1));
	const c = 1 / Math.hypot(t, 1);
	const s = t * c;
	for (const line of a) [line[p], line[q]] = [c * line[p]! - s * line[q]!, s * line[p]! + c * line[q]!];
	for (const m of [a, v]) {
		const [row, other] = [m[p]!, m[q]!];
		m[p] = row.map((x, j) => c * x - s * other[j]!);
		m[q] = row.map((x, j) => s * x + c * other[j]!);
	}
	a[p]![q] = 0;
	a[q]![p] = 0;
	return true;
}
