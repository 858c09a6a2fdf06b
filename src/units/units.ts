/** The only file that knows what an inch is. */
export type Units = 'in' | 'mm';

/** Exactly, by definition (NIST SP 811); as a fraction of whole numbers, so that converting rounds no more than it must. */
const MM_PER_TEN_INCHES = 254;

/** A unit in which a length or an angle may be written. */
export interface Unit {
	name: string;
	/** So many of this unit, in the unit that is read into. */
	convert(count: number): number;
	/** Whether it is the very unit that a bare number is taken in. */
	own: boolean;
	/** The part that may follow it and then need not be named: inches after feet. */
	part?: { unit: Unit; count: number };
}

/** A length given in `from`, in `to`. */
export function convertLength(length: number, from: Units, to: Units): number {
	if (from === to) return length;
	return from === 'in' ? (length * MM_PER_TEN_INCHES) / 10 : (length * 10) / MM_PER_TEN_INCHES;
}

const WORDS: ReadonlyMap<string, { name: string; units: Units; count: number }> = new Map([
	...namedUnits('inch', 'in', 1, ['"', 'in', 'inch', 'inches']),
	...namedUnits('foot', 'in', 12, ["'", 'ft', 'foot', 'feet']),
	...namedUnits('millimeter', 'mm', 1, ['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters']),
	...namedUnits('centimetre', 'mm', 10, ['cm', 'centimetre', 'centimetres', 'centimeter', 'centimeters']),
	...namedUnits('meter', 'mm', 1000, ['m', 'metre', 'metres', 'meter', 'meters']),
]);

function namedUnits(name: string, units: Units, count: number, words: string[]) {
	return words.map((word) => [word, { name, units, count }] as const);
}

/** What a unit word (quotes made plain) stands for when read into `to`; undefined for a word that names no length. */
export function lengthUnit(word: string, to: Units): Unit | undefined {
	const known = WORDS.get(word);
	if (known === undefined) return undefined;
	const { name, units, count } = known;
	const unit: Unit = {
		name,
		convert: (number) => convertLength(number * count, units, to),
		own: units === to && count === 1,
	};
	const inch = name === 'foot' ? lengthUnit('in', to) : undefined;
	return inch === undefined ? unit : { ...unit, part: { unit: inch, count } };
}
