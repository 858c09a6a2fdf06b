import { expect, it } from 'vitest';
import { draws } from '../../src/practice/random.ts';
import { openShop } from '../../src/practice/shop.ts';
import { USUAL_SHOP, type World } from '../../src/practice/world.ts';
import { exclusion } from '../../src/springback/excluded.ts';

it.each([
	[275, 32, false, 'above'],
	[40.1, 32, false, 'above'],
	[40, 32, false, null],
	[12, 32, false, null],
	[11.9, 32, false, 'below'],
	[11.9, 32, true, null],
	[40.1, 32, true, 'above'],
	// A small bend may be gone altogether.
	[0, 15, false, null],
] as const)('%s where the dial was held at %s, opened: %s, is %s', (reading, held, opened, which) => {
	expect(exclusion(reading, held, opened)).toBe(which);
});

/** All scatter twice what is common, a dial in whole degrees, the least and the most springback of any bender. */
const ROUGH: World = {
	...USUAL_SHOP,
	machine: { ...USUAL_SHOP.machine, takeUp: { mean: 3, sd: 1.2 }, lagShare: null, lag: [-1, 3], backlash: [0, 1] },
	tube: { takeUp: 0.5, proportion: 0.2 },
	seating: 0.5,
	dial: { division: 1, loaded: 0.3, released: 0.4 },
	finder: { division: 0.5, sd: 0.5, bias: [0, 0] },
	operator: { ...USUAL_SHOP.operator, stopping: 0.5 },
};
/** How far the dial's zero and the finder are off, either way. */
const ZERO = 2;
const BIAS = 1;

it('a true reading is never excluded in a rough shop: under 1 in 10,000', () => {
	let [readings, excluded] = [0, 0];
	for (let seed = 0; seed < 12_000; seed++) {
		const draw = draws(seed);
		const shop = openShop(ROUGH, draw, 240);
		const [zero, bias] = [draw.happens(0.5) ? ZERO : -ZERO, draw.happens(0.5) ? BIAS : -BIAS];
		shop.seat(0);
		shop.pull(draw.uniform(5, 170));
		const held = shop.loaded() + zero;
		for (const reading of [shop.finder() + bias, shop.snug() + zero]) {
			readings += 1;
			if (exclusion(reading, held, false) !== null) excluded += 1;
		}
	}
	expect(readings).toBe(24_000);
	expect(excluded).toBe(0);
});
