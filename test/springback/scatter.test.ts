import { describe, expect, it } from 'vitest';
import { type Filter, filterPrior, newBend, newTube, pull } from '../../src/springback/filter.ts';
import { manyWrong } from '../../src/springback/gates.ts';
import { together, withTallies } from '../../src/springback/lesson.ts';
import { ANGLE, TUBE_TAKE_UP } from '../../src/springback/model.ts';
import { observe, type ReadingOptions } from '../../src/springback/reading.ts';
import { NOTHING_SEEN, tubesDiffer, varianceOf, withDeviation, wrongPart } from '../../src/springback/scatter.ts';
import { draws } from '../helpers/shop/plain-shop.ts';

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
		expect(wrongPart(measured(400, 12).scatter)).toBeGreaterThan(0.07);
		expect(wrongPart(measured(400, 12).scatter)).toBeLessThan(0.08);
		expect(wrongPart(measured(400, 1000).scatter)).toBeLessThan(0.02);
	});

	it('says when one reading alone is not to be built on', () => {
		expect(manyWrong(cold)).toBe(false);
		expect(manyWrong(measured(400, 12))).toBe(true);
		expect(manyWrong(measured(400, 1000))).toBe(false);
	});

	it('counts what was confirmed as right, what was set aside as wrong, and what a check told not at all', () => {
		const bend = pull(newBend(cold), 60, 60);
		const told = (options: ReadingOptions) => observe(bend, 'angle', 52, options).scatter.wrong;
		expect(told({ readings: 2, confirmed: true })).toEqual({ sum: 0, count: 2 });
		expect(told({ readings: 2, confirmed: true, setAside: 1 })).toEqual({ sum: 1, count: 3 });
		expect(told({ setAside: 1 }).count).toBe(2);
		expect(told({ setAside: 1 }).sum).toBeCloseTo(1 + told({}).sum, 12);
		expect(told({ sd: 0.1, confirmed: true })).toEqual({ sum: 0, count: 0 });
	});

	it('is carried to later sessions', () => {
		const { scatter } = measured(100, 8);
		const lists = [
			{ scatter, weight: 1 },
			{ scatter, weight: 0.5 },
		];
		const later = withTallies(cold, together(lists, Number.POSITIVE_INFINITY));
		expect(later.scatter.wrong.count).toBeCloseTo(1.5 * scatter.wrong.count, 9);
		expect(later.scatter.wrong.sum).toBeCloseTo(1.5 * scatter.wrong.sum, 9);
	});
});

describe('a shop twice as rough', () => {
	const having = (deviations: number, times: number) => {
		let scatter = NOTHING_SEEN;
		for (let i = 0; i < deviations; i++) scatter = withDeviation(scatter, 'stop', 0.25 * times * (i % 2 ? 1 : -1), 1);
		return scatter;
	};

	it('is known as one by its stops before each kind of error is', () => {
		// 12 of its deviations: all kinds together count (12 + 12 * 4) / 24 = 2.5 times the common variance.
		expect(varianceOf('seat', having(12, 2)) / 0.25 ** 2).toBeCloseTo(2.5, 9);
	});

	it('has tubes that differ more, and one with steady hands none that differ less', () => {
		expect(tubesDiffer(NOTHING_SEEN)).toBe(1);
		expect(tubesDiffer(having(12, 2))).toBeCloseTo(2.5, 9);
		expect(tubesDiffer(having(200, 0.5))).toBe(1);
		const usual = newTube(cold).cov[TUBE_TAKE_UP]![TUBE_TAKE_UP]!;
		const rough = newTube({ ...cold, scatter: having(12, 2) }).cov[TUBE_TAKE_UP]![TUBE_TAKE_UP]!;
		expect(rough / usual).toBeCloseTo(2.5, 9);
	});
});

describe('a reading that is a little off', () => {
	it('weighs less where many numbers are wrong', () => {
		const wide = pull(newBend(cold), 60, 60);
		const careless = { ...wide, scatter: { ...wide.scatter, wrong: { sum: 20, count: 100 } } };
		const off = wide.mean[ANGLE]! - 4;
		expect(observe(careless, 'angle', off).mean[ANGLE]).toBeGreaterThan(observe(wide, 'angle', off).mean[ANGLE]! + 0.1);
	});
});
