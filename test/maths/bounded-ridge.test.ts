import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Levers, residualOf } from '../../src/maths/bounded-ridge.ts';

const number = (most: number) => fc.double({ min: -most, max: most, noNaN: true, noDefaultInfinity: true });
const dot = (a: readonly number[], b: readonly number[]) => a.reduce((sum, x, i) => sum + x * b[i]!, 0);

const anyProblem = fc
	.record({
		rows: fc.integer({ min: 1, max: 8 }),
		count: fc.integer({ min: 0, max: 40 }),
		size: fc.constantFrom(1, 1000),
	})
	.chain(({ rows, count, size }) => {
		const row = fc.array(number(size), { minLength: rows, maxLength: rows });
		const below = fc.oneof(
			fc.constant(-Infinity),
			number(2).map((x) => -Math.abs(x)),
			fc.constant(0),
		);
		const list = (each: fc.Arbitrary<number>) => fc.array(each, { minLength: count, maxLength: count });
		return fc.record({
			misses: fc.array(number(10), { minLength: rows, maxLength: rows }),
			columns: fc.array(row, { minLength: count, maxLength: count }),
			lower: list(below),
			upper: list(below.map((x) => 0 - x)),
		});
	});

/** The x that belongs to what is left, by its own condition: each -a.r held to its bounds. */
const xOf = (r: readonly number[], { columns, lower, upper }: Levers) =>
	columns.map((a, k) => Math.min(upper[k]!, Math.max(lower[k]!, -dot(a, r))));

describe('what levers within bounds leave of misses', () => {
	// By hand: x = -a m / (1 + a^2) leaves m / (1 + a^2).
	it('is what one lever leaves, free or held', () => {
		const lever = (most: number): Levers => ({ columns: [[3]], lower: [-most], upper: [most] });
		expect(residualOf([20], lever(Number.POSITIVE_INFINITY))[0]).toBeCloseTo(2, 12);
		expect(residualOf([20], lever(1))[0]).toBeCloseTo(17, 12);
		expect(residualOf([20], { columns: [], lower: [], upper: [] })).toEqual([20]);
		expect(residualOf([0], lever(1))).toEqual([0]);
	});

	// Karush, Kuhn and Tucker: for a convex function, necessary and sufficient for the one least value.
	it('comes of an x within its bounds that nothing better lies beside', () => {
		fc.assert(
			fc.property(anyProblem, ({ misses, ...levers }) => {
				const r = residualOf(misses, levers);
				const x = xOf(r, levers);
				const size = Math.max(1, ...levers.columns.flat().map(Math.abs));
				for (const [row, miss] of misses.entries()) {
					const made = miss + levers.columns.reduce((sum, a, k) => sum + a[row]! * x[k]!, 0);
					expect(Math.abs(made - r[row]!)).toBeLessThan(1e-7 * size);
				}
			}),
			{ seed: 31, numRuns: 400 },
		);
	});

	// What two long levers along the misses move they take away, though the 1 that a change costs is under what rounding makes of their squares.
	it('is found beside levers so long that rounding swallows what a change costs', () => {
		fc.assert(
			fc.property(fc.array(number(1), { minLength: 2, maxLength: 12 }), (direction) => {
				fc.pre(Math.hypot(...direction) > 0.1);
				const along = (by: number) => direction.map((x) => by * x);
				const columns = [along(1e9), along(-3e9)];
				const r = residualOf(along(5), { columns, lower: [-Infinity, -Infinity], upper: [Infinity, Infinity] });
				expect(Math.hypot(...r)).toBeLessThan(1e-3);
			}),
			{ seed: 32, numRuns: 200 },
		);
	});
});
