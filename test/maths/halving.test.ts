import { describe, expect, it } from 'vitest';
import { firstWhole, halved, zeroBetween } from '../../src/maths/halving.ts';

describe('halving', () => {
	it('closes in on the root of two by a half each time', () => {
		const [last, first] = halved((x) => x * x < 2, 1, 2, 10);
		expect(last).toBeLessThan(Math.SQRT2);
		expect(first).toBeGreaterThan(Math.SQRT2);
		expect(first - last).toBe(2 ** -10);
	});

	it('ends where no number lies between', () => {
		const [last, first] = halved((x) => x * x < 2, 1, 2, 1000);
		expect(first - last).toBe(Number.EPSILON);
	});

	it('keeps the end that is never reached', () => {
		expect(halved(() => true, 0, 270, 5)[1]).toBe(270);
		expect(halved(() => false, 0, 270, 5)[0]).toBe(0);
	});
});

describe('the first whole number', () => {
	it('is found wherever it lies', () => {
		for (let wanted = 1; wanted <= 20; wanted++) expect(firstWhole((n) => n >= wanted, 0, 20)).toBe(wanted);
		expect(firstWhole(() => false, 0, 20)).toBe(20);
	});
});

describe('the zero between', () => {
	// Abramowitz and Stegun, table 9.5: the first zero of the Bessel function J0; its series is 9.1.10.
	it('is the first zero of a Bessel function, rising or falling', () => {
		const j0 = (x: number) => {
			let [term, sum] = [1, 1];
			for (let k = 1; k < 40; k++) {
				term *= -((x / 2) ** 2) / k ** 2;
				sum += term;
			}
			return sum;
		};
		expect(zeroBetween(j0, 2, 3)).toBeCloseTo(2.40482_55577, 9);
		expect(zeroBetween((x) => -j0(x), 2, 3)).toBeCloseTo(2.40482_55577, 9);
	});

	it('takes few looks where the function is smooth, and stays between where it is not', () => {
		let looks = 0;
		const counted = (f: (x: number) => number) => (x: number) => {
			looks++;
			return f(x);
		};
		expect(zeroBetween(counted(Math.cos), 1, 2)).toBeCloseTo(Math.PI / 2, 15);
		expect(looks).toBeLessThanOrEqual(10);
		looks = 0;
		expect(
			zeroBetween(
				counted((x) => (x < 0.3 ? -1 : 1)),
				0,
				1,
			),
		).toBeCloseTo(0.3, 12);
		expect(
			zeroBetween(
				counted((x) => Math.tanh(1e6 * (x - 0.7))),
				0,
				1,
			),
		).toBeCloseTo(0.7, 12);
		expect(looks).toBeLessThanOrEqual(130);
	});

	it('is an end that is all but it', () => {
		expect(zeroBetween((x) => x - 1 + 1e-17, 1, 2)).toBe(1);
		expect(zeroBetween((x) => (x === 2 ? 1e-17 : x - 2), 1, 2)).toBe(2);
		expect(zeroBetween((x) => (x === 1 ? 1e-17 : 1 - x), 1, 2)).toBe(1);
	});
});
