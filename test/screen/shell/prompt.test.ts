import { describe, expect, test } from 'vitest';
import type { Key } from '../../../src/screen/shell/keys.ts';
import {
	choicesFrom,
	type FieldEntry,
	NOTHING,
	type Pressed,
	type Prompt,
	pressed,
} from '../../../src/screen/shell/prompt.ts';
import { parseAngle } from '../../../src/units/parse.ts';

const READING: Prompt<string> = {
	label: 'Dial',
	read: (text) => `read ${parseAngle(text)}`,
	plus: { label: 'ready', step: 'plus' },
	slash: { label: 'take back', step: 'slash' },
	star: { label: 'more', step: 'star' },
	back: { label: 'back', step: 'back' },
	empty: 'Write what the dial reads.',
};
const CHOICES: Prompt<string> = {
	label: 'Choice',
	choices: ['a', 'b', 'c'].map((label) => ({ label, step: label })),
	empty: 'Write a number.',
};
const NAMED: Record<string, Key> = {
	'⏎': { key: 'return' },
	'⌫': { key: 'backspace' },
	'⎋': { key: 'escape' },
	'↑': { key: 'up' },
	'↓': { key: 'down' },
};

/** The outcome of the last of the keys, each taken in the entry that the one before it left. */
function outcomeOf(prompt: Prompt<string>, keys: string): Pressed<string> {
	let entry: FieldEntry = NOTHING;
	let outcome: Pressed<string> = { entry };
	for (const character of keys) {
		outcome = pressed(prompt, entry, NAMED[character] ?? { key: 'character', text: character });
		if ('entry' in outcome) entry = outcome.entry;
	}
	return outcome;
}

describe('a reading field', () => {
	test.each([
		['12.5⏎', 12.5],
		['12,5⏎', 12.5],
		['90 - 12.5⏎', 77.5],
		['22+1/2⏎', 22.5],
		['129⌫.5⏎', 12.5],
		['99⎋45⏎', 45],
		['  45 ⏎', 45],
		['-3⏎', -3],
	])('%s is %d', (keys, value) => {
		expect(outcomeOf(READING, keys)).toEqual({ step: `read ${value}` });
	});

	test('what has no meaning here is answered with what to do', () => {
		const { plus: _, star: __, ...only } = READING;
		expect(outcomeOf(only, '+')).toEqual({ wrong: 'Write what the dial reads.' });
		expect(outcomeOf(only, '*')).toEqual({ wrong: 'Write what the dial reads.' });
		expect(outcomeOf({ label: '', empty: '' }, '+')).toEqual({ entry: NOTHING });
	});

	test.each([
		['+', 'plus'],
		['/', 'slash'],
		['*', 'star'],
		['⎋', 'back'],
		['7⌫+', 'plus'],
	])('%s in an empty field is a key of its own', (key, step) => {
		expect(outcomeOf(READING, key)).toEqual({ step });
	});

	test('the same signs behind a digit belong to the number', () => {
		expect(outcomeOf(READING, '1+/*')).toEqual({ entry: { field: '1+/*', selected: null } });
	});

	test('a sign that has no meaning here does not enter an empty field', () => {
		const { plus, slash, star, back, ...bare } = READING;
		expect([plus, slash, star, back]).not.toContain(undefined);
		expect(outcomeOf(bare, '+*/45⏎')).toEqual({ step: 'read 45' });
	});

	test('Enter alone says what is wanted', () => {
		expect(outcomeOf(READING, '⏎')).toEqual({ wrong: READING.empty });
		expect(outcomeOf(READING, '  ⏎')).toEqual({ wrong: READING.empty });
	});

	test('what cannot be read is said and stays in the field', () => {
		const outcome = outcomeOf(READING, '12..5⏎');
		expect(outcome).toEqual({ wrong: expect.stringContaining('"12..5" cannot be read') });
	});

	test('a field is full at 40 characters', () => {
		expect(outcomeOf(READING, '1'.repeat(41))).toEqual({ wrong: expect.stringContaining('40') });
	});

	test('an error of the program itself is not swallowed', () => {
		const broken = {
			...READING,
			read: () => {
				throw new RangeError('bug');
			},
		};
		expect(() => outcomeOf(broken, '1⏎')).toThrow('bug');
	});
});

describe('a list of choices', () => {
	test.each([
		['2⏎', { step: 'b' }],
		['↓↓⏎', { step: 'b' }],
		['↑⏎', { step: 'c' }],
		['↓↑↑⏎', { step: 'a' }],
		['4⏎', { wrong: '"4" is none of the numbers here; write one from 1 to 3.' }],
		['0⏎', { wrong: '"0" is none of the numbers here; write one from 1 to 3.' }],
		['⏎', { wrong: 'Write a number.' }],
	])('%s', (keys, outcome) => {
		expect(outcomeOf(CHOICES, keys)).toEqual(outcome);
	});

	test('signs act behind a digit too, and those without a meaning are left out', () => {
		const signs = { ...CHOICES, plus: { label: 'advised', step: 'plus' }, back: { label: 'back', step: 'back' } };
		expect(outcomeOf(signs, '1+')).toEqual({ step: 'plus' });
		expect(outcomeOf(signs, '1/')).toEqual({ step: 'back' });
		expect(outcomeOf(signs, '1*⏎')).toEqual({ step: 'a' });
	});

	test('of thousands makes the one that is taken and no other', () => {
		const made: number[] = [];
		const numbers = Array.from({ length: 10_000 }, (_, n) => n);
		const choices = choicesFrom(numbers, (n) => {
			made.push(n);
			return { label: String(n), step: `took ${n}` };
		});
		expect(outcomeOf({ ...CHOICES, choices }, '4321⏎')).toEqual({ step: 'took 4320' });
		expect(made).toEqual([4320]);
	});

	test('a reading typed there by an instrument chooses nothing', () => {
		expect(outcomeOf(CHOICES, '2.5⏎')).toEqual({ wrong: '"2.5" is none of the numbers here; write one from 1 to 3.' });
	});
});
