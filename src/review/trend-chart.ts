import { meanOf } from '../maths/list.ts';
/**
 * Control chart of individuals and moving range: where values usually lie, by how much each differs from the one before. Limits and their
 * constants: Montgomery, Introduction to Statistical Quality Control, section 6.4 and appendix VI (two values in a range); the same in
 * NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2.
 */

/** Mean range of two values over their standard deviation, and the upper limit of such a range over its mean; the lower one is 0. */
export const D2 = 1.128;
export const D4 = 3.267;

/**
 * What marks a value: the rules of the Western Electric Statistical Quality Control Handbook (1956), as in NIST/SEMATECH 6.3.2, and a range
 * above its limit. Two and three sigma are two thirds of the way to the limit and the limit.
 */
export type Rule = 'beyond-limit' | 'two-of-three' | 'four-of-five' | 'eight-in-a-row' | 'range';

export interface ChartPoint {
	value: number;
	/** How far from the value before; null for the first. */
	range: number | null;
	/** The rules that it breaks. */
	rules: readonly Rule[];
}

export interface Chart {
	center: number;
	low: number;
	high: number;
	rangeCenter: number;
	rangeHigh: number;
	/** From how many values, the first ones, the limits are. */
	base: number;
	points: readonly ChartPoint[];
}

/** Fewer values give no limits worth the name. */
export const LEAST_BASE = 8;
/** Limits are commonly made from 20 to 25 values (Montgomery, section 6.2). */
const MOST_BASE = 25;

/** The chart of these values, oldest first, with limits from the first of them, `most` at the most; null with too few. */
export function chartOf(values: readonly number[], most = MOST_BASE): Chart | null {
	const count = Math.min(most, MOST_BASE, values.length);
	if (count < LEAST_BASE) return null;
	const ranges = values.map((value, i) => (i === 0 ? null : Math.abs(value - values[i - 1]!)));
	const center = meanOf(values.slice(0, count));
	const rangeCenter = meanOf(ranges.slice(1, count).map((range) => range ?? 0));
	const sigma = rangeCenter / D2;
	const rangeHigh = D4 * rangeCenter;
	const points = values.map((value, i) => ({
		value,
		range: ranges[i]!,
		rules: [
			...brokenAt(
				values.slice(Math.max(0, i - LONGEST + 1), i + 1).map((each) => each - center),
				sigma,
			),
			...((ranges[i] ?? 0) > rangeHigh ? (['range'] as const) : []),
		],
	}));
	return { center, low: center - 3 * sigma, high: center + 3 * sigma, rangeCenter, rangeHigh, base: count, points };
}

/** Of the last `of` values so many lie further than this many sigma from the center, on the side of the newest. */
const RULES: readonly { rule: Rule; of: number; least: number; sigmas: number }[] = [
	{ rule: 'beyond-limit', of: 1, least: 1, sigmas: 3 },
	{ rule: 'two-of-three', of: 3, least: 2, sigmas: 2 },
	{ rule: 'four-of-five', of: 5, least: 4, sigmas: 1 },
	{ rule: 'eight-in-a-row', of: 8, least: 8, sigmas: 0 },
];
const LONGEST = 8;

/** The rules that the newest of these deviations from the center breaks; `deviations`: oldest first. */
function brokenAt(deviations: readonly number[], sigma: number): Rule[] {
	const newest = deviations.at(-1)!;
	const side = Math.sign(newest);
	return RULES.filter(({ of, least, sigmas }) => {
		const isFar = (deviation: number) => side * deviation > sigmas * sigma;
		return isFar(newest) && deviations.slice(-of).filter(isFar).length >= least;
	}).map(({ rule }) => rule);
}
