import { describe, expect, test } from 'vitest';
import { toldLengths } from '../../src/screen/told-lengths.ts';
import { ARCH } from '../helpers/fake-ports.ts';

const inches = (lengths: 'fraction' | 'decimal' | 'mm' | null) => ({ ...ARCH, lengths });
const METRIC = { ...ARCH, units: 'mm', tooling: { ...ARCH.tooling, tape: 1 } } as const;

describe('lengths in a sentence of the session', () => {
	test.each([
		['Cut length: 127.754 in, both trims in it.', 'Cut length: 127 3/4 in, both trims in it.'],
		['6.669 in was expected; this is 0.125 in longer.', '6 43/64 in was expected; this is 1/8 in longer.'],
		['was the mark of bend 2 at 38 1/2 in, not 38 3/4 in?', 'was the mark of bend 2 at 38 1/2 in, not 38 3/4 in?'],
		['-0.25 in out of plane', '-1/4 in out of plane'],
		['off by 0.004 in', 'off by 0.004 in'],
	])('are fractions where those are shown: %s', (text, shown) => {
		expect(toldLengths(text, inches('fraction'))).toBe(shown);
		expect(toldLengths(text, inches(null))).toBe(shown);
		expect(toldLengths(text, inches('decimal'))).toBe(text);
	});

	test('are millimetres where those are shown, and the other way about', () => {
		expect(toldLengths('3 1/2 in of straight tube lie in the clamp, 4 in are needed.', inches('mm'))).toBe(
			'88.9 mm of straight tube lie in the clamp, 101.6 mm are needed.',
		);
		expect(toldLengths('254 mm was expected', { ...METRIC, lengths: 'fraction' })).toBe('10 in was expected');
		expect(toldLengths('254.3 mm was expected', { ...METRIC, lengths: null })).toBe('254.3 mm was expected');
	});

	test.each([
		'0.6 degrees more in bend 1 would bring it in',
		'bend 2 in the die',
		'What lies behind bend 3 in this tube',
	])('are no other numbers: %s', (text) => {
		expect(toldLengths(text, inches('mm'))).toBe(text);
	});
});
