import fc from 'fast-check';
import { expect } from 'vitest';

const entry = fc.double({ min: -3, max: 3, noNaN: true });
/** B B' + I/10: any symmetric positive definite matrix, not too near a singular one. */
export const definite = fc
	.integer({ min: 1, max: 6 })
	.chain((size) =>
		fc
			.array(fc.array(entry, { minLength: size, maxLength: size }), { minLength: size, maxLength: size })
			.map((b) =>
				b.map((line, i) => b.map((other, j) => line.reduce((sum, x, n) => sum + x * other[n]!, i === j ? 0.1 : 0))),
			),
	);

export function expectNear(
	got: readonly (readonly number[])[],
	wanted: readonly (readonly number[])[],
	within: number,
) {
	for (const [i, line] of wanted.entries())
		for (const [j, value] of line.entries()) expect(Math.abs(got[i]![j]! - value)).toBeLessThan(within);
}

export const unit = (size: number) =>
	[...Array(size).keys()].map((i) => [...Array(size).keys()].map((j) => (i === j ? 1 : 0)));
