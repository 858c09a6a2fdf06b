/** A length as a person reads it off a tape and says it: the nearest division, and what is left over. */
import { nearestTo } from '../maths/scalar.ts';
import { formatLength } from '../units/format.ts';
import { BURNT, formatTape } from '../units/tape.ts';
import type { Units } from '../units/units.ts';

export interface TapeReading {
	/** The nearest division, without unit: `9 3/8`. */
	reading: string;
	/** What the length is over that division, below 0 when it is under it; in the length's unit. */
	over: number;
	/** What is left over in words, '' for nothing that can be seen. */
	word: '' | 'a hair over' | 'a hair under' | 'just over' | 'just under';
}

/** Up to these parts of a division what is left over cannot be seen, or is a hair; beyond, up to half, it is just over or just under. */
const UNSEEN = 1 / 16;
const HAIR = 1 / 4;

/** The nearest division of the tape and what is left over. @throws RangeError for a division that is not above 0 */
export function readTape(length: number, division: number, units: Units): TapeReading {
	const reading = formatTape(length, division, units);
	const over = length - nearestTo(length, division);
	const part = Math.abs(over) / division;
	const side = over > 0 ? 'over' : 'under';
	const word = part <= UNSEEN ? '' : part <= HAIR ? (`a hair ${side}` as const) : (`just ${side}` as const);
	return { reading, over, word };
}

/** The same in a phrase, what is left over in numbers too: `9 3/8 in, a hair over (0.012 in)`. */
export function tapePhrase(length: number, division: number, units: Units): string {
	const { reading, over, word } = readTape(length, division, units);
	return `${reading} ${units}${word === '' ? '' : `, ${word} (${formatLength(Math.abs(over), units)})`}`;
}

/** The reading with the tape's hook left out: what to hold on the end, and what the tape then shows at the mark. */
export function hookBurnt(length: number, division: number, units: Units): { hold: string; read: string } {
	return { hold: String(BURNT[units]), read: formatTape(length + BURNT[units], division, units) };
}
