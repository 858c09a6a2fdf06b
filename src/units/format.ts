/** Lengths and angles as people read them. */
import type { Quantity } from './parse.ts';
import type { Units } from './units.ts';

/** A length as a short decimal with its unit, to a thousandth of an inch or a tenth of a millimeter: `10.375 in`. */
export function formatLength(length: number, units: Units): string {
	return `${bareLength(length, units)} ${units}`;
}

/** The same where the unit stands elsewhere: thousandths of an inch, tenths of a millimeter. */
export function bareLength(length: number, units: Units): string {
	return trimmed(length, units === 'in' ? 3 : 1);
}

/** An angle to so many decimals (default 1) with its sign: `22.5°`, `90°`. */
export function formatAngle(degrees: number, places = 1): string {
	return `${trimmed(degrees, places)}°`;
}

/** A phrase as a sentence or a label begins. */
export const capital = (phrase: string): string => `${phrase.charAt(0).toUpperCase()}${phrase.slice(1)}`;

/** A number to so many decimals, without trailing zeros and without a minus before 0. */
export function trimmed(value: number, places: number): string {
	const fixed = value.toFixed(places);
	// From 1e21 on there is an exponent, whose zeros count (ECMA-262, Number.prototype.toFixed).
	const short = places > 0 && !fixed.includes('e') ? fixed.replace(/\.?0+$/, '') : fixed;
	return short === '-0' ? '0' : short;
}

/** A number of that kind as it is shown; a length in `units`. */
export function formatQuantity(value: number, kind: Quantity, units: Units): string {
	if (kind === 'length') return formatLength(value, units);
	return kind === 'angle' ? formatAngle(value, 2) : trimmed(value, 4);
}
