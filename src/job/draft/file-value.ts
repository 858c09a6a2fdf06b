import type { Units } from '../../tube/job.ts';
import { parseLength, parseQuantity, type Quantity } from '../../units/parse.ts';
import { UnitsError } from '../../units/units-error.ts';
import type { Fault } from '../facts/index.ts';
import { valued } from '../fault.ts';
import type { FileValue } from './draft.ts';

/** A fraction of an inch, or a length with its unit: it stands in the file as it stands on the drawing. */
const AS_WRITTEN = /^-?(\d+[ -])?\d+\/\d+$|^-?[\d./ '"-]+\s*(in|mm|'|")$/;

/** A whole number and a fraction, as a numeric pad writes them. */
const ON_THE_PAD = /^(\d+) *\+ *(\d+\/\d+)$/;

/**
 * What is put into the file for a number that was typed: a fraction or a length with a unit as it was written, 3+1/2 as 3 1/2, anything
 * else (a sum, a comma) as the number it comes to.
 * @throws UnitsError for whatever is no number of that kind
 */
export function numberIn(text: string, kind: Quantity, units: Units): FileValue {
	const number = parseQuantity(text, kind, units);
	const written = text.trim().replace(ON_THE_PAD, '$1 $2');
	return kind === 'length' && AS_WRITTEN.test(written) ? written : number;
}

/** The value, or the fault that stands at `at`. */
export function valueAt(
	at: string,
	text: string,
	kind: Quantity,
	units: Units,
): { value: FileValue } | { fault: Fault } {
	try {
		return { value: numberIn(text, kind, units) };
	} catch (error) {
		if (error instanceof UnitsError) {
			const { fault: why, wanted } = error;
			return { fault: { at, found: valued(text), right: { code: 'number-as-written', why, wanted } } };
		}
		throw error;
	}
}

/** The length that a value of a file stands for. The value has been found good. */
export function lengthInFile(value: FileValue, units: Units): number {
	return parseLength(value, units);
}
