import { describe, expect, test } from 'vitest';
import { cutLine, span, spreadOut, widthOf } from '../../src/screen/text/line.ts';
import { cellsOf, firstCells, isNarrow, padded, withoutLast } from '../../src/terminal/width.ts';
import { wrap } from '../../src/terminal/wrap.ts';

// By a variable: it comes with Ink, and the project does not name it.
const byName: string = 'string-width';
const stringWidth = ((await import(byName)) as { default: (text: string) => number }).default;

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

describe('text that is counted by its length', () => {
	const graphemes = new Intl.Segmenter(undefined, { granularity: 'grapheme' });
	const parts = (text: string) => [...graphemes.segment(text)].map(({ segment }) => segment);
	const narrow = Array.from({ length: 0xffff }, (_, i) => String.fromCharCode(i + 1)).filter(isNarrow);

	test('is all that the screen draws with, alone or side by side', () => {
		const drawn = 'Mark 16 3/8 ± 1/32 → 18.5° × 2 … – — ’ · ─│┌┐└┘├┤█▀▄░⠿⣿';
		expect(isNarrow(drawn)).toBe(true);
		expect(stringWidth(drawn)).toBe(drawn.length);
		expect(narrow.length).toBeGreaterThan(600);
	});

	test('takes one column a character by the full measure, too', () => {
		expect(narrow.filter((character) => stringWidth(character) !== 1)).toEqual([]);
	});

	test('joins no two characters: what stands side by side is as wide as its parts', () => {
		const doubled = narrow.map((character) => character + character).join('');
		expect(parts(doubled)).toEqual([...doubled]);
	});

	test.each([
		['a wide character', '鋼'],
		['a combining mark', 'e\u0301'],
		['an emoji', '🛟'],
		['an emoji by variation', '©\ufe0f'],
		['a joined emoji', '👩\u200d🔧'],
		['a tab', 'a\tb'],
	])('is not %s', (_, text) => {
		expect(isNarrow(text)).toBe(false);
	});
});
