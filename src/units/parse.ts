/** Lengths, angles and plain numbers as people write them. */
import { type ExpressionReader, evaluate } from './expression.ts';
import { lengthUnit, type Unit, type Units } from './units.ts';
import { type Quantity, UnitsError } from './units-error.ts';

export type { Quantity };

const DEGREE_UNIT: Unit = { name: 'degree', convert: (count) => count, own: true };
const DEGREE_WORDS = new Set(['°', 'deg', 'degree', 'degrees']);
const ANGLE_READER: ExpressionReader = {
	units: (word) => (DEGREE_WORDS.has(word) ? DEGREE_UNIT : undefined),
	wanted: { kind: 'angle' },
};
const NUMBER_READER: ExpressionReader = { units: () => undefined, wanted: { kind: 'number' } };

/**
 * A length in `units`: a number, or a text with decimals (point or comma), fractions, feet and inches, sums and
 * products. Without its own unit a text is in `units`, else it is converted.
 * @throws UnitsError for whatever is no length or could be read as two different ones
 */
export function parseLength(text: string | number, units: Units): number {
	return read(text, { units: (word) => lengthUnit(word, units), wanted: { kind: 'length', units } });
}

/**
 * An angle in degrees, with or without a degree sign.
 * @throws UnitsError for whatever is no angle
 */
export function parseAngle(text: string | number): number {
	return read(text, ANGLE_READER);
}

/**
 * A number without a unit: a ratio, a count.
 * @throws UnitsError for whatever is no number
 */
export function parseNumber(text: string | number): number {
	return read(text, NUMBER_READER);
}

/**
 * A number of that kind as a person writes it; a length in `units`.
 * @throws UnitsError for whatever is none
 */
export function parseQuantity(text: string | number, kind: Quantity, units: Units): number {
	if (kind === 'length') return parseLength(text, units);
	return kind === 'angle' ? parseAngle(text) : parseNumber(text);
}

function read(text: string | number, reader: ExpressionReader): number {
	if (typeof text === 'string') return evaluate(text, reader);
	if (Number.isFinite(text)) return text;
	throw new UnitsError(String(text), { code: 'not-finite' }, reader.wanted);
}
