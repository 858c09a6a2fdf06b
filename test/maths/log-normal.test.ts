import { describe, expect, it } from 'vitest';
import { chanceBelow } from '../../src/maths/log-normal.ts';
import { normalCdf } from '../../src/maths/normal.ts';

/** P(X < x) of a log-normal variable whose logarithm has mean 0 and standard deviation `spread`, by what lies below its mean. */
function below(x: number, spread: number): number {
	const mean = Math.exp(spread ** 2 / 2);
	const variation = Math.sqrt(Math.expm1(spread ** 2));
	return chanceBelow((mean - x) / (variation * mean), variation);
}

describe('a log-normal tail', () => {
	it('is as R computes it: plnorm(0.5, 0, 1), plnorm(0.5, 0, 0.5), plnorm(2, 0, 1) (values from memory)', () => {
		expect(below(0.5, 1)).toBeCloseTo(0.2441086, 6);
		expect(below(0.5, 0.5)).toBeCloseTo(0.0828285, 6);
		expect(below(2, 1)).toBeCloseTo(0.7558914, 6);
	});

	it('is the normal one where the mean is many deviations', () => {
		for (const z of [-2, -0.5, 0, 1, 2.4]) {
			expect(chanceBelow(z, 0)).toBe(normalCdf(-z));
			expect(chanceBelow(z, 1e-5)).toBeCloseTo(normalCdf(-z), 4);
		}
	});

	it('ends where nothing would be left', () => {
		expect(chanceBelow(4, 0.25)).toBe(0);
		expect(chanceBelow(3.99, 0.25)).toBeGreaterThan(0);
	});
});
