import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { updated } from '../../src/maths/gaussian.ts';
import { draws } from '../../src/practice/random.ts';
import { filterPrior, newBend, newTube, pull } from '../../src/springback/filter.ts';
import { observe } from '../../src/springback/reading.ts';
import { unrounded } from '../../src/springback/rounding.ts';
import { NOTHING_SEEN, SCATTER_KINDS, varianceOf } from '../../src/springback/scatter.ts';

/** Mean and variance of x, normal, after x and an error were read together as `value` to a division: summed up over a fine grid, by Bayes' rule. */
function summed(x: { mean: number; sd: number }, error: number, value: number, division: number) {
	const shown = Math.hypot(x.sd, error);
	const [low, high] = [value - division / 2, value + division / 2];
	const steps = 4000;
	let [mass, first, second] = [0, 0, 0];
	for (let i = 0; i < steps; i++) {
		const s = low + ((i + 0.5) / steps) * (high - low);
		const weight = Math.exp(-0.5 * ((s - x.mean) / shown) ** 2);
		// Of x, given what would have been read to no division.
		const mean = x.mean + (x.sd / shown) ** 2 * (s - x.mean);
		mass += weight;
		first += weight * mean;
		second += weight * (mean * mean + (x.sd * error) ** 2 / shown ** 2);
	}
	return { mean: first / mass, variance: second / mass - (first / mass) ** 2 };
}

describe('a number read to a division', () => {
	const sds = fc.double({ min: 0.1, max: 2, noNaN: true });
	const division = fc.double({ min: 0.05, max: 2, noNaN: true });
	const off = fc.double({ min: -3, max: 3, noNaN: true });

	it('tells of what it was read of what all numbers that round to it tell together', () => {
		fc.assert(
			fc.property(sds, sds, division, off, (sd, error, step, by) => {
				const value = 10 + by * Math.hypot(sd, error);
				const told = unrounded(value, step, { mean: 10, variance: sd ** 2 + error ** 2 });
				const after = updated({ mean: [10], cov: [[sd ** 2]] }, [1], told.value, error ** 2 + told.rounding);
				const exact = summed({ mean: 10, sd }, error, value, step);
				expect(after.mean[0]).toBeCloseTo(exact.mean, 5);
				expect(after.cov[0]![0]! / exact.variance).toBeCloseTo(1, 4);
			}),
		);
	});

	it('is an even error where the division is fine, and says nothing where it is wide', () => {
		const fine = unrounded(10.2, 0.01, { mean: 10, variance: 4 });
		expect(fine.value).toBeCloseTo(10.2, 6);
		expect(fine.rounding).toBeCloseTo(0.01 ** 2 / 12, 9);
		expect(unrounded(10, 100, { mean: 10.1, variance: 0.04 }).rounding).toBeGreaterThan(1e6);
	});
});

describe('a dial of whole degrees', () => {
	/** Seats, stops and dial readings of a shop that is as the common one. */
	function watched(division: number, bends: number) {
		const draw = draws(77);
		const on = (value: number) => Math.round(value / division) * division;
		let f = newTube(filterPrior(0.021, division));
		for (let n = 0; n < bends; n++) {
			const seat = draw.normal(0, 0.25);
			f = observe(newBend(f), 'pointer', on(seat + draw.normal(0, 0.2)));
			const stop = 40 + (n % 7) * 10;
			const held = stop + draw.normal(0, 0.25);
			f = pull(f, stop, on(held + draw.normal(0, 0.15)));
			const angle = 0.93 * held - 3 - seat + draw.normal(0, 0.1);
			f = observe(f, 'released', on(angle + 1 + seat + draw.normal(0, 0.2)));
			f = observe(f, 'angle', angle + draw.normal(0, 0.25));
		}
		return f.scatter;
	}

	it('does not make hands look steadier than they are', () => {
		const [whole, fine] = [watched(1, 400), watched(0.1, 400)];
		for (const kind of SCATTER_KINDS) {
			const ratio = (scatter: typeof whole) => Math.sqrt(varianceOf(kind, scatter) / varianceOf(kind, NOTHING_SEEN));
			expect(ratio(whole), kind).toBeGreaterThan(0.85);
			expect(ratio(whole), kind).toBeLessThan(1.15);
			expect(ratio(fine), kind).toBeGreaterThan(0.85);
			expect(ratio(fine), kind).toBeLessThan(1.15);
		}
	});
});
