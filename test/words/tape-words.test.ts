import { describe, expect, test } from 'vitest';
import { hookBurnt, readTape, tapePhrase } from '../../src/words/tape-words.ts';

// A hair is common practice, no source; the limits between the words are ours.
describe('a length as it is read off a tape', () => {
	test.each([
		[9.375, 1 / 16, 'in', '9 3/8 in'],
		[9.378, 1 / 16, 'in', '9 3/8 in'],
		[9.387, 1 / 16, 'in', '9 3/8 in, a hair over (0.012 in)'],
		[9.363, 1 / 16, 'in', '9 3/8 in, a hair under (0.012 in)'],
		[9.4, 1 / 16, 'in', '9 3/8 in, just over (0.025 in)'],
		[9.35, 1 / 16, 'in', '9 3/8 in, just under (0.025 in)'],
		[238.1, 1, 'mm', '238 mm, a hair over (0.1 mm)'],
		[237.6, 1, 'mm', '238 mm, just under (0.4 mm)'],
		[238.03, 1, 'mm', '238 mm'],
		[0.387, 1 / 16, 'in', '3/8 in, a hair over (0.012 in)'],
	] as const)('%f by %f %s: %s', (length, division, units, phrase) => {
		expect(tapePhrase(length, division, units)).toBe(phrase);
	});

	test('what is left over has its sign, and reading and rest make up the length', () => {
		for (let length = 0; length < 12; length += 0.0173) {
			const { over, word } = readTape(length, 1 / 8, 'in');
			expect(Math.abs(over)).toBeLessThanOrEqual(1 / 16 + 1e-12);
			expect((length - over) * 8).toBeCloseTo(Math.round((length - over) * 8), 9);
			if (/over/.test(word)) expect(over).toBeGreaterThan(0);
			if (/under/.test(word)) expect(over).toBeLessThan(0);
		}
	});

	test('the hook burnt', () => {
		expect(hookBurnt(9.375, 1 / 16, 'in')).toEqual({ hold: '1', read: '10 3/8' });
		expect(hookBurnt(1006.2, 1, 'mm')).toEqual({ hold: '100', read: '1106' });
	});
});
