import { describe, expect, test } from 'vitest';
import { cutLine, span, spreadOut, widthOf } from '../../src/screen/text/line.ts';
import { cellsOf, firstCells, padded, withoutLast } from '../../src/terminal/width.ts';
import { wrap } from '../../src/terminal/wrap.ts';

describe('how wide a text is', () => {
	// Source: Unicode Standard Annex 11, "East Asian Width": W and F take two cells; combining marks and formats take none.
	test.each([
		['', 0],
		['Aft arch', 8],
		['39 5/8 in ± 0.1°', 16],
		['├──┼─┤ █▒░', 10],
		['⠤⠔', 2],
		['船尾の枠', 8],
		['arc e\u0301lance\u0301', 10],
		['배 틀', 5],
		['（全角）', 8],
		['🛟', 2],
		['a\u00adb', 2],
	])('%s', (text, cells) => {
		expect(cellsOf(text)).toBe(cells);
	});

	test('a wide character is never cut in two', () => {
		expect(firstCells('船尾の枠', 5)).toBe('船尾');
		expect(widthOf(cutLine([span('船尾の枠')], 6))).toBeLessThanOrEqual(6);
		expect(padded('船尾', 6)).toBe('船尾  ');
		expect(withoutLast('a🛟')).toBe('a');
		expect(withoutLast('')).toBe('');
	});

	test('lines of wide characters are wrapped and spread by their cells', () => {
		expect(wrap('船尾 の枠 arch', 7)).toEqual(['船尾', 'の枠', 'arch']);
		const line = spreadOut([span('Set the tube')], [span('船尾の枠')], 24);
		expect(widthOf(line)).toBe(24);
	});
});
