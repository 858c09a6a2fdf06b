import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cholesky, eigen, forward, inverse, times } from '../../src/springback/linear.ts';

const entry = fc.double({ min: -3, max: 3, noNaN: true });
/** B B' + I/10: any symmetric positive definite matrix, not too near a singular one. */
const definite = fc
	.integer({ min: 1, max: 6 })
	.chain((size) =>
		fc
			.array(fc.array(entry, { minLength: size, maxLength: size }), { minLength: size, maxLength: size })
			.map((b) =>
				b.map((line, i) => b.map((other, j) => line.reduce((sum, x, n) => sum + x * other[n]!, i === j ? 0.1 : 0))),
			),
	);

function expectNear(got: readonly (readonly number[])[], wanted: readonly (readonly number[])[], within: number) {
	for (const [i, line] of wanted.entries())
		for (const [j, value] of line.entries()) expect(Math.abs(got[i]![j]! - value)).toBeLessThan(within);
}

const unit = (size: number) =>
	[...Array(size).keys()].map((i) => [...Array(size).keys()].map((j) => (i === j ? 1 : 0)));

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

describe('eigen', () => {
	it('has the eigenvalues 1 and 3 of a matrix of two rows', () => {
		const values = eigen([
			[2, 1],
			[1, 2],
		]).map(({ value }) => value);
		expect(values.sort()[0]).toBeCloseTo(1, 14);
		expect(values[1]).toBeCloseTo(3, 14);
	});

	it('builds the matrix up again from perpendicular vectors of length 1', () => {
		fc.assert(
			fc.property(definite, (matrix) => {
				const axes = eigen(matrix);
				const built = matrix.map((_, i) =>
					matrix.map((_line, j) => axes.reduce((sum, { value, vector }) => sum + value * vector[i]! * vector[j]!, 0)),
				);
				expectNear(built, matrix, 1e-11);
				const vectors = axes.map(({ vector }) => vector);
				expectNear(
					vectors.map((vector) => times(vectors, vector)),
					unit(matrix.length),
					1e-12,
				);
			}),
		);
	});

	it('takes a matrix of rank one, and one of zeros', () => {
		const values = eigen([
			[1, 2],
			[2, 4],
		]).map(({ value }) => value);
		expect(Math.max(...values)).toBeCloseTo(5, 13);
		expect(Math.abs(Math.min(...values))).toBeLessThan(1e-15);
		expect(eigen([[0]])).toEqual([{ value: 0, vector: [1] }]);
	});
});
