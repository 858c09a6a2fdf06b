import { describe, expect, it } from 'vitest';

// Told apart from the path by a variable: it is plain JavaScript of the bundle, and has no types.
const file = new URL('../../.ci/plain-text.mjs', import.meta.url).href;
const { isPlain } = (await import(file)) as { isPlain: (text: string) => boolean };
const byName: string = 'string-width';
const stringWidth = ((await import(byName)) as { default: (text: string) => number }).default;

const graphemes = new Intl.Segmenter(undefined, { granularity: 'grapheme' });
const parts = (text: string) => [...graphemes.segment(text)].map(({ segment }) => segment);

const BASIC_PLANE = Array.from({ length: 0xffff }, (_, i) => String.fromCharCode(i + 1));
const plain = BASIC_PLANE.filter(isPlain);

describe('the shortcut for plain text in the bundled screen', () => {
	it('takes every character that the screen draws with, alone or side by side', () => {
		const drawn = 'Mark 16 3/8 ± 1/32 → 18.5° × 2 … – — ’ · ─│┌┐└┘├┤█▀▄░⠿⣿';
		expect(isPlain(drawn)).toBe(true);
		expect(stringWidth(drawn)).toBe(drawn.length);
		expect(plain.length).toBeGreaterThan(600);
	});

	it('holds for each such character what the full measure says: one column', () => {
		expect(plain.filter((character) => stringWidth(character) !== 1)).toEqual([]);
	});

	it('joins no two of them: what stands side by side is as wide as its parts', () => {
		const doubled = plain.map((character) => character + character).join('');
		expect(parts(doubled)).toEqual([...doubled]);
	});

	it.each([
		['a wide character', '鋼'],
		['a combining mark', 'e\u0301'],
		['an emoji', '🛟'],
		['an emoji by variation', '©\ufe0f'],
		['a joined emoji', '👩\u200d🔧'],
		['a tab', 'a\tb'],
	])('leaves %s to the full measure', (_, text) => {
		expect(isPlain(text)).toBe(false);
	});
});
