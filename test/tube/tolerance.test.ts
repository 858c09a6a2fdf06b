import { describe, expect, it } from 'vitest';
import { isInBand, isInside } from '../../src/tube/tolerance.ts';

describe('a tolerance', () => {
	it.each([
		[0.8, 0.1, 0.7],
		[17.6, 0.3, 17.3],
		[90, 0.5, 89.5],
	])('has its edge inside, whatever the arithmetic rounds: %f less %f is %f', (target, under, angle) => {
		expect(isInBand({ under, over: 0 }, target, angle)).toBe(true);
		expect(isInBand({ under, over: 0 }, target, angle - 1e-6)).toBe(false);
	});

	it('is as strict in millimeters as in inches', () => {
		const [tolerance, beyond] = [1 / 16, 1 / 16 + 1e-9];
		expect(isInside(beyond, tolerance)).toBe(isInside(beyond * 25.4, tolerance * 25.4));
		expect(isInside(-beyond, tolerance)).toBe(false);
	});

	it('of 0 lets nothing pass but what is right', () => {
		expect(isInBand({ under: 0.5, over: 0 }, 17, 17)).toBe(true);
		expect(isInBand({ under: 0.5, over: 0 }, 17, 17.01)).toBe(false);
	});
});
