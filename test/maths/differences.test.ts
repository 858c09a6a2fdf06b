import { describe, expect, it } from 'vitest';
import { changeBy, slopeAt, slopesAt } from '../../src/maths/differences.ts';

// Central differences are exact for a polynomial of second degree: their error is h^2 f'''/6 (Abramowitz and Stegun, formula 25.3.21).
describe('central differences', () => {
	it('are exact on a parabola', () => {
		expect(slopeAt((x) => 3 * x * x - 2 * x, 5, 0.5)).toBe(28);
		expect(changeBy((x) => 3 * x * x - 2 * x, 5, 0.5)).toBe(14);
	});

	it('are off on a cubic by the square of the step', () => {
		expect(slopeAt((x) => x ** 3, 2, 0.25)).toBe(12 + 0.25 ** 2);
	});

	it('of a vector have one row a number, and nothing of a variable that is not moved', () => {
		const f = ([a, b, c]: readonly number[]) => [a! * b!, c! + b! * b!];
		expect(slopesAt(f, [2, 3, 1], [0.5, 0.25, 0])).toEqual([
			[3, 2, 0],
			[0, 6, 0],
		]);
	});
});
