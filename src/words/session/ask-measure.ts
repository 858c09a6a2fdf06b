import type { CheckAsk, ConfirmAsk, MeasureAsk } from '../../session/protocol/asks.ts';
import { type MeasuredIn, measuredIn } from '../../session/protocol/measured-in.ts';
import { foreignName } from '../foreign.ts';
import type { Ruled, Wording } from '../lengths.ts';
import { dial, giveOrTake, measureOf, readingSpread, shown } from '../numbers.ts';
import { readingName } from '../readings.ts';
import { reasonWords } from '../reason.ts';
import { MEASURED } from './again.ts';

/** What the pages say that ask for a reading: of the angle finder, again what is doubted, a check on the tube. */

/** In front of what a reading is expected to be. */
export const EXPECTED = 'expected';

export const MEASURE = {
	title: 'Measure the bend',
	label: 'Let the tube go. What does the angle finder show?',
	empty: 'Write what the angle finder reads and press Enter; * has skip.',
	how: 'Hold the angle finder on both straights, clear of the bend. Read how far the tube is bent: a straight tube is 0.',
} as const;

/** How often to measure; `second`: the first of two readings is given. */
export function measureTimes({ readings, reason }: MeasureAsk, second: boolean, style: Wording): string {
	if (readings === 2)
		return `Measure twice: take the angle finder off and set it again for the second. ${reasonWords(reason, style)}`;
	return second ? 'Second reading: take the angle finder off, set it again and forget the first.' : 'Measure once.';
}

/** A reading far from what was expected. */
export const CONFIRM = {
	title: 'Is that right?',
	label: (ask: ConfirmAsk): string => `Read it again: ${readingName(ask)}`,
	plus: 'it stands',
	empty: 'Read it again: press + if it stands, or write the new reading and press Enter.',
	given: 'You gave',
	expected: 'Expected',
	again: (of: ConfirmAsk['of'], given: string): string =>
		of === 'pointer'
			? `Push the slack out and read it again. Still ${given}? Press +: the stops allow for it.`
			: `Read it again. Still ${given}? Press +.`,
} as const;

/** The reading that is doubted, and what was expected; as it was typed: 6.75 must not stand there as 6.8. */
export function doubtedWords(ask: ConfirmAsk, style: Wording): { given: string; expected: string } {
	const measure = measureOf(ask.of, style, ask.name);
	const given = measure === 'angle' ? dial(ask.reading) : shown(ask.reading, measure, style);
	return { given, expected: shown(ask.expect.value, measure, style) };
}

export const CHECK = {
	title: (name: string): string => `Check: ${foreignName(name)}`,
	label: MEASURED.label,
	empty: 'Write what it measures and press Enter; * has skip.',
	greatest: 'Greatest outside diameter',
	greatestEmpty: 'Write the greatest diameter and press Enter, the least follows; * has skip.',
	narrow: (od: string): string =>
		`the greatest diameter of a bent tube is at least its own, ${od}: write the diameter, not the ratio`,
} as const;

/** What a check should read, and by the drawing. */
export function checkValues(ask: CheckAsk, job: Ruled): { expected: string; drawing: string } {
	const measure: MeasuredIn = measuredIn('check', ask.kind);
	const { value, sd } = ask.expect;
	return {
		expected: giveOrTake(shown(value, measure, job), readingSpread(sd, measure, job)),
		drawing: `drawing   ${shown(ask.design, measure, job)}, within ${shown(ask.tolerance, measure, job)}`,
	};
}

/** The second half of an ovality check. */
export const LEAST = {
	title: 'Least diameter',
	label: 'Least outside diameter',
	empty: 'Write the least diameter and press Enter.',
	kept: (greatest: string): string => `Greatest outside diameter ${greatest} (kept)`,
	wrong: (greatest: string): string => `the least diameter is above 0 and at most the greatest, ${greatest}`,
} as const;
