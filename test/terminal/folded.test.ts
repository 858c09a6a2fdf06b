import { expect, it } from 'vitest';
import { folded } from '../../src/terminal/folded.ts';

it('a record goes on under its text, however many lines it takes', () => {
	const record =
		'  10  01:41:45  dial under load of bend 1: 44 degrees (stop asked for: 44 degrees); dial after release: 39.6';
	expect(folded(record, 48)).toEqual([
		'  10  01:41:45  dial under load of bend 1: 44',
		'                degrees (stop asked for: 44',
		'                degrees); dial after release:',
		'                39.6',
	]);
});

it('any other line goes on set in by two, its gaps kept, and a word that is too long is cut', () => {
	expect(folded('  Bend 2:  made 33.6', 12)).toEqual(['  Bend 2:', '    made', '    33.6']);
	expect(folded('sessions/20261126-014053', 10)).toEqual(['sessions/2', '  0261126-', '  014053']);
	expect(folded('short', 10)).toEqual(['short']);
});
