import { ROUNDING, stepsWithin } from '../scalar.ts';
import type { Best, WantedPieces } from './wanted.ts';

/** Divisions that lengths are multiples of: those of tapes and folding rules, then those of calipers. */
const DIVISIONS = [1, 1 / 2, 1 / 4, 1 / 8, 1 / 16, 1 / 32, 1 / 64, 1 / 10, 1 / 20, 1 / 100];
const MOST_CELLS = 16_384;

/**
 * As the best filling of a stick, by dynamic programming (S. Martello and P. Toth, Knapsack Problems, 1990, section 3.3) over lengths
 * rounded down to a division: what is worth `most` then is worth no less by the true lengths. `filling` is null where rounding made it
 * longer than the stick.
 */
export function gridFilling(
	room: number,
	wanted: WantedPieces,
	values: readonly number[],
): Best | { filling: null; most: number } {
	const { lengths, counts } = wanted;
	const division = divisionOf(room, lengths);
	const cells = stepsWithin(room, division);
	const worth = new Float64Array(cells + 1);
	const kinds = lengths.flatMap((length, kind) => {
		if (counts[kind] === 0 || values[kind]! <= 0) return [];
		return [{ kind, size: Math.max(1, stepsWithin(length, division)), taken: new Uint16Array(cells + 1) }];
	});
	for (const { kind, size, taken } of kinds) {
		const before = worth.slice();
		const most = Math.min(counts[kind]!, Math.floor(cells / size));
		for (let count = 1; count <= most; count++) {
			const value = count * values[kind]!;
			for (let cell = count * size; cell <= cells; cell++) {
				const with_ = before[cell - count * size]! + value;
				if (with_ > worth[cell]!) [worth[cell], taken[cell]] = [with_, count];
			}
		}
	}
	const filling = lengths.map(() => 0);
	let [cell, length] = [cells, 0];
	for (const { kind, size, taken } of kinds.reverse()) {
		const count = taken[cell]!;
		filling[kind] = count;
		length += count * lengths[kind]!;
		cell -= count * size;
	}
	const most = worth[cells]! * (1 + ROUNDING);
	return length <= room * (1 + ROUNDING) ? { filling, most } : { filling: null, most };
}

/** The coarsest division that all lengths are multiples of; where there is none, the finest that is still quick. */
function divisionOf(room: number, lengths: readonly number[]): number {
	const finest = room / MOST_CELLS;
	const isMultiple = (length: number, division: number) =>
		Math.abs(length / division - Math.round(length / division)) <= 1e-6;
	const exact = DIVISIONS.find((each) => each >= finest && lengths.every((length) => isMultiple(length, each)));
	return exact ?? finest;
}
