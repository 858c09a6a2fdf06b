import fc from 'fast-check';
import { expect, it } from 'vitest';
import {
	ceilTo,
	clamp,
	exceeds,
	floorTo,
	nearestTo,
	ofLogOdds,
	stepsCovering,
	stepsWithin,
	upToThousandth,
} from '../../src/maths/scalar.ts';

it('clamps to either end', () => {
	expect([-1, 0.5, 7].map((x) => clamp(x, 0, 1))).toEqual([0, 0.5, 1]);
});

it('turns the logarithm of odds into their probability', () => {
	// Three to one is three in four; even odds are one half.
	expect(ofLogOdds(Math.log(3))).toBeCloseTo(0.75, 15);
	expect(ofLogOdds(0)).toBe(0.5);
	expect(ofLogOdds(-800)).toBe(0);
});

it('finds neither of two numbers the larger that are the same but for rounding', () => {
	expect(exceeds(0.1 + 0.2, 0.3)).toBe(false);
	expect(exceeds(1e12 + 1, 1e12)).toBe(false);
	expect(exceeds(0.3 + 1e-8, 0.3)).toBe(true);
	expect(exceeds(-2, -1)).toBe(false);
});

it('takes a hair off a whole number of steps for that number, below and above', () => {
	// 0.1 is no binary number: three of them are more than 0.3, and 0.7 holds fewer than seven.
	expect([0.1 + 0.2, 0.3, 0.7].map((value) => stepsWithin(value, 0.1))).toEqual([3, 3, 7]);
	expect([0.1 + 0.2, 0.3, 0.7].map((value) => stepsCovering(value, 0.1))).toEqual([3, 3, 7]);
	expect([floorTo(18.49, 0.5), nearestTo(18.49, 0.5), ceilTo(18.49, 0.5)]).toEqual([18, 18.5, 18.5]);
	expect([floorTo(-0.3, 0.25), ceilTo(-0.3, 0.25)]).toEqual([-0.5, -0.25]);
});

it('leaves what is a whole number of steps as it is written', () => {
	const steps = fc.constantFrom(0.1, 0.25, 0.5, 1, 0.05, 0.02, 1 / 16, 1 / 64, 10);
	fc.assert(
		fc.property(fc.integer({ min: -5000, max: 5000 }), steps, (count, step) => {
			const written = Number((count * step).toFixed(9)) + 0;
			for (const to of [floorTo, nearestTo, ceilTo]) expect(to(written, step) + 0).toBe(written);
		}),
	);
});

it('is never below what must not be less, and no more than a thousandth above', () => {
	fc.assert(
		fc.property(fc.double({ min: 1e-6, max: 1e4, noNaN: true }), (least) => {
			const told = upToThousandth(least);
			expect(told).toBeGreaterThanOrEqual(least);
			expect(told - least).toBeLessThan(0.001 + 1e-9);
		}),
	);
});
