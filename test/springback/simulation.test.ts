import { describe, expect, it } from 'vitest';
import { filterPrior, newTube } from '../../src/springback/filter.ts';
import { bendOnce } from '../helpers/session/bend-run.ts';
import { draws, newMachine, type ShopOptions } from '../helpers/shop/plain-shop.ts';
import { BEND_OF_60 } from '../helpers/shop/stop-request.ts';

/** Cold machines, one tube of three bends each, targets 30..120, half a degree either way. */
function coldTubes(tubes: number, options: Partial<ShopOptions> = {}) {
	const total = { bends: 0, pulls: 0, over: 0, within: 0, worst: 0 };
	for (let t = 0; t < tubes; t++) {
		const shop = newMachine(1000 + t, options);
		const draw = draws(t + 77);
		let f = newTube(filterPrior(0.021));
		for (let bend = 0; bend < 3; bend++) {
			const target = Math.round(draw.uniform(30, 120) * 2) / 2;
			const req = { ...BEND_OF_60, target };
			const run = bendOnce(f, shop, req, bend > 0);
			f = run.filter;
			const error = run.angle - target;
			total.bends++;
			total.pulls += run.pulls;
			total.over += error > 0.5 ? 1 : 0;
			total.within += Math.abs(error) <= 0.5 ? 1 : 0;
			total.worst = Math.max(total.worst, run.pulls);
		}
	}
	const part = (n: number) => n / total.bends;
	return { pulls: part(total.pulls), over: part(total.over), within: part(total.within), worst: total.worst };
}

describe('a cold machine', () => {
	// Nobody here looks at the dial with the tube snug, so that every further stop lies a whole division beyond the last.
	it('makes bends in at most 2.6 pulls with at most 3.6 % over, blunders included', () => {
		const got = coldTubes(1000);
		expect(got.pulls).toBeLessThan(2.6);
		expect(got.over).toBeLessThan(0.036);
		expect(got.within).toBeGreaterThan(0.73);
		expect(got.worst).toBeLessThan(9);
	});

	it('keeps below the risk for a careful operator', () => {
		expect(coldTubes(150, { stopping: 0.1, seating: 0.15 }).over).toBeLessThan(0.016);
	});

	it('is still mostly right where scatter is 1.4 times what is believed', () => {
		const rough = coldTubes(600, { stopping: 0.35, seating: 0.35 });
		expect(rough.over).toBeLessThan(0.085);
		expect(rough.pulls).toBeLessThan(2.7);
	});
});

describe('the simulated shop', () => {
	it('repeats itself from a seed, and differs from seed to seed', () => {
		const run = (seed: number) => {
			const shop = newMachine(seed);
			return [shop.pull(60), shop.measure(), shop.pointer()];
		};
		expect(run(4)).toEqual(run(4));
		expect(run(4)).not.toEqual(run(5));
	});

	it('never takes a bend back by pulling, and opens it by relief', () => {
		const shop = newMachine(11);
		shop.pull(70);
		const angle = shop.trueAngle();
		shop.seat();
		shop.pull(50);
		expect(shop.trueAngle()).toBe(angle);
		shop.relieve(1);
		expect(shop.trueAngle()).toBeLessThan(angle - 0.3);
	});
});
