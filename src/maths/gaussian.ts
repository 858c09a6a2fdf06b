import { dot } from './matrix.ts';
import { normalCdf, normalPdf } from './normal.ts';

/** A vector of unknowns known as a normal distribution: means and their covariance matrix. */
export interface Gaussian {
	readonly mean: readonly number[];
	readonly cov: readonly (readonly number[])[];
}

/** Covariance of each unknown with the combination `row` of them; what lies behind the end of the row is not in it. */
export function covarianceWith(g: Gaussian, row: readonly number[]): number[] {
	const { cov } = g;
	const c: number[] = [];
	for (let i = 0; i < cov.length; i++) c.push(dot(row, cov[i]!));
	return c;
}

/** What a reading of `row` . x with its own `variance` is expected to be: the surprise of `value`, and its variance. */
export function surprise(g: Gaussian, row: readonly number[], value: number, variance: number) {
	return { miss: value - dot(row, g.mean), variance: dot(row, covarianceWith(g, row)) + variance };
}

/**
 * `g` after one reading of `row` . x, whose own error has `variance`. `weight` is the probability that the reading is no
 * blunder: with 1 this is Kalman's scalar update, below 1 the moments of the mixture of having read and not having read.
 */
export function updated(g: Gaussian, row: readonly number[], value: number, variance: number, weight = 1): Gaussian {
	const c = covarianceWith(g, row);
	const s = dot(row, c) + variance;
	const miss = value - dot(row, g.mean);
	const spread = -weight / s + (weight * (1 - weight) * miss * miss) / (s * s);
	const mean: number[] = [];
	for (let i = 0; i < c.length; i++) mean.push(g.mean[i]! + (weight * miss * c[i]!) / s);
	return { mean, cov: plus(g.cov, spread, c) };
}

/** cov + factor c c'. */
function plus(cov: Gaussian['cov'], factor: number, c: readonly number[]): number[][] {
	const sum: number[][] = [];
	for (let i = 0; i < c.length; i++) {
		const line: number[] = [];
		const old = cov[i]!;
		for (let j = 0; j < c.length; j++) line.push(old[j]! + factor * (c[i]! * c[j]!));
		sum.push(line);
	}
	return sum;
}

/** `g` with unknown `i` replaced by one that has nothing to do with the others. */
export function replaced(g: Gaussian, i: number, mean: number, variance: number): Gaussian {
	return {
		mean: g.mean.map((m, j) => (j === i ? mean : m)),
		cov: g.cov.map((line, r) => line.map((p, c) => (r === i && c === i ? variance : r === i || c === i ? 0 : p))),
	};
}

/**
 * Mean and variance of max(A, B) of two normal variables, and the probability `first` that A is the larger; a third
 * variable's covariance with the maximum is cov(x,A) first + cov(x,B) (1 - first).
 * C. E. Clark, "The greatest of a finite set of random variables", Operations Research 9 (1961) 145-162.
 */
export function maxMoments(
	a: { mean: number; variance: number },
	b: { mean: number; variance: number },
	covariance: number,
): { mean: number; variance: number; first: number } {
	const lead = a.mean - b.mean;
	const spread = Math.sqrt(Math.max(0, a.variance + b.variance - 2 * covariance));
	if (spread < 1e-9) return lead > 0 ? { ...a, first: 1 } : { ...b, first: 0 };
	const first = normalCdf(lead / spread);
	const density = spread * normalPdf(lead / spread);
	// Moments about B's mean: at 100 degrees the squares would cancel away the variance's digits.
	const mean = lead * first + density;
	const square = (a.variance + lead * lead) * first + b.variance * (1 - first) + lead * density;
	return { mean: b.mean + mean, variance: Math.max(0, square - mean * mean), first };
}
