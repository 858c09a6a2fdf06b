/**
 * What a number tells that was read to a division. Where all else is known within much less than a division, rounding is no error that comes by
 * chance: the same number stands there time and again, and says little.
 */
import { normalWithin } from '../maths/normal.ts';
import { roundingVariance } from './scatter.ts';

/** Where the division is so small beside the spread, rounding is an even error; where the number is so improbable, it is wrong anyway. */
const FINE = 0.01;
const IMPROBABLE = 1e-9;

/**
 * The reading without rounding that tells as much as `value`, rounded to `division`, of what was expected (rounding aside) with this mean and
 * variance: its value and the variance of its rounding. What is then known has the exact mean and variance.
 */
export function unrounded(value: number, division: number, { mean, variance }: { mean: number; variance: number }) {
	const sd = Math.sqrt(variance);
	const asRead = { value, rounding: roundingVariance(division) };
	if (division < FINE * sd) return asRead;
	const half = division / 2;
	const within = normalWithin((value - half - mean) / sd, (value + half - mean) / sd);
	if (!(within.mass > IMPROBABLE)) return asRead;
	const told = 1 - within.variance;
	if (!(told > IMPROBABLE)) return { value: mean, rounding: variance / IMPROBABLE };
	return { value: mean + (sd * within.mean) / told, rounding: (variance * within.variance) / told };
}
