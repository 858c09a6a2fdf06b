import reference from '@stdlib/stats-base-dists-t-quantile';
import { describe, expect, it } from 'vitest';
import { NINE_IN_TEN, normalCdf, normalPdf, normalQuantile, normalWithin } from '../../src/maths/normal.ts';

const FREEDOM = 1e6;

describe('the normal distribution', () => {
	// Source: NIST/SEMATECH table, the row of infinite degrees of freedom.
	it.each([
		[0.95, 1.645],
		[0.975, 1.96],
		[0.99, 2.326],
		[0.995, 2.576],
	])('has the quantile of %s', (p, x) => {
		expect(normalQuantile(p)).toBeCloseTo(x, 3);
	});

	it('has nine in ten between its 5 and its 95 per cent, to the five digits of the table', () => {
		expect(normalQuantile(0.95)).toBeCloseTo(NINE_IN_TEN, 4);
		expect(normalCdf(NINE_IN_TEN) - normalCdf(-NINE_IN_TEN)).toBeCloseTo(0.9, 4);
	});

	it('is what an independent Student t tends to', () => {
		for (const p of [1e-8, 1e-5, 0.001, 0.012, 0.025, 0.2, 0.4, 0.499, 0.6, 0.9, 0.975, 0.9999]) {
			const x = normalQuantile(p);
			// How far Student's quantile still is from the normal one: Abramowitz and Stegun 26.7.5, its first term.
			const still = (x ** 3 + x) / (4 * FREEDOM);
			expect(Math.abs((x + still) / reference(p, FREEDOM) - 1)).toBeLessThan(1e-10);
			expect(normalCdf(x) / p).toBeCloseTo(1, 11);
		}
	});

	it('refuses what is no probability', () => {
		expect(() => normalQuantile(1)).toThrow('between 0 and 1');
		expect(() => normalQuantile(Number.NaN)).toThrow('between 0 and 1');
	});

	it('has its density as the slope of its probability, across the seam between series and fraction too', () => {
		for (const x of [-6, -3.00001, -2.99999, -1, 0, 2, 3, 4.5]) {
			const slope = (normalCdf(x + 1e-5) - normalCdf(x - 1e-5)) / 2e-5;
			expect(Math.abs(slope / normalPdf(x) - 1)).toBeLessThan(x > 4 ? 1e-4 : 1e-6);
		}
	});

	it('keeps its far tail and undoes itself', () => {
		// Mills' ratio between its two classical bounds: x/(x^2+1) < (1-F)/f < 1/x.
		for (const x of [5, 10, 30]) {
			const ratio = normalCdf(-x) / normalPdf(x);
			expect(ratio).toBeGreaterThan(x / (x * x + 1));
			expect(ratio).toBeLessThan(1 / x);
			expect(normalQuantile(normalCdf(-x))).toBeCloseTo(-x, 9);
		}
	});
});

describe('a normal variable known to lie between two bounds', () => {
	// scipy 1.17.1, truncnorm(low, high).stats(); the last two of mpmath 1.3 with 40 digits, where scipy keeps fewer.
	it.each([
		[-1, 1, 0, 0.291125094772793],
		[0.5, 2.5, 1.1065371595026006, 0.21288852406002712],
		[-0.3, 0.2, -0.048966998541879914, 0.02065960538446765],
		[-6, -4, -4.225546931806202, 0.04655715784038472],
		[-7, 0.5, -0.5091604338247651, 0.48617543561591403],
		[3, 5, 3.282694379942298, 0.06979756607044493],
		[1.99, 2.01, 1.99993333599986, 3.333022249521627e-5],
	])('from %s to %s has their mean and variance', (low, high, mean, variance) => {
		const within = normalWithin(low, high);
		expect(within.mean).toBeCloseTo(mean, 9);
		expect(within.variance / variance).toBeCloseTo(1, 8);
		expect(within.mass).toBeCloseTo(normalCdf(high) - normalCdf(low), 12);
	});
});
