import { normalCdf } from './normal.ts';

/**
 * Probability that a log-normal variable lies more than `z` of its standard deviations below its mean; `variation`: its standard deviation over its
 * mean, 0 for a normal one. N. L. Johnson, S. Kotz and N. Balakrishnan, "Continuous Univariate Distributions" 1, 2nd ed., 14.3.
 */
export function chanceBelow(z: number, variation: number): number {
	if (variation === 0) return normalCdf(-z);
	const left = 1 - variation * z;
	if (left <= 0) return 0;
	const square = Math.log1p(variation ** 2);
	return normalCdf((Math.log(left) + square / 2) / Math.sqrt(square));
}
