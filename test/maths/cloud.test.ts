import { describe, expect, it } from 'vitest';
import { triangle } from '../../src/maths/cholesky.ts';
import { spreadTo, standardCloud } from '../../src/maths/cloud.ts';
import { weightedChance } from '../../src/maths/weighted.ts';

const even = (points: readonly unknown[]) => points.map(() => 1);
const mean = (values: readonly number[]) => values.reduce((sum, x) => sum + x, 0) / values.length;

describe('the standard cloud', () => {
	it.each([1, 2, 7, 46])('of %i unknowns has exactly the mean and the covariance of the distribution', (unknowns) => {
		const points = standardCloud(unknowns);
		for (let i = 0; i < unknowns; i++) {
			expect(mean(points.map((z) => z[i]!))).toBeCloseTo(0, 12);
			for (let j = 0; j <= i; j++) expect(mean(points.map((z) => z[i]! * z[j]!))).toBeCloseTo(i === j ? 1 : 0, 10);
		}
	});

	it('is the same every time', () => {
		expect(standardCloud(5)).toEqual(standardCloud(5));
		expect(standardCloud(5)[3]).not.toEqual(standardCloud(5)[4]);
	});

	it('has the kurtosis of a normal distribution, about 3, in every unknown', () => {
		const points = standardCloud(46);
		for (let i = 0; i < 46; i++) expect(Math.abs(mean(points.map((z) => z[i]! ** 4)) - 3)).toBeLessThan(0.9);
	});
});

describe('the chance of several things at once', () => {
	const positive = (covariance: readonly (readonly number[])[]) => {
		const zero = covariance.map(() => 0);
		const lower = triangle(covariance);
		const points = standardCloud(covariance.length).map((z) => spreadTo(zero, lower, z));
		return weightedChance(
			points.map((x) => x.every((value) => value > 0)),
			even(points),
		);
	};
	const alike = (n: number, r: number) =>
		Array.from({ length: n }, (_, i) => Array.from({ length: n }, (__, j) => (i === j ? 1 : r)));

	// W. F. Sheppard, Phil. Trans. R. Soc. A 192 (1899) 101-167: two correlated normal variables are both positive with 1/4 + asin(r) / 2 pi.
	it.each([-0.7, 0, 0.3, 0.9])('is that of Sheppard’s theorem at a correlation of %f', (r) => {
		expect(Math.abs(positive(alike(2, r)) - (0.25 + Math.asin(r) / (2 * Math.PI)))).toBeLessThan(0.015);
	});

	// n variables, each pair correlated by 1/2, are all positive with 1/(n + 1): one of n + 1 independent ones alike is the least
	// (S. S. Gupta, Ann. Math. Stat. 34 (1963) 792-828).
	it.each([3, 5, 9])('is 1/(n + 1) that %i variables correlated by a half are all positive', (n) => {
		expect(Math.abs(positive(alike(n, 0.5)) - 1 / (n + 1))).toBeLessThan(0.02);
	});
});
