import type { Stick } from '../maths/packing.ts';
import { BOUNDS } from '../tube/bounds.ts';
import { isWithin, type Range } from '../units/range.ts';
import { convertLength, type Units } from '../units/units.ts';
import { CUT_USAGE } from '../words/usage/cut.ts';
import { readQuantity } from './quantity.ts';
import { UsageError } from './usage-error.ts';

/** What a saw takes where nobody says: a common blade (common practice, no source). */
const KERF: Readonly<Record<Units, number>> = { in: 1 / 8, mm: 3 };
const MOST_KERF: Range = { least: 0, most: 20 };
const MOST_STICKS = 10_000;

/**
 * A stick as it is given: its length, and how many there are where that stands behind it (`240x3`, `20 ft x 3`).
 * @throws UsageError that says what would be right
 */
export function readStick(word: string, units: Units): Stick {
	const [, length = word, number] = /^(.*\S)\s*[xX×]\s*(\d+)$/s.exec(word) ?? [];
	const count = number === undefined ? Number.POSITIVE_INFINITY : Number(number);
	if (number !== undefined && (count < 1 || count > MOST_STICKS))
		throw new UsageError(CUT_USAGE.sticks(word, number, MOST_STICKS));
	return { length: bounded('stock', length, units, BOUNDS.stock), count };
}

/** What the saw takes of the tube. @throws UsageError that says what would be right */
export function readKerf(word: string | null, units: Units): number {
	return word === null ? KERF[units] : bounded('kerf', word, units, MOST_KERF);
}

function bounded(option: string, word: string, units: Units, range: Range): number {
	const length = readQuantity(option, word, 'length', units);
	if (isWithin(convertLength(length, units, 'mm'), range)) return length;
	const [least, most] = [range.least!, range.most!].map((mm) => convertLength(mm, 'mm', units)) as [number, number];
	throw new UsageError(CUT_USAGE.length(option, word, length, { least, most }, units));
}
