import { expect, it } from 'vitest';
import { isWithin, lengthsIn } from '../../src/units/range.ts';
import { rangeWords } from '../../src/words/range.ts';

it('holds a number against its bounds, those left out aside', () => {
	expect([0.5, 2, 0.4, 2.1].map((value) => isWithin(value, { least: 0.5, most: 2 }))).toEqual([
		true,
		true,
		false,
		false,
	]);
	expect([0, 0.1, 0.5].map((value) => isWithin(value, { above: 0, below: 0.5 }))).toEqual([false, true, false]);
	expect(isWithin(-7, {})).toBe(true);
	expect([0, 0.005].map((value) => isWithin(value, { least: 0.01, most: 45, orZero: true }))).toEqual([true, false]);
});

it('says them', () => {
	expect(rangeWords({ least: 0.5, most: 2 })).toBe(' from 0.5 to 2');
	expect(rangeWords({ least: 0.01, most: 45, orZero: true })).toBe(' 0, or from 0.01 to 45');
	expect(rangeWords({ least: 0.001, below: 1 })).toBe(' of 0.001 or more and below 1');
	expect(rangeWords({ above: 0 })).toBe(' above 0');
	expect(rangeWords({})).toBe('');
});

it('of lengths in mm is told in inches in three digits, none of them outside', () => {
	expect(lengthsIn({ least: 1, most: 1000 }, 'in')).toEqual({ least: 0.0394, most: 39.3 });
	expect(lengthsIn({ least: -1000, most: 100_000 }, 'in')).toEqual({ least: -39.3, most: 3930 });
	expect(lengthsIn({ least: 0 }, 'in')).toEqual({ least: 0, most: undefined });
	expect(lengthsIn({ least: 0.01, most: 100 }, 'mm')).toEqual({ least: 0.01, most: 100 });
});
