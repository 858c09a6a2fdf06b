import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { eigen } from '../../src/maths/eigen.ts';
import { times } from '../../src/maths/matrix.ts';
import { definite, expectNear, unit } from '../helpers/matrices.ts';

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
