import type { NumberWanted, UnitsError, UnitsFault } from '../units/units-error.ts';
import { foreign } from './foreign.ts';

/** What is wrong with a number as it was written, and what to write instead. */

/** As much of a number that is refused is told: it stands in its field, or in the line that was sent. */
const LONGEST = 120;

/** Of a number that is refused, with what is wrong with it or what would be right. */
export const cannotBeRead = (text: string, right: string): string =>
	`"${foreign(text, LONGEST)}" cannot be read: ${right}`;

export const unitsErrorWords = ({ text, fault, wanted }: UnitsError): string =>
	cannotBeRead(text, unitsFaultWords(fault, wanted));

/** What is wrong with a text and what would be right, to stand after the text. */
export function unitsFaultWords(fault: UnitsFault, wanted: NumberWanted): string {
	const { wrong, right = `write ${example(wanted)}` } = WORDS[fault.code](fault as never);
	return wrong === undefined ? right : `${wrong}; ${right}`;
}

/** The same where an example of what is wanted stands beside it already. */
export function unitsFaultBrief(fault: UnitsFault): string {
	const { wrong, right = '' } = WORDS[fault.code](fault as never);
	return wrong ?? right;
}

/** What is wrong, and what to write instead where that is another thing than an example of what is wanted. */
type WrongAndRight = { wrong?: string; right?: string };

const WORDS: { readonly [C in UnitsFault['code']]: (fault: Extract<UnitsFault, { code: C }>) => WrongAndRight } = {
	'not-finite': () => ({}),
	'too-long': () => ({ wrong: 'that is too long for a number' }),
	empty: () => ({ wrong: 'nothing is written' }),
	'divided-by-nothing': () => ({ wrong: 'that is no finite number', right: 'is a divisor 0?' }),
	'breaks-off': () => ({ wrong: 'it ends too soon' }),
	'unknown-sign': ({ text }) => ({ wrong: `"${foreign(text)}" is not understood` }),
	'unknown-unit': ({ text }) => ({ wrong: `the unit "${foreign(text)}" is not known here` }),
	'side-by-side': ({ text }) => ({
		wrong: `"${foreign(text)}" stands beside a number`,
		right: 'a sum is written 31 + 5, a mixed number 31 1/2',
	}),
	'number-missing': ({ text }) => ({ wrong: `a number is missing before "${foreign(text)}"` }),
	'unit-alone': ({ text }) => ({ wrong: `the unit "${foreign(text)}" has no number before it` }),
	'bracket-not-opened': () => ({ wrong: 'a bracket is closed that was not opened' }),
	'bracket-not-closed': () => ({ wrong: 'a bracket is not closed' }),
	'one-without-unit': () => ({
		wrong: 'one number has a unit and one has none',
		right: 'write the unit after each of them',
	}),
	'units-multiplied': () => ({ wrong: 'two numbers with units cannot be multiplied' }),
	'unit-in-divisor': () => ({ wrong: 'a divisor has no unit' }),
	'other-than-inches': () => ({ wrong: 'after feet only inches can follow' }),
	'two-strokes': () => ({ wrong: 'two fraction strokes in a row have two meanings', right: 'set brackets' }),
	'over-a-fraction': () => ({ wrong: 'dividing by a fraction has two meanings', right: 'set brackets' }),
	'spaced-after-feet': () => ({
		wrong: 'a spaced hyphen after feet has two meanings',
		right: `write 2' 6" for both together, or 2' - (6")`,
	}),
	'half-spaced': ({ whole, fraction }) => ({
		right: `write ${whole}-${fraction} for a mixed number, ${whole} - ${fraction} for a difference`,
	}),
	'fraction-of-one-or-more': ({ fraction }) => ({
		wrong: `in a mixed number the fraction is under 1, not ${fraction}`,
	}),
};

function example(wanted: NumberWanted): string {
	switch (wanted.kind) {
		case 'length':
			return wanted.units === 'in'
				? `a length such as 9 3/8, 9-3/8, 9.375, 2' 6 1/2", 362 mm or 12 7/16 - 1`
				: 'a length such as 238, 238.5, 9 3/8 in or 362 - 25';
		case 'angle':
			return 'an angle in degrees such as 45, 22.5, 22 1/2 or 90 - 12.5';
		case 'number':
			return 'a number such as 0.93 or 15/16';
	}
}
