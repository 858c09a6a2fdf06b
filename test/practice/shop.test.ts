import { describe, expect, it } from 'vitest';
import { nearestTo } from '../../src/maths/scalar.ts';
import { keyed } from '../../src/practice/keyed.ts';
import { ELSEWHERE, FOREIGN, ROUGH } from '../../src/practice/other-shops.ts';
import { draws } from '../../src/practice/random.ts';
import { openShop } from '../../src/practice/shop.ts';
import { USUAL_SHOP, type World } from '../../src/practice/world.ts';

const shopOf = (seed: number, world: World = USUAL_SHOP) => openShop(world, draws(seed), 180);
const worlds = [
	['usual', USUAL_SHOP],
	...Object.entries(FOREIGN),
	...Object.entries(ELSEWHERE).map(([name, world]) => [`${name}, elsewhere`, world]),
	['rough', ROUGH],
] as [string, World][];

function moments(values: readonly number[]) {
	const mean = values.reduce((a, b) => a + b, 0) / values.length;
	const central = (power: number) => values.reduce((sum, v) => sum + (v - mean) ** power, 0) / values.length;
	return { mean, sd: Math.sqrt(central(2)), kurtosis: central(4) / central(2) ** 2 };
}

describe('the random source', () => {
	const draw = draws(5);
	const many = (one: () => number) => moments(Array.from({ length: 40_000 }, one));

	it('repeats itself from a seed, and neighbors differ', () => {
		const first = (seed: number) => Array.from({ length: 5 }, () => draws(seed).uniform(0, 1))[0];
		expect(first(9)).toBe(first(9));
		expect(new Set(Array.from({ length: 200 }, (_, seed) => first(seed))).size).toBe(200);
	});

	it('is even, normal and heavy-tailed as asked', () => {
		const even = many(() => draw.uniform(2, 4));
		expect(even.mean).toBeCloseTo(3, 1);
		expect(even.sd).toBeCloseTo(2 / Math.sqrt(12), 1);
		const normal = many(() => draw.normal(1, 0.5));
		expect(normal.mean).toBeCloseTo(1, 1);
		expect(normal.sd).toBeCloseTo(0.5, 1);
		expect(normal.kurtosis).toBeGreaterThan(2.8);
		expect(normal.kurtosis).toBeLessThan(3.2);
		const heavy = many(() => draw.heavy(0.5, 6));
		expect(heavy.sd).toBeCloseTo(0.5, 1);
		expect(heavy.kurtosis).toBeGreaterThan(3.8);
	});
});

describe.each(worlds)('a bender of the world "%s"', (_, world) => {
	it('leaves more the further it is pulled, and less than the dial said', () => {
		for (let seed = 0; seed < 50; seed++) {
			const { reach } = shopOf(seed, world);
			const dial = Array.from({ length: 158 }, (_, i) => 12 + i);
			expect(dial.filter((loaded) => reach(loaded + 1) <= reach(loaded) || reach(loaded) >= loaded)).toEqual([]);
		}
	});

	it('only adds by pulling, and opens by relief', () => {
		const shop = shopOf(3, world);
		shop.pull(60);
		const made = shop.angle;
		shop.seat(made);
		shop.pull(40);
		expect(shop.angle).toBe(made);
		shop.pull(66);
		expect(shop.angle).toBeGreaterThan(made + 2);
		const before = shop.angle;
		shop.relieve(1);
		expect(shop.angle).toBeLessThan(before);
	});
});

describe('what is read', () => {
	it('lies near the truth, on the scale divisions', () => {
		const shop = shopOf(8);
		shop.pull(70);
		const read = Array.from({ length: 400 }, () => shop.finder());
		expect(moments(read).mean).toBeCloseTo(shop.angle, 1);
		expect(read.every((value) => nearestTo(value, 0.1) === value)).toBe(true);
		const dial = Array.from({ length: 400 }, () => shop.loaded());
		expect(Math.abs(moments(dial).mean - 70)).toBeLessThan(1);
		expect(dial.every((value) => Number.isInteger(2 * value))).toBe(true);
	});

	it('cannot pass the largest angle of the machine', () => {
		const shop = openShop(USUAL_SHOP, draws(1), 90);
		shop.pull(120);
		expect(shop.loaded()).toBeLessThan(91);
		expect(shop.angle).toBeLessThanOrEqual(shop.reach(90) + 1.5);
	});

	it('is keyed wrongly as often as the world says', () => {
		const draw = draws(2);
		const world = { ...USUAL_SHOP, blunders: { off: 0.1, swapped: 0.05 } };
		const all = Array.from({ length: 20_000 }, () => keyed(47.5, world, draw));
		const share = (wrong: number) => all.filter((value) => value === wrong).length / all.length;
		expect(share(45.5) + share(49.5)).toBeCloseTo(0.1, 1);
		expect(share(74.5)).toBeGreaterThan(0.04);
		expect(share(74.5)).toBeLessThan(0.06);
		expect(share(47.5)).toBeGreaterThan(0.83);
	});
});
