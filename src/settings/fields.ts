import { type FieldName, TOOLING_FIELDS } from '../tube/tooling-fields.ts';
import { isWithin, rangeWords } from '../units/range.ts';

/** Null where the value may be kept, else what would be right, in words. */
export function wrongValue(name: FieldName, value: number): string | null {
	const { kind, range } = TOOLING_FIELDS[name];
	if (Number.isFinite(value) && isWithin(value, range)) return null;
	return `${kind === 'angle' ? 'an angle in degrees' : `a ${kind}`}${rangeWords(range)}`;
}

/** Null where a bender or die may be called so, else what would be right. A control character would garble every screen. */
export const wrongName = (name: string): string | null =>
	name.trim() === '' || /\p{Cc}/u.test(name) ? 'a name of visible characters on one line' : null;
