import type { Matrix } from './matrix.ts';

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
