import { tubeTurn } from '../../tube/turns.ts';
import type { Warning } from '../../tube/warnings.ts';
import type { Ruled } from '../lengths.ts';
import { angle, fine, tape } from '../numbers.ts';
import { WAYS } from '../readings.ts';
import { END_MEETS } from '../view-names.ts';
import { warningWords } from '../warnings.ts';

/** What the tube comes to while its job is written. */

/** What stands in front of a bend's row, in columns. */
export const growthLabel = (bend: number): string => `bend ${String(bend).padEnd(3)}`;

/** A bend of the tube so far, its number left out: where its mark goes, how the tube is turned, and its angle. */
export function growthRow(mark: number, bend: { rotation: number; angle: number; number: number }, job: Ruled): string {
	const turn = turnedWords(bend.rotation, bend.number);
	return `mark ${tape(mark, job).padStart(11)}   ${turn.padEnd(27)}${angle(bend.angle).padStart(6)}`;
}

function turnedWords(rotation: number, bend: number): string {
	const { degrees, way } = tubeTurn(rotation, bend);
	if (way === 'none') return bend === 1 ? '' : 'no turn';
	return `turn ${angle(degrees)}, ${WAYS[way]}`;
}

/** What is to be heeded, each kind of it said once, and at which bends besides. */
export function heedWords(warnings: readonly Warning[], job: Ruled): string[] {
	return [...new Set(warnings.map(({ code }) => code))].map((kind) => {
		const [first, ...rest] = warnings.filter(({ code }) => code === kind);
		const more = rest.flatMap((warning) =>
			'bend' in warning ? warning.bend : 'bends' in warning ? warning.bends : [],
		);
		const others = [...new Set(more)].map((bend) => `bend ${bend}`);
		return `${warningWords(first!, job)}${others.length === 0 ? '' : ` The same at ${others.join(', ')}.`}`;
	});
}

/** The tube so far in a line, as long as there may be room for and shorter: `ended`, whether its last straight is known. */
export function lengthWords(
	length: number,
	size: string,
	ended: boolean,
	job: Ruled,
): { whole: string; short: string } {
	const long = tape(length, job);
	return ended
		? {
				whole: `Cut length ${long}, trims in it; ${size} over all, outside to outside.`,
				short: `Cut length ${long}; ${size} over all.`,
			}
		: {
				whole: `So far ${long} of tube, ${size} over all, without the last straight.`,
				short: `So far ${long}; ${size} over all.`,
			};
}

/** How large it is; `z` is null where it lies flat. */
export const sizeWords = ({ x, y, z }: { x: number; y: number; z: number | null }, job: Ruled): string =>
	[x, y, ...(z === null ? [] : [z])].map((size) => fine(size, job)).join(' by ');

const SIDES = { left: 'at the left', right: 'at the right', above: 'above', below: 'below' } as const;

/** What is drawn: where the start end is, and what the fine dots and the dotted end are. */
export function growthCaption(start: keyof typeof SIDES, meets: boolean, ended: boolean): string {
	return [
		`START ${SIDES[start]}`,
		...(meets ? [END_MEETS] : []),
		...(ended ? [] : ['the dotted end is not known yet']),
	].join('; ');
}
