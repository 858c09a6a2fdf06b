import { describe, expect, it } from 'vitest';
import { type Filter, filterPrior, newBend, newTube, observe, pull } from '../../src/springback/filter.ts';
import { manyWrong } from '../../src/springback/gates.ts';
import { together, withTallies } from '../../src/springback/lesson.ts';
import { wrongPart } from '../../src/springback/scatter.ts';
import { draws } from '../helpers/plain-shop.ts';

const cold = newTube(filterPrior(0.021));

/** `count` bends measured once, of which every `each`th number is 2 degrees wrong; the finder scatters as it does (.25 degrees). */
function measured(count: number, each: number): Filter {
	const draw = draws(each);
	let f = cold;
	for (let n = 1; n <= count; n++) {
		const loaded = 40 + (n % 7) * 10;
		f = pull(newBend(f), loaded, loaded);
		f = observe(f, 'angle', 0.93 * loaded - 3 + draw.normal(0, 0.25) + (n % each === 0 ? 2 : 0));
	}
	return f;
}

describe('the part of numbers that are wrong', () => {
	it('begins as in any shop and comes near what is seen', () => {
		expect(wrongPart(cold.scatter)).toBeCloseTo(0.04, 12);
		expect(wrongPart(measured(400, 12).scatter)).toBeGreaterThan(0.065);
		expect(wrongPart(measured(400, 12).scatter)).toBeLessThan(0.1);
		expect(wrongPart(measured(400, 1000).scatter)).toBeLessThan(0.02);
	});

	it('says when one reading alone is not to be built on', () => {
		expect(manyWrong(cold)).toBe(false);
		expect(manyWrong(measured(400, 12))).toBe(true);
		expect(manyWrong(measured(400, 1000))).toBe(false);
	});

	it('counts a reading that was confirmed as two of which none is wrong, and one whose fellow was set aside as one of two', () => {
		const bend = pull(newBend(cold), 60, 60);
		const confirmed = observe(bend, 'angle', 52, { readings: 2, confirmed: true });
		expect(confirmed.scatter.wrong).toEqual({ sum: 0, count: 2 });
		expect(observe(bend, 'angle', 52, { confirmed: true }).scatter.wrong).toEqual({ sum: 1, count: 2 });
	});

	it('is carried to later sessions', () => {
		const { scatter } = measured(100, 8);
		const lists = [
			{ scatter, weight: 1 },
			{ scatter, weight: 0.5 },
		];
		const later = withTallies(cold, together(lists, Number.POSITIVE_INFINITY));
		expect(later.scatter.wrong.count).toBeCloseTo(150, 9);
		expect(later.scatter.wrong.sum).toBeCloseTo(1.5 * scatter.wrong.sum, 9);
	});
});

describe('a reading that is a little off', () => {
	it('weighs less where many numbers are wrong', () => {
		const wide = pull(newBend(cold), 60, 60);
		const careless = { ...wide, scatter: { ...wide.scatter, wrong: { sum: 20, count: 100 } } };
		const off = wide.mean[7]! - 4;
		expect(observe(careless, 'angle', off).mean[7]).toBeGreaterThan(observe(wide, 'angle', off).mean[7]! + 0.1);
	});
});
