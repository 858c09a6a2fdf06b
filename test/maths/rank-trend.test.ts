import { describe, expect, it } from 'vitest';
import { rankTrend } from '../../src/maths/rank-trend.ts';
import { draws } from '../helpers/shop/plain-shop.ts';

/** Numbers 1 to n in an order of that score: rising, with `down` pairs turned. */
function ofScore(n: number, score: number): number[] {
	let turned = ((n * (n - 1)) / 2 - score) / 2;
	const order: number[] = [];
	for (let i = 1; i <= n; i++) {
		// A number put before k smaller ones turns k pairs.
		const before = Math.min(turned, i - 1);
		order.splice(order.length - before, 0, i);
		turned -= before;
	}
	return order;
}

/** Probabilities one way: R. O. Gilbert, "Statistical Methods for Environmental Pollution Monitoring", 1987, table A18. */
const TABLE: [n: number, score: number, chance: number][] = [
	[4, 6, 0.042],
	[5, 8, 0.042],
	[5, 10, 0.0083],
	[6, 11, 0.028],
	[6, 13, 0.0083],
	[6, 15, 0.0014],
	[7, 15, 0.015],
	[7, 17, 0.0054],
	[8, 18, 0.016],
	[8, 20, 0.0071],
	[10, 25, 0.014],
	[10, 27, 0.0083],
	[10, 31, 0.0023],
];

describe('a trend', () => {
	it.each(TABLE)('of %i numbers scoring %i comes by chance as the table has it', (n, score, chance) => {
		const found = rankTrend(ofScore(n, score));
		expect(found.score).toBe(score);
		expect(found.chance / 2).toBeCloseTo(chance, chance < 0.01 ? 4 : 3);
	});

	it('falls as it rises', () => {
		const rising = rankTrend([1, 2, 4, 3, 5, 7]);
		const falling = rankTrend([-1, -2, -4, -3, -5, -7]);
		expect(falling).toEqual({ score: -rising.score, chance: rising.chance, slope: -rising.slope });
	});

	it('has the slope of a line, whatever one wild number does to it', () => {
		expect(rankTrend([1, 1.5, 2, 2.5, 3]).slope).toBeCloseTo(0.5, 12);
		expect(rankTrend([1, 1.5, 2, 99, 3, 3.5, 4]).slope).toBeCloseTo(0.5, 12);
	});

	it('comes by chance as often as it says', () => {
		const draw = draws(33_000_000);
		const times = 4000;
		let found = 0;
		for (let i = 0; i < times; i++) {
			const { chance } = rankTrend(Array.from({ length: 9 }, () => draw.normal(0, 1)));
			if (chance < 0.05) found++;
		}
		// At most .05, since the score goes in steps: with nine numbers the step below it has .0446 (the table's .022, twice).
		expect(found / times).toBeGreaterThan(0.034);
		expect(found / times).toBeLessThan(0.055);
	});
});
