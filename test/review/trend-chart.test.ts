import fc from 'fast-check';
import { mean, sampleStandardDeviation } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { chartOf, D2, D4, LEAST_BASE, type Rule } from '../../src/review/trend-chart.ts';
import { draws } from '../helpers/shop/plain-shop.ts';

/** NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2, its example: flow rates of ten batches, and the limits given there. */
const FLOW = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];
/** Montgomery, Introduction to Statistical Quality Control, example 6.5: costs of processing loans in twenty weeks. */
const COSTS = [310, 288, 297, 298, 307, 303, 294, 297, 308, 306, 294, 299, 297, 299, 314, 295, 293, 306, 301, 304];

describe('the chart of individuals and moving range', () => {
	it('has the limits of the example in the NIST handbook', () => {
		const chart = chartOf(FLOW)!;
		expect(chart.center).toBeCloseTo(50.81, 2);
		expect(chart.rangeCenter).toBeCloseTo(1.8778, 4);
		expect(chart.high).toBeCloseTo(55.8041, 3);
		expect(chart.low).toBeCloseTo(45.8159, 3);
		expect(chart.points.flatMap(({ rules }) => rules).filter((rule) => rule === 'beyond-limit')).toEqual([]);
	});

	it("has the limits of Montgomery's example", () => {
		const chart = chartOf(COSTS)!;
		expect(chart.center).toBeCloseTo(300.5, 1);
		expect(chart.rangeCenter).toBeCloseTo(7.79, 2);
		expect(chart.high).toBeCloseTo(321.22, 1);
		expect(chart.low).toBeCloseTo(279.78, 1);
		expect(chart.rangeHigh).toBeCloseTo(25.45, 1);
	});

	it('has the constants that follow from the normal distribution, to the digits of the tables', () => {
		// Of two normal values the range has the mean 2 / sqrt(pi) and the standard deviation sqrt(2 - 4 / pi).
		const range = { mean: 2 / Math.sqrt(Math.PI), sd: Math.sqrt(2 - 4 / Math.PI) };
		expect(D2).toBeCloseTo(range.mean, 3);
		expect(D4).toBeCloseTo(1 + (3 * range.sd) / range.mean, 2);
	});

	it('tells the standard deviation of many normal values as a reference library does', () => {
		const draw = draws(20_261);
		const values = Array.from({ length: 25 }, () => draw.normal(4, 0.5));
		const chart = chartOf(values)!;
		expect(chart.center).toBeCloseTo(mean(values), 12);
		expect((chart.high - chart.center) / 3 / sampleStandardDeviation(values)).toBeGreaterThan(0.75);
		expect((chart.high - chart.center) / 3 / sampleStandardDeviation(values)).toBeLessThan(1.3);
	});

	it('is none of too few values, and its limits are from the first ones', () => {
		expect(chartOf(FLOW.slice(0, LEAST_BASE - 1))).toBeNull();
		const chart = chartOf([...FLOW, 99, 99], FLOW.length)!;
		expect(chart).toMatchObject({ base: 10, center: chartOf(FLOW)!.center });
		expect(chart.points).toHaveLength(12);
		expect(chartOf(Array.from({ length: 60 }, (_, i) => i % 2))!.base).toBe(25);
	});
});

/** The first values are -1 and 1 in turn: center 0, ranges 2, sigma 2 / 1.128 = 1.77. */
const BASE = Array.from({ length: 16 }, (_, i) => (i % 2 ? 1 : -1));
const rulesAfter = (...values: number[]) => chartOf([...BASE, ...values], BASE.length)!.points.slice(BASE.length);
const broken = (...values: number[]): readonly Rule[] => rulesAfter(...values).at(-1)!.rules;

describe('the rules of the Western Electric handbook (1956)', () => {
	it.each<[string, number[], Rule[]]>([
		['a value within the limits', [5.2], []],
		['a value beyond the limit, and far from the one before', [5.5], ['beyond-limit']],
		['two of three beyond two sigma', [3.7, 0, 3.7], ['two-of-three']],
		['two of three on two sides', [3.7, 0, -3.7], []],
		['two far from each other', [3.7, -3.7], ['range']],
		['two of four', [3.7, 0, 0, 3.7], []],
		['four of five beyond one sigma', [1.9, 1.9, 0, 1.9, 1.9], ['four-of-five']],
		['the fifth is not the one', [1.9, 1.9, 1.9, 1.9, 0.1], []],
		['eight in a row', [0.2, 0.1, 0.4, 0.2, 0.3, 0.2, 0.5], ['eight-in-a-row']],
		['seven in a row', [-0.1, 0.2, 0.1, 0.4, 0.2, 0.3, 0.2, 0.5], []],
	])('%s', (_, values, rules) => {
		// The last of the base is 1, on the upper side.
		expect(broken(...values)).toEqual(rules);
	});

	it('are the same upside down', () => {
		const values = fc.array(fc.double({ min: -6, max: 6, noNaN: true }), { minLength: 1, maxLength: 10 });
		fc.assert(
			fc.property(values, (list) => {
				const [up, down] = [
					chartOf([...BASE, 0.5, ...list], BASE.length)!,
					chartOf([...BASE.map((value) => -value), -0.5, ...list.map((value) => -value)], BASE.length)!,
				];
				expect(down.points.map(({ rules }) => rules)).toEqual(up.points.map(({ rules }) => rules));
			}),
			{ numRuns: 50 },
		);
	});
});
