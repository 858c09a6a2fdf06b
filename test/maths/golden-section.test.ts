import { expect, it } from 'vitest';
import { leastWithin, placeOfLeast, sharpened } from '../../src/maths/golden-section.ts';

// Abramowitz and Stegun, table 6.1 and section 6.1.12: the gamma function's least value for positive x is .88560 31944 at 1.46163; Lanczos' sum
// for it is Press et al., Numerical Recipes, 2nd edition, section 6.1 (good to 2e-10).
it('finds the least value of the gamma function', () => {
	const series = [
		76.18009172947146, -86.50532032941678, 24.01409824083091, -1.231739572450155, 0.1208650973866179e-2,
		-0.5395239384953e-5,
	];
	const gamma = (x: number) => {
		const sum = series.reduce((all, c, i) => all + c / (x + i + 1), 1.000000000190015);
		return (Math.exp((x + 0.5) * Math.log(x + 5.5) - (x + 5.5)) * 2.5066282746310007 * sum) / x;
	};
	expect(leastWithin(1, 2, gamma)).toBeCloseTo(0.88560_31944, 8);
});

it('comes to an end of the range where the function only falls', () => {
	expect(leastWithin(0, 1, (x) => 1 - x)).toBeCloseTo(0, 7);
});

it('tells a smooth least place more sharply than its values do, and one at a corner as they do', () => {
	const found = placeOfLeast(3, 3.3, Math.cos);
	expect(Math.abs(found - Math.PI)).toBeGreaterThan(1e-10);
	expect(Math.abs(sharpened(found, 1e-4, 1e-6, Math.cos) - Math.PI)).toBeLessThan(1e-11);
	const corner = (x: number) => (x < 0.3 ? 0.3 - x : 2 * (x - 0.3));
	const place = placeOfLeast(0, 1, corner);
	expect(sharpened(place, 1e-4, 1e-6, corner)).toBe(place);
});
