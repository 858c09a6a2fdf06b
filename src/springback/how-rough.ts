/** How many times as far as common a shop's hands may scatter, by what they have shown: not one size, but several that are as likely. */
import { chiSquareAt } from '../maths/chi-square.ts';
import { deviationsSeen, type Scatter, timesWithin } from './scatter.ts';

/**
 * Shops differ from the common one as an inverse chi-square variable of so many degrees does whose mean is 1, in the variance: two in three within a factor
 * of 1.3 (common practice, no source). Each deviation seen is a degree more.
 */
const SHOPS_DIFFER = 8;

/** Mean, variance and skewness of a standard normal variable by three points that weigh the same. */
const THIRDS = [-Math.sqrt(1.5), 0, Math.sqrt(1.5)];

/** That many sizes, as likely as each other: factors of the common standard deviation, from large to small. */
export function timesLikely(scatter: Scatter): number[] {
	const { sum, count } = deviationsSeen(scatter);
	const squares = SHOPS_DIFFER - 2 + sum;
	return THIRDS.map((z) => timesWithin(Math.sqrt(squares / chiSquareAt(z, SHOPS_DIFFER + count))));
}
