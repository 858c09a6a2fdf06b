import { expect, it } from 'vitest';
import { clamp, exceeds, ofLogOdds } from '../../src/maths/scalar.ts';

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
