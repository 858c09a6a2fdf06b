import reference from '@stdlib/stats-base-dists-t-quantile';
import { describe, expect, it } from 'vitest';
import { normalCdf, normalPdf, normalQuantile, tCdf, tQuantile } from '../../src/springback/student-t.ts';

describe('tQuantile', () => {
	// Source: NIST/SEMATECH e-Handbook, Student-t table (upper quantiles .95, .975, .99, .995).
	it.each([
		[1, 6.314, 12.706, 31.821, 63.657],
		[2, 2.92, 4.303, 6.965, 9.925],
		[3, 2.353, 3.182, 4.541, 5.841],
		[4, 2.132, 2.776, 3.747, 4.604],
		[5, 2.015, 2.571, 3.365, 4.032],
		[6, 1.943, 2.447, 3.143, 3.707],
		[8, 1.86, 2.306, 2.896, 3.355],
		[10, 1.812, 2.228, 2.764, 3.169],
		[15, 1.753, 2.131, 2.602, 2.947],
		[20, 1.725, 2.086, 2.528, 2.845],
		[30, 1.697, 2.042, 2.457, 2.75],
	])('is the printed table with %s degrees of freedom', (df, ...row) => {
		const here = [0.95, 0.975, 0.99, 0.995].map((p) => Number(tQuantile(p, df).toFixed(3)));
		expect(here).toEqual(row);
	});

	it('agrees with an independent implementation to 1e-10', () => {
		let worst = 0;
		for (const df of [1, 1.5, 2, 3.7, 10, 11, 24.5, 60, 200, 3000]) {
			for (const p of [1e-8, 1e-5, 0.001, 0.012, 0.025, 0.2, 0.4, 0.499, 0.6, 0.9, 0.975, 0.9999]) {
				const known = reference(p, df);
				worst = Math.max(worst, Math.abs(tQuantile(p, df) - known) / Math.abs(known));
			}
		}
		expect(worst).toBeLessThan(1e-10);
	});

	it('undoes tCdf', () => {
		for (const df of [1, 2.5, 10, 40]) {
			for (const x of [-30, -3, -0.2, 0, 0.01, 1.9]) expect(tQuantile(tCdf(x, df), df)).toBeCloseTo(x, 10);
		}
	});

	it('refuses what is no probability or no degree of freedom', () => {
		expect(() => tQuantile(1, 5)).toThrow('between 0 and 1');
		expect(() => tQuantile(Number.NaN, 5)).toThrow('between 0 and 1');
		expect(() => tQuantile(0.2, 0)).toThrow('from 1 up');
	});
});

describe('tCdf', () => {
	it('has the closed forms with 1 and 2 degrees of freedom', () => {
		for (const x of [-1e6, -40, -2, -0.3, 0, 0.7, 5, 300]) {
			expect(tCdf(x, 1)).toBeCloseTo(0.5 + Math.atan(x) / Math.PI, 13);
			expect(tCdf(x, 2)).toBeCloseTo(0.5 + x / (2 * Math.sqrt(2 + x * x)), 13);
		}
	});
});

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

	it('is what Student t tends to', () => {
		for (const x of [-4, -3, -1, 0.5, 2.99, 3.01]) expect(normalCdf(x)).toBeCloseTo(tCdf(x, 1e7), 7);
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
