import { expect, it } from 'vitest';
import { isWithin, rangeWords } from '../../src/units/range.ts';

it('holds a number against its bounds, those left out aside', () => {
	expect([0.5, 2, 0.4, 2.1].map((value) => isWithin(value, { least: 0.5, most: 2 }))).toEqual([
		true,
		true,
		false,
		false,
	]);
	expect([0, 0.1, 0.5].map((value) => isWithin(value, { above: 0, below: 0.5 }))).toEqual([false, true, false]);
	expect(isWithin(-7, {})).toBe(true);
});

it('says them', () => {
	expect(rangeWords({ least: 0.5, most: 2 })).toBe(' of 0.5 or more and at most 2');
	expect(rangeWords({ above: 0 })).toBe(' above 0');
	expect(rangeWords({})).toBe('');
});
