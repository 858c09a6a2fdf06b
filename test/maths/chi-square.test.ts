import { describe, expect, it } from 'vitest';
import { chiSquareAt } from '../../src/maths/chi-square.ts';

/** Degrees, and the values exceeded in 95, 50 and 5 of 100: Abramowitz and Stegun, Handbook of Mathematical Functions (1964), table 26.8. */
const TABLE = [
	[8, 2.73264, 7.34412, 15.5073],
	[10, 3.9403, 9.34182, 18.307],
	[20, 10.8508, 19.3374, 31.4104],
	[30, 18.4926, 29.336, 43.7729],
	[100, 77.9295, 99.3341, 124.342],
] as const;

describe('a value of a chi-square variable by its cube root', () => {
	it.each(TABLE)('is as the table has it with %i degrees', (degrees, low, middle, high) => {
		for (const [z, value] of [
			[-1.644854, low],
			[0, middle],
			[1.644854, high],
		] as const) {
			expect(Math.abs(chiSquareAt(z, degrees) / value - 1)).toBeLessThan(0.005);
		}
	});

	it('is never below 0', () => {
		expect(chiSquareAt(-6, 1)).toBe(0);
	});
});
