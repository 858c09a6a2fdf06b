/** Sentences of the cut list. */

import type { CutList, CutPiece, SawnStick } from '../tube/cut-list.ts';
import { toCut } from '../tube/cut-list.ts';
import type { Job } from '../tube/job.ts';
import { weightOf } from '../tube/weight.ts';
import { capital, formatLength, trimmed } from '../units/format.ts';
import { oneOrMore } from './counted.ts';
import { foreignName } from './foreign.ts';
import { type Ruled, tapeValue, unitName } from './lengths.ts';
import { percent } from './numbers.ts';
import { tubeWords } from './tube-size.ts';

/** Over a tube's list. */
export function tubeHeading(tube: Job['tube'], units: Job['units']): string {
	return `Tube ${tubeWords(tube)} (lengths in ${unitName(units)})`;
}

export const CUT_LIST = 'Cut list';

export const TICK_BOX = 'Tick a box for each stick that is sawn.';

export const PIECE_HEADS = [
	'piece',
	'job',
	'cut length',
	'wanted',
	'finished',
	'being bent',
	'scrapped',
	'to cut',
] as const;

/** A letter for each piece, as it is written on the tube: A to Z, then AA, AB and so on. */
export function pieceLetter(index: number): string {
	const last = String.fromCharCode(65 + (index % 26));
	return index < 26 ? last : pieceLetter(Math.floor(index / 26) - 1) + last;
}

export function sawingWords(kerf: number, by: Ruled): string {
	const saw = kerf === 0 ? '' : ` The saw takes ${tapeValue(kerf, by)} of the tube; the marks allow for that.`;
	return `Hook the tape on the stick's end and leave it there. Draw every mark, write the letter before it, and saw just beyond the mark.${saw}`;
}

/** Where one stick, or several alike, are sawn. */
export function stickWords({ length, from, cuts, left }: SawnStick, by: Ruled): string {
	const what = {
		stick: `${tapeValue(length, by)} long`,
		left: `${tapeValue(length, by)} that is left of a longer one`,
		missing: `${tapeValue(length, by)} long, not in hand`,
	};
	const marks = cuts.map(({ piece, mark }) => `${pieceLetter(piece)} to ${tapeValue(mark, by)}`).join(', ');
	return `${what[from]}: ${marks}. ${left > 0 ? `${tapeValue(left, by)} is left` : 'Nothing is left'}.`;
}

/** How much the sticks come to, and whether that is the least. */
export function sumWords({ sticks, used, inPieces, left, bound, isProven }: CutList, by: Ruled): string {
	const many = capital(oneOrMore(sticks.length, 'stick'));
	const waste = percent((used - inPieces) / used);
	const saw = used - inPieces - left;
	const sums = `${tapeValue(inPieces, by)} in pieces, ${tapeValue(saw, by)} for the saw, ${tapeValue(left, by)} left over`;
	const least = isProven
		? 'No cutting takes less.'
		: `No cutting can save more than ${tapeValue(used - bound, by)} of that; not all have been tried.`;
	return `${many}, ${tapeValue(used, by)} in all: ${sums}. Waste ${waste}. ${least}`;
}

export function weightWords(tube: Job['tube'], { used, inPieces }: CutList, units: Job['units']): string {
	const [pieces, sticks] = [weightOf(tube, inPieces, units), weightOf(tube, used, units)];
	if (pieces === null || sticks === null)
		return `The weight is not known: the density of ${foreignName(tube.material.name)} is not in the program.`;
	const unit = units === 'in' ? 'lb' : 'kg';
	return `The pieces weigh ${trimmed(pieces, 1)} ${unit}, the sticks ${trimmed(sticks, 1)} ${unit}.`;
}

/** Why nothing of these is left to cut. */
export function nothingWords(pieces: readonly CutPiece[]): string {
	const all = pieces.reduce((sum, { wanted }) => sum + wanted, 0);
	const begun = pieces.reduce((sum, each) => sum + each.begun, 0);
	const finished = pieces.reduce((sum, each) => sum + each.finished, 0);
	const inWork = begun === 0 ? '' : `, ${begun} being bent`;
	return `Nothing is left to cut: ${all} wanted, ${finished} finished${inWork}.`;
}

/** What is short of sticks; null where they suffice. */
export function missingWords({ sticks }: CutList, by: Ruled): string | null {
	const missing = sticks.filter(({ from }) => from === 'missing');
	const [first] = missing;
	if (first === undefined) return null;
	return `The sticks in hand are not enough: get ${missing.length} more of ${tapeValue(first.length, by)}. The list has them in.`;
}

export function tooLongWords(
	{ length }: CutPiece,
	name: string,
	longest: number,
	{ units }: Pick<Job, 'units'>,
): string {
	return `No stick is long enough for ${foreignName(name)}: it needs ${formatLength(length, units)}, the longest stick is ${formatLength(longest, units)}. Give a longer one with --stock.`;
}

export const CUT_MORE =
	'More tube was cut already than these sticks hold. Count the sticks as they were before the first cut, or say --now: then they are those in the rack now.';

/** Of all pieces, how many there are still to cut. */
export function leftToCut(pieces: readonly CutPiece[]): number {
	return pieces.reduce((sum, piece) => sum + toCut(piece), 0);
}
