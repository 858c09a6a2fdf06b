import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cholesky, forward, inverse, solveDefinite, triangle } from '../../src/maths/cholesky.ts';
import { times } from '../../src/maths/matrix.ts';
import { definite, expectNear, unit } from '../helpers/matrices.ts';

describe('cholesky', () => {
	it('is the triangle of the textbook example', () => {
		// Source: Wikipedia, "Cholesky decomposition", example
		const matrix = [
			[4, 12, -16],
			[12, 37, -43],
			[-16, -43, 98],
		];
		expect(cholesky(matrix)).toEqual([[2], [6, 1], [-8, 5, 3]]);
	});

	it('refuses what is not positive definite, and says where', () => {
		const matrix = [
			[1, 2],
			[2, 1],
		];
		expect(() => cholesky(matrix)).toThrow('not positive definite: pivot 2 of 2 is -3');
	});

	it('solves by its triangle', () => {
		expect(forward([[2], [6, 1], [-8, 5, 3]], [2, 7, 0])).toEqual([1, 1, 1]);
	});
});

describe('inverse', () => {
	it('times the matrix is the unit matrix', () => {
		fc.assert(
			fc.property(definite, (matrix) => {
				const back = inverse(matrix);
				expectNear(
					matrix.map((line) => times(back, line)),
					unit(matrix.length),
					1e-8,
				);
			}),
		);
	});
});

describe('a system solved', () => {
	it('has the solution found by hand, and none where the matrix is not positive definite', () => {
		// By hand: [4 2; 2 3] x = [8, 7] has x = [1.25, 1.5].
		const [first, second] = solveDefinite([[4], [2, 3]], [8, 7])!;
		expect(first).toBeCloseTo(1.25, 12);
		expect(second).toBeCloseTo(1.5, 12);
		expect(solveDefinite([[1], [2, 1]], [1, 1])).toBeNull();
	});
});

describe('the triangle of a covariance', () => {
	it('leads back to it, also where an unknown has no spread or follows wholly from others', () => {
		const covariance = [
			[4, 2, 0, 6],
			[2, 5, 0, 7],
			[0, 0, 0, 0],
			[6, 7, 0, 13],
		];
		const lower = triangle(covariance);
		for (let i = 0; i < 4; i++) {
			for (let j = 0; j <= i; j++) {
				const back = lower[j]!.reduce((sum, x, n) => sum + x * lower[i]![n]!, 0);
				expect(back).toBeCloseTo(covariance[i]![j]!, 10);
			}
		}
	});
});
