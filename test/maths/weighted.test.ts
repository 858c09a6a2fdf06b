import { describe, expect, it } from 'vitest';
import { standardCloud } from '../../src/maths/cloud.ts';
import { clears, halfBand } from '../../src/maths/weighted.ts';

const even = (values: readonly unknown[]) => values.map(() => 1);

describe('the give or take', () => {
	it('is the standard deviation of a normal distribution about what is told', () => {
		const values = standardCloud(46).map(([z]) => 12 + 0.3 * z!);
		expect(Math.abs(halfBand(values, even(values), 12) / 0.3 - 1)).toBeLessThan(0.04);
	});

	// Chi-square's 90 % quantiles: 4.605 with two degrees of freedom, 6.251 with three (NIST/SEMATECH e-Handbook, table 1.3.6.7.4).
	it.each([
		[2, 4.605],
		[3, 6.251],
	])('of a distance told as 0, off in %i directions alike, holds nine in ten true ones', (ways, quantile) => {
		const values = standardCloud(46).map((z) => Math.hypot(...z.slice(0, ways)));
		expect(Math.abs((1.6449 * halfBand(values, even(values), 0)) / Math.sqrt(quantile) - 1)).toBeLessThan(0.04);
	});

	it('goes by the weights', () => {
		expect(halfBand([1, 2, 3, 50], [1, 1, 1, 0], 1)).toBeLessThanOrEqual(2 / 1.6449);
		expect(halfBand([1, 1, 1], [1, 1, 1], 1)).toBe(0);
	});
});

describe('what a measurement clears', () => {
	// Whether x > 0, x standard normal and read with an error of sd r: the probability after the reading is that of a probit, whose variance is
	// Sheppard's asin(rho) / 2 pi with rho = 1 / (1 + r^2); of 1/4 that is (2 / pi) asin(1 / (1 + r^2)).
	it.each([0.3, 1, 2])('is what Sheppard’s theorem says of a sign read through an error of %f', (r) => {
		const points = standardCloud(12);
		const values = points.map(([z]) => z!);
		const cleared = clears(
			values.map((x) => x > 0),
			even(values),
			values,
			r,
		);
		expect(Math.abs(cleared - (2 / Math.PI) * Math.asin(1 / (1 + r * r)))).toBeLessThan(0.04);
	});

	it('is next to nothing of what has no part in it, and nothing where nothing is in doubt', () => {
		const points = standardCloud(12);
		const holds = points.map(([z]) => z! > 0);
		const other = points.map((z) => z[5]!);
		expect(clears(holds, even(points), other, 0.5)).toBeLessThan(0.03);
		expect(
			clears(
				even(points).map(() => true),
				even(points),
				other,
				0.5,
			),
		).toBe(0);
	});
});
