/** The normal distribution: density, probability and quantile, good to 1e-12 or better. */

/** Nine in ten of a normal distribution lie within so many standard deviations of its mean. */
export const NINE_IN_TEN = 1.6449;

export function normalPdf(x: number): number {
	return Math.exp(-0.5 * x * x) / Math.sqrt(2 * Math.PI);
}

/** P(N(0,1) <= x): series near 0 (DLMF 7.6.2), continued fraction in the tails (DLMF 7.9.2). */
export function normalCdf(x: number): number {
	const size = Math.abs(x);
	if (size > 39) return x < 0 ? 0 : 1;
	if (size < 3) {
		let term = x;
		let sum = x;
		for (let n = 3; Math.abs(term) > 1e-17 * Math.abs(sum); n += 2) {
			term *= (x * x) / n;
			sum += term;
		}
		return 0.5 + normalPdf(x) * sum;
	}
	let fraction = size;
	for (let n = 60; n > 0; n--) fraction = size + n / fraction;
	const tail = normalPdf(x) / fraction;
	return x < 0 ? tail : 1 - tail;
}

/**
 * Mean and variance of N(0,1) where it is known to lie from `low` to `high` (N. L. Johnson, S. Kotz and N. Balakrishnan, "Continuous Univariate
 * Distributions" 1, 2nd ed., 13.10.1), and how probable that was.
 */
export function normalWithin(low: number, high: number): { mean: number; variance: number; mass: number } {
	if (low + high > 0) {
		const mirrored = normalWithin(-high, -low);
		return { ...mirrored, mean: -mirrored.mean };
	}
	const mass = normalCdf(high) - normalCdf(low);
	const [atLow, atHigh] = [normalPdf(low), normalPdf(high)];
	const mean = (atLow - atHigh) / mass;
	return { mean, variance: 1 + (low * atLow - high * atHigh) / mass - mean * mean, mass };
}

/** The x with P(N(0,1) <= x) = p, 0 < p < 1. */
export function normalQuantile(p: number): number {
	if (!(p > 0 && p < 1)) throw new RangeError(`probability ${p}: a number between 0 and 1 is needed`);
	if (p > 0.5) return -normalQuantile(1 - p);
	return p === 0.5 ? 0 : lowerQuantile(p);
}

/** Newton's method on log normalCdf, which is nearly straight in a tail, and halving where a step would leave the bracket. */
function lowerQuantile(p: number): number {
	let [a, b] = [-39, 0];
	let x = (a + b) / 2;
	for (let i = 0; i < 200 && b - a > 4e-16 * Math.abs(a); i++) {
		const f = normalCdf(x);
		if (f < p) a = x;
		else b = x;
		const step = (f * Math.log(f / p)) / normalPdf(x);
		const next = x - step;
		// Not a number, or out of the bracket: far out in a tail the density has run dry.
		const halved = !(next > a && next < b);
		if (!halved && Math.abs(step) <= 1e-14 * Math.abs(x)) return next;
		if (halved && Math.abs(step) <= 1e-15 * Math.abs(x)) return x;
		x = halved ? (a + b) / 2 : next;
	}
	return x;
}
