import { describe, expect, it } from 'vitest';
import { cholesky } from '../../src/maths/cholesky.ts';
import { normalQuantile } from '../../src/maths/normal.ts';
import { type Filter, filterPrior, newTube, pull, reach } from '../../src/springback/filter.ts';
import { springbackAt } from '../../src/springback/learned-curve.ts';
import { releasedFrom } from '../../src/springback/model.ts';
import { observe } from '../../src/springback/reading.ts';
import { draws } from '../helpers/shop/plain-shop.ts';

const ANGLES = [15, 30, 45, 60, 90, 120];
const cold = filterPrior(0.021);
const taught = [30, 60, 90, 120].reduce(
	(f: Filter, loaded) => observe(pull(newTube(f), loaded, loaded), 'angle', 0.93 * loaded - 3, { readings: 2 }),
	cold,
);

/** Springbacks of tubes drawn from the prior: of machine, tube and seat, the stop solved for. */
function drawn(prior: Filter, angle: number, count: number): number[] {
	const f = newTube(prior);
	const size = f.mean.length - 1;
	const lower = cholesky(f.cov.slice(0, size).map((line) => line.slice(0, size)));
	const draw = draws(5);
	return [...Array(count)].map(() => {
		const z = lower.map(() => draw.normal(0, 1));
		const x = lower.map((line, i) => f.mean[i]! + line.reduce((sum, value, j) => sum + value * z[j]!, 0));
		const leaves = (loaded: number) => releasedFrom(x, loaded).mean;
		let [low, high] = [0, 270];
		for (let i = 0; i < 40; i++) {
			const middle = (low + high) / 2;
			if (leaves(middle) < angle) low = middle;
			else high = middle;
		}
		return low - angle;
	});
}

describe('springback over the angle', () => {
	it('is what the expected stop goes past the angle', () => {
		for (const { angle, back } of springbackAt(taught, ANGLES)) {
			expect(reach(newTube(taught), angle + back).mean).toBeCloseTo(angle, 6);
		}
	});

	it('has the spread of machine, tube and seat together', () => {
		for (const { angle, back, low, high } of springbackAt(taught, ANGLES)) {
			const all = drawn(taught, angle, 4000);
			const mean = all.reduce((sum, x) => sum + x, 0) / all.length;
			const sd = Math.sqrt(all.reduce((sum, x) => sum + (x - mean) ** 2, 0) / all.length);
			// The build-up is followed to first order, which shows in small bends.
			expect(Math.abs(back - mean)).toBeLessThan(0.08);
			expect(high - back).toBeCloseTo(back - low, 9);
			const one = (high - back) / normalQuantile(0.95);
			expect(Math.abs(one / sd - 1)).toBeLessThan(0.05);
		}
	});

	it('grows with the angle, and narrows as a shop learns', () => {
		const [before, after] = [springbackAt(cold, ANGLES), springbackAt(taught, ANGLES)];
		for (const [i, point] of after.entries()) {
			if (i > 0) expect(point.back).toBeGreaterThan(after[i - 1]!.back);
			expect(point.high - point.low).toBeLessThan(before[i]!.high - before[i]!.low);
		}
	});
});
