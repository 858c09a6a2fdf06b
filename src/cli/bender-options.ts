import { FIELD_NAMES, TOOLING_FIELDS } from '../tube/tooling-fields.ts';
import type { Quantity } from '../units/parse.ts';
import { FIELD_WORDS } from '../words/tooling-fields.ts';
import type { OptionSpec } from './command.ts';
import { optionName } from './quantity.ts';

const VALUES: Readonly<Record<Quantity, string>> = { length: 'LENGTH', angle: 'ANGLE', number: 'RATIO' };

/** One option a figure of the tooling. */
const FIELD_OPTIONS = Object.fromEntries(
	FIELD_NAMES.map((field): [string, OptionSpec] => {
		return [optionName(field), { value: VALUES[TOOLING_FIELDS[field].kind], says: FIELD_WORDS[field].says }];
	}),
);

/** The options of `pullbook bender`, for the table of commands. Lengths are read as in a job file, `6` or `"1 1/2"` or `"38 mm"`. */
export const BENDER_OPTIONS: Readonly<Record<string, OptionSpec>> = {
	die: { value: 'DIE', says: 'the die; without it the bender, whatever the die' },
	units: { value: 'UNIT', says: 'in or mm, for lengths written without a unit' },
	...FIELD_OPTIONS,
	remove: { says: 'forget the set-up of the die, or of the whole bender' },
	forget: { says: 'what was learned until now does not count; logs stay' },
	remember: { says: 'take the last --forget back' },
	'test-angle': { value: 'ANGLE', says: 'test piece, one bend in scrap: its angle' },
	'test-od': { value: 'LENGTH', says: 'test piece: outside diameter' },
	'test-before': { value: 'LENGTH', says: 'test piece: its length before it was bent' },
	'test-mark': { value: 'LENGTH', says: 'test piece: start end to the mark at the index line' },
	'test-start-leg': { value: 'LENGTH', says: 'test piece: start end to the outside corner' },
	'test-far-leg': { value: 'LENGTH', says: 'test piece: far end to the outside corner' },
	'test-straight': { value: 'LENGTH', says: 'test piece: start end to where the bend begins' },
	keep: { says: 'keep with the die what the test piece told' },
};

export const BENDER_EXAMPLES: readonly (readonly [line: string, does: string])[] = [
	['pullbook bender', 'benders, dies and what was learned'],
	['pullbook bender shop --max-angle 120', 'the dial ends at 120 with every die'],
	['pullbook bender shop --die five --clr 5 --clamp 4', 'set up a die, or change it'],
	['pullbook bender shop --die five --floor none', 'forget one value'],
	['pullbook bender shop --die five --remove', "forget the die's set-up"],
	['pullbook bender shop --die five --forget', 'the die was changed: learn anew'],
];

export const BENDER_NOTES: readonly string[] = [
	'A test piece: bend scrap once, best to 110° or more; lay straight edges along',
	'the outside of both legs; read each leg from its end to where the edges cross.',
	'All --test options are needed but --test-straight, which tells stretch as well.',
];
