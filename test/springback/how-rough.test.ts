import { describe, expect, it } from 'vitest';
import { normalCdf } from '../../src/maths/normal.ts';
import { timesLikely } from '../../src/springback/how-rough.ts';
import { NOTHING_SEEN, SCATTER_KINDS, type Scatter, varianceOf } from '../../src/springback/scatter.ts';

/** So many deviations seen, each as far as common `times` over. */
const seen = (count: number, times: number): Scatter => {
	const kinds = SCATTER_KINDS.map((kind) => {
		const each = count / SCATTER_KINDS.length;
		return [kind, { sum: each * times ** 2 * varianceOf(kind, NOTHING_SEEN), count: each }];
	});
	return { ...NOTHING_SEEN, ...Object.fromEntries(kinds) };
};

/** Half the band that nine in ten errors lie in whose standard deviation is any of these, each as often: by halving. */
function band(sizes: readonly number[]): number {
	let [low, high] = [0, 20];
	while (high - low > 1e-9) {
		const half = (low + high) / 2;
		const inside = sizes.reduce((sum, size) => sum + 2 * normalCdf(half / size) - 1, 0) / sizes.length;
		[low, high] = inside < 0.9 ? [half, high] : [low, half];
	}
	return high;
}

/** Degrees and Student's t exceeded in 5 of 100: Abramowitz and Stegun, Handbook of Mathematical Functions (1964), table 26.10. */
const STUDENT = [
	[8, 1.86],
	[12, 1.782],
	[20, 1.725],
	[30, 1.697],
	[120, 1.658],
] as const;

describe('how rough hands may be', () => {
	// An error whose variance is inverse chi-square is Student's t (A. Gelman et al., Bayesian Data Analysis, 2013, section 3.2).
	it.each(STUDENT)('gives the band of Student’s t with %i degrees', (degrees, t) => {
		for (const times of [0.8, 1, 1.2]) {
			const squares = 6 + (degrees - 8) * times ** 2;
			const exact = t * Math.sqrt(squares / degrees);
			expect(Math.abs(band(timesLikely(seen(degrees - 8, times))) / exact - 1)).toBeLessThan(0.012);
		}
	});

	it('is nearly as wide a band as common hands alone have before anything is seen', () => {
		expect(Math.abs(band(timesLikely(NOTHING_SEEN)) / 1.645 - 1)).toBeLessThan(0.03);
	});

	it('comes to what hands show, and is the surer the more of it they show', () => {
		const apart = (count: number) => {
			const sizes = timesLikely(seen(count, 1.5));
			return Math.max(...sizes) - Math.min(...sizes);
		};
		expect(apart(13)).toBeLessThan(apart(0));
		expect(apart(100)).toBeLessThan(apart(13));
		for (const size of timesLikely(seen(1e6, 1.5))) expect(size).toBeCloseTo(1.5, 2);
	});

	it('grows with every size as hands are rougher, twice as rough as common at most', () => {
		const [one, other] = [timesLikely(seen(13, 1.1)), timesLikely(seen(13, 1.2))];
		for (const [i, size] of one.entries()) expect(other[i]).toBeGreaterThan(size);
		for (const size of timesLikely(seen(1e6, 5))) expect(size).toBe(2);
	});
});
