import { describe, expect, it } from 'vitest';
import { wrap, wrapBehind } from '../../src/terminal/wrap.ts';

describe('text behind a lead', () => {
	it('is set in as far as the lead reaches', () => {
		expect(wrapBehind('  - ', 'Cut edges are sharp', 14)).toEqual(['  - Cut edges', '    are sharp']);
		expect(wrapBehind('船尾 ', 'bow arch', 9)).toEqual(['船尾 bow', '     arch']);
	});

	it('keeps a number with its fraction and its unit', () => {
		expect(wrapBehind('- ', 'mark at 31 1/2 in', 12)).toEqual(['- mark at', '  31 1/2 in']);
	});

	it('goes on in the next line where one word is longer than a line', () => {
		expect(wrapBehind('> ', '/a/long/path', 8)).toEqual(['> /a/lon', '  g/path']);
		expect(wrap('/a/long/path', 8)).toEqual(['/a/long/', 'path']);
	});

	it('is nothing where there is none', () => {
		expect(wrapBehind('- ', ' ', 8)).toEqual([]);
	});
});
