import type { Units } from '../../tube/job.ts';
import { parseAngle, parseLength, parseNumber } from '../../units/parse.ts';
import { UnitsError } from '../../units/units-error.ts';
import { type Fault, show } from '../fault.ts';
import type { Value } from './draft.ts';

/** What kind of number a field of a job file holds. */
export type NumberKind = 'length' | 'angle' | 'number';

/** A fraction of an inch, or a length with its unit: it stands in the file as it stands on the drawing. */
const AS_WRITTEN = /^-?(\d+[ -])?\d+\/\d+$|^-?[\d./ '"-]+\s*(in|mm|'|")$/;

/**
 * What is put into the file for a number that was typed: a fraction or a length with a unit as it was written, anything
 * else (a sum, a comma) as the number it comes to.
 * @throws UnitsError for whatever is no number of that kind
 */
export function numberIn(text: string, kind: NumberKind, units: Units): Value {
	if (kind === 'angle') return parseAngle(text);
	if (kind === 'number') return parseNumber(text);
	const length = parseLength(text, units);
	return AS_WRITTEN.test(text.trim()) ? text.trim() : length;
}

/** The value, or the fault that stands at `at`. */
export function valueAt(at: string, text: string, kind: NumberKind, units: Units): { value: Value } | { fault: Fault } {
	try {
		return { value: numberIn(text, kind, units) };
	} catch (error) {
		if (error instanceof UnitsError) return { fault: { at, found: show(text), right: error.right } };
		throw error;
	}
}

/** The length that a value of a file stands for. The value has been found good. */
export function lengthOf(value: Value, units: Units): number {
	return parseLength(value, units);
}
