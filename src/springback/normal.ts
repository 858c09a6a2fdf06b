/** Normal and Student-t distributions: density, probability and quantile, good to 1e-12 or better. */

const LANCZOS = [
	676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059, 12.507343278686905,
	-0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
] as const;

/** log Gamma(x) for x >= 0.5. Lanczos' series, g = 7. */
function logGamma(x: number): number {
	const y = x - 1;
	const t = y + 7.5;
	const sum = LANCZOS.reduce((acc, c, i) => acc + c / (y + i + 1), 0.99999999999980993);
	return 0.5 * Math.log(2 * Math.PI) + (y + 0.5) * Math.log(t) - t + Math.log(sum);
}

/** The continued fraction of the incomplete beta function (DLMF 8.17.22) by Lentz's method, for x < (a+1)/(a+b+2). */
function betaFraction(x: number, a: number, b: number): number {
	let c = 1;
	let d = 1 / (1 - ((a + b) * x) / (a + 1));
	let product = d;
	for (let m = 1; m < 100_000; m++) {
		const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
		d = 1 / (1 + even * d);
		c = 1 + even / c;
		product *= d * c;
		const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
		d = 1 / (1 + odd * d);
		c = 1 + odd / c;
		product *= d * c;
		if (Math.abs(d * c - 1) < 1e-15) return product;
	}
	throw new Error(`the incomplete beta function did not converge at x=${x}, a=${a}, b=${b}`);
}

/** Regularised incomplete beta function I_x(a, b), given x and 1 - x apart so that neither loses digits. */
function incompleteBeta(x: number, rest: number, a: number, b: number): number {
	if (x <= 0) return 0;
	if (rest <= 0) return 1;
	const scale = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log(rest));
	if (x < (a + 1) / (a + b + 2)) return (scale * betaFraction(x, a, b)) / a;
	return 1 - (scale * betaFraction(rest, b, a)) / b;
}

/** P(t <= x) for Student's t with `df` degrees of freedom (any real number from 1 up). */
export function tCdf(x: number, df: number): number {
	if (!(df >= 1)) throw new RangeError(`degrees of freedom ${df}: a number from 1 up is needed`);
	const square = x * x;
	const tail = 0.5 * incompleteBeta(df / (df + square), square / (df + square), df / 2, 0.5);
	return x < 0 ? tail : 1 - tail;
}

/** The x with P(t <= x) = p, 0 < p < 1, for `df` degrees of freedom from 1 up. */
export function tQuantile(p: number, df: number): number {
	checkProbability(p);
	if (p > 0.5) return -tQuantile(1 - p, df);
	if (p === 0.5) return 0;
	let low = -2;
	while (tCdf(low, df) > p) low *= 2;
	return solve((x) => tCdf(x, df), tDensity(df), p, low, 0);
}

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

/** The x with P(N(0,1) <= x) = p, 0 < p < 1. */
export function normalQuantile(p: number): number {
	checkProbability(p);
	if (p > 0.5) return -normalQuantile(1 - p);
	return p === 0.5 ? 0 : solve(normalCdf, normalPdf, p, -39, 0);
}

function checkProbability(p: number): void {
	if (!(p > 0 && p < 1)) throw new RangeError(`probability ${p}: a number between 0 and 1 is needed`);
}

/** Density of Student's t with `df` degrees of freedom. */
function tDensity(df: number): (x: number) => number {
	const top = logGamma((df + 1) / 2) - logGamma(df / 2) - 0.5 * Math.log(df * Math.PI);
	return (x) => Math.exp(top - ((df + 1) / 2) * Math.log1p((x * x) / df));
}

/**
 * Root of a rising cdf(x) = p between low and high: Newton's method on log cdf, which is nearly straight in a tail, and
 * halving where a step would leave the bracket.
 */
function solve(
	cdf: (x: number) => number,
	density: (x: number) => number,
	p: number,
	low: number,
	high: number,
): number {
	let [a, b] = [low, high];
	let x = (a + b) / 2;
	for (let i = 0; i < 200 && b - a > 4e-16 * Math.abs(a); i++) {
		const f = cdf(x);
		if (f < p) a = x;
		else b = x;
		const step = (f * Math.log(f / p)) / density(x);
		const next = x - step;
		// Not a number, or out of the bracket: far out in a tail the density has run dry.
		const halved = !(next > a && next < b);
		if (!halved && Math.abs(step) <= 1e-14 * Math.abs(x)) return next;
		if (halved && Math.abs(step) <= 1e-15 * Math.abs(x)) return x;
		x = halved ? (a + b) / 2 : next;
	}
	return x;
}
