/** Symmetric matrices by their triangle: A. L. Cholesky's method, as in Golub and Van Loan, Matrix Computations, section 4.2. */
import { dot, type Matrix } from './matrix.ts';

/**
 * The lower triangle L with L L' = `matrix`, of which only the lower half is read. `pivot` makes L's diagonal of what is left of the
 * matrix's; null where it gives none. A column under a diagonal of 0 is 0.
 */
function factor(matrix: Matrix, pivot: (rest: number, i: number) => number | null): number[][] | null {
	const lower: number[][] = [];
	for (let i = 0; i < matrix.length; i++) {
		const line: number[] = [];
		for (let j = 0; j <= i; j++) {
			const other = j < i ? lower[j]! : line;
			let rest = matrix[i]![j]!;
			for (let n = 0; n < j; n++) rest -= line[n]! * other[n]!;
			const value = j === i ? pivot(rest, i) : other[j] === 0 ? 0 : rest / other[j]!;
			if (value === null) return null;
			line.push(value);
		}
		lower.push(line);
	}
	return lower;
}

/**
 * The lower triangle L with L L' = `matrix`. `least`: what no pivot can be below but for rounding, 0 where nothing is known of that.
 * @throws RangeError where it is not symmetric and positive definite
 */
export function cholesky(matrix: Matrix, least = 0): number[][] {
	const lower = factor(matrix, (rest, i) => {
		if (least > 0 && rest < least) return Math.sqrt(least);
		if (rest > 0) return Math.sqrt(rest);
		throw new RangeError(`not positive definite: pivot ${i + 1} of ${matrix.length} is ${rest}`);
	});
	return lower!;
}

/** A part of a variance that is no more than what the arithmetic rounds. */
const VARIANCE_ROUNDING = 1e-12;

/** The lower triangle L with L L' = `covariance`, which may have unknowns without any spread or that follow wholly from others. */
export function triangle(covariance: Matrix): number[][] {
	return factor(covariance, (rest, i) => (rest > covariance[i]![i]! * VARIANCE_ROUNDING ? Math.sqrt(rest) : 0))!;
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

/** The x with L' x = `right`, L a lower triangle. */
function backward(lower: Matrix, right: readonly number[]): number[] {
	const x = [...right];
	for (let i = x.length - 1; i >= 0; i--) {
		for (let k = i + 1; k < x.length; k++) x[i]! -= lower[k]![i]! * x[k]!;
		x[i]! /= lower[i]![i]!;
	}
	return x;
}

/** The x with L L' x = `right`, L a lower triangle. */
export function solvedBy(lower: Matrix, right: readonly number[]): number[] {
	return backward(lower, forward(lower, right));
}

/** The x with `matrix` x = `right`; null where the matrix, of which only the lower half is read, is not positive definite. */
export function solveDefinite(matrix: Matrix, right: readonly number[]): number[] | null {
	const lower = factor(matrix, (rest) => (rest > 0 ? Math.sqrt(rest) : null));
	return lower && solvedBy(lower, right);
}

/** The inverse, symmetric to the last digit; `least` as above. @throws RangeError where the matrix is not symmetric and positive definite */
export const inverse = (matrix: Matrix, least = 0): number[][] => inverseBy(cholesky(matrix, least));

/** The inverse of L L', L a lower triangle: symmetric to the last digit. */
export function inverseBy(lower: Matrix): number[][] {
	// Column i of L^-1; the inverse is L^-T L^-1.
	const columns = lower.map((_, i) =>
		forward(
			lower,
			lower.map((_line, j) => (i === j ? 1 : 0)),
		),
	);
	return columns.map((a) => columns.map((b) => dot(a, b)));
}
