import { describe, expect, it, test } from 'vitest';
import { arcLength, external, rawArc, setback } from '../../src/tube/arcs.ts';
import { K_CHART, K_CHART_MISPRINTS } from '../fixtures/k-chart.ts';

describe('setback', () => {
	// Source: FAA AC 43.13-1B, Table 4-7 (a tube's setback is center-line radius x K).
	it('is the K-chart times the radius, at every printed angle but two misprints', () => {
		expect(K_CHART).toHaveLength(179);
		for (const { angle, printed } of K_CHART) {
			if (K_CHART_MISPRINTS.includes(angle)) continue;
			// The chart truncates: up to 1.2 units of its last digit.
			const unit = 10 ** -(printed.length - printed.indexOf('.') - 1);
			expect(Math.abs(setback(angle, 1) - Number(printed)), `${angle} degrees`).toBeLessThan(1.2 * unit);
			expect(setback(angle, 6)).toBeCloseTo(6 * setback(angle, 1), 12);
		}
	});

	// Second opinion by the formula alone: what the chart should have printed.
	it.each([
		[159, 5.3955],
		[176, 28.636],
	])('is right at %d degrees, where the chart is not', (angle, factor) => {
		expect(Math.abs(setback(angle, 1) - factor)).toBeLessThan(6e-4);
	});
});

describe('tangents and externals to a 1 degree curve', () => {
	// Source: "Table I - Tangents and Externals to a 1 Degree Curve, Chord = 100 ft", a printed survey field-book table.
	const radius = 50 / Math.sin((0.5 * Math.PI) / 180);
	test.each([
		[1, 50.0, 0.22],
		[1 + 10 / 60, 58.34, 0.3],
		[2, 100.01, 0.87],
		[3, 150.04, 1.96],
		[8, 400.66, 13.99],
		[9, 450.93, 17.72],
		[15, 754.32, 49.44],
		[16, 805.25, 56.31],
		[17, 856.3, 63.63],
		[43, 2257.0, 428.5],
		[44, 2314.9, 450.0],
		[45, 2373.3, 472.1],
		[50, 2671.8, 592.3],
		[51, 2732.9, 618.4],
		[52, 2794.5, 645.2],
		[58, 3176.0, 821.4],
		[59, 3241.7, 853.5],
		[85, 5250.3, 2041.7],
		[86, 5343.0, 2104.7],
		[92, 5933.2, 2518.5],
		[93, 6037.8, 2594.0],
		[94, 6144.3, 2671.6],
		[100, 6828.3, 3184.1],
		[101, 6950.6, 3278.1],
	])('at %d degrees: tangent %d, external %d', (angle, tangent, outward) => {
		expect(Math.abs(setback(angle, radius) - tangent)).toBeLessThan(0.06);
		expect(Math.abs(external(angle, radius) - outward)).toBeLessThan(0.06);
	});

	// Source: US Army FM 5-430-00-1, appendix F: by the arc definition a 1 degree curve has 100 ft of arc and R = 5729.578 ft.
	it('has 100 ft of arc to the degree at R = 5729.578 ft', () => {
		expect(arcLength(1, 5729.578)).toBeCloseTo(100, 5);
	});
});

describe('arc length', () => {
	test.each([
		// Source: US Navy NAVEDTRA 14119, p. 13-43, Example 1: 90 degrees, r = 3.250 in, allowance 5.10 in.
		[90, 3.25, 5.1, 0.006],
		// Source: the same, Example 2: U-bolt, 180 degrees, r = 1.25 in, 3.925 in (taken with 3.14).
		[180, 1.25, 3.925, 0.003],
		// Source: US Navy NAVEDTRA 14119, p. 16-3: 90 degrees, R 18 in, 18 x 1.57 = 28.26 in.
		[90, 18, 28.26, 0.015],
	])('of %d degrees at radius %d is %d', (angle, radius, length, within) => {
		expect(Math.abs(arcLength(angle, radius) - length)).toBeLessThan(within);
	});

	it('takes less raw tube by the stretch', () => {
		expect(rawArc(90, 6, 0)).toBe(arcLength(90, 6));
		expect(rawArc(90, 6, 0.004) * 1.004).toBeCloseTo(arcLength(90, 6), 12);
	});
});

it('keeps the external of a tiny bend exact, where sec - 1 would cancel', () => {
	// R (sec x - 1) = R x^2 / 2 to first order, x = angle / 2.
	const angle = 1e-6;
	const half = (angle * Math.PI) / 360;
	expect(external(angle, 6) / ((6 * half * half) / 2)).toBeCloseTo(1, 10);
});
