import { LONGEST_NAME, nameWillDo } from '../tube/names.ts';
import { type FieldName, TOOLING_FIELDS } from '../tube/tooling-fields.ts';
import { isWithin, lengthsIn, rangeWords } from '../units/range.ts';
import type { Units } from '../units/units.ts';

/** Null where the value, a length in `units`, may be kept; else what would be right, in words. */
export function wrongValue(name: FieldName, value: number, units: Units): string | null {
	const { kind, range } = TOOLING_FIELDS[name];
	const bound = kind === 'length' ? lengthsIn(range, units) : range;
	if (Number.isFinite(value) && isWithin(value, bound)) return null;
	return `${kind === 'angle' ? 'an angle in degrees' : `a ${kind}`}${rangeWords(bound)}${kind === 'length' ? ` ${units}` : ''}`;
}

/** Null where a bender or die may be called so, else what would be right. */
export const wrongName = (name: string): string | null =>
	nameWillDo(name) ? null : `a name of visible characters on one line, at most ${LONGEST_NAME} of them`;
