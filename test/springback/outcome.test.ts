import { describe, expect, it } from 'vitest';
import { ELSEWHERE } from '../../src/practice/other-shops.ts';
import { draws } from '../../src/practice/random.ts';
import { openShop } from '../../src/practice/shop.ts';
import { USUAL_SHOP } from '../../src/practice/world.ts';
import { type Filter, filterPrior, newBend, newTube, pull } from '../../src/springback/filter.ts';
import { chanceAbove, outcomeAt } from '../../src/springback/outcome.ts';
import { observe } from '../../src/springback/reading.ts';

const cold = newBend(newTube(filterPrior(0.021)));
const asNormal = (f: Filter, stop: number, bound: number) =>
	chanceAbove({ ...outcomeAt(f, stop), variation: 0 }, bound);

/** The stop at which a first pull is said to pass `bound` with this probability. */
function stopAt(f: Filter, bound: number, probability: number): number {
	let [low, high] = [0, 2 * bound + 20];
	for (let i = 0; i < 50; i++) {
		const middle = (low + high) / 2;
		if (chanceAbove(outcomeAt(f, middle), bound) < probability) low = middle;
		else high = middle;
	}
	return low;
}

describe('what a first pull may leave', () => {
	// Machines of other laws than the model's, with take-ups from 1.5 to 5 degrees whatever the model thinks.
	it('passes a bound about as often as is said, on machines of five kinds and where a normal tail says twice as often', () => {
		const shops = Object.values({ usual: USUAL_SHOP, ...ELSEWHERE }).flatMap((world) =>
			Array.from({ length: 800 }, (_, m) => {
				const shop = openShop(world, draws(4_410_000 + m), 240);
				shop.newTube();
				return shop;
			}),
		);
		for (const bound of [8.5, 12.5, 20.5, 45.5]) {
			const stop = stopAt(cold, bound, 0.02);
			const passed = shops.filter((shop) => {
				shop.seat(0);
				shop.pull(stop);
				return shop.angle > bound;
			}).length;
			expect(passed / shops.length).toBeGreaterThan(0.005);
			expect(passed / shops.length).toBeLessThan(0.025);
			expect(asNormal(cold, stop, bound)).toBeGreaterThan(0.03);
		}
	});

	it('is normal below its mean, and once the machine is known', () => {
		expect(chanceAbove(outcomeAt(cold, 20), 10)).toBe(asNormal(cold, 20, 10));
		let known = cold;
		for (let i = 0; i < 40; i++) {
			const loaded = 20 + 10 * (i % 8);
			known = observe(pull(newBend(known), loaded, loaded), 'angle', 0.93 * loaded - 3);
		}
		known = newBend(known);
		const stop = stopAt(known, 60.5, 0.02);
		expect(asNormal(known, stop, 60.5)).toBeCloseTo(0.02, 3);
	});

	it('is normal in the pulls after it, whose outcome rests on what the first one left', () => {
		const once = observe(pull(cold, 20, 20), 'angle', 15);
		expect(outcomeAt(once, 25).variation).toBe(0);
	});
});
