import type { Units } from '../tube/job.ts';
import { parseQuantity, type Quantity } from '../units/parse.ts';
import { UnitsError } from '../units/units-error.ts';
import { sentence } from '../words/sentence.ts';
import { unitsErrorWords } from '../words/units.ts';
import { UsageError } from './usage-error.ts';

/** Options as the command line gives them: the value, or true where none was given. */
export type Options = Readonly<Record<string, string | true>>;

/** A field's name as an option: `markOffset` is `mark-offset`. */
export const optionName = (field: string) => field.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);

/** The value of an option that takes one; null where it is not given. */
export function optionWord(options: Options, name: string): string | null {
	const word = options[name];
	return typeof word === 'string' ? word : null;
}

/**
 * A length (in `units`), an angle or a ratio as a person writes it.
 * @throws UsageError that names the option
 */
export function readQuantity(option: string, word: string, kind: Quantity, units: Units): number {
	try {
		return parseQuantity(word, kind, units);
	} catch (error) {
		if (error instanceof UnitsError) throw new UsageError(sentence(`--${option}: ${unitsErrorWords(error)}`));
		throw error;
	}
}
