/** What one stick can take: the best filling of it, and all that are worth trying. */
import { ROUNDING, stepsWithin } from '../scalar.ts';
import { gridFilling } from './grid.ts';
import type { Best, Filling, WantedPieces } from './wanted.ts';

/** How many fillings of a stick are looked at for the best. */
const MOST_LOOKED_AT = 2_000;

/**
 * The filling of a stick that is worth most, by branch and bound over the kinds in order of their value by length (S. Martello and P. Toth,
 * Knapsack Problems, 1990, section 3.1); where that takes long, by their lengths on a grid. `room`: the stick's length with one cut of the
 * saw.
 */
export function bestFilling(room: number, wanted: WantedPieces, values: readonly number[]): Best {
	const found = bestByBranching(room, wanted, values);
	if (found.isWhole) return found;
	const onGrid = gridFilling(room, wanted, values);
	const most = Math.min(found.most, onGrid.most);
	return { filling: onGrid.filling ?? found.filling, most };
}

function bestByBranching(room: number, { lengths, counts }: WantedPieces, values: readonly number[]) {
	const rate = (kind: number) => values[kind]! / lengths[kind]!;
	const order = lengths.map((_, kind) => kind).filter((kind) => counts[kind]! > 0 && values[kind]! > 0);
	order.sort((a, b) => rate(b) - rate(a));
	const taken = lengths.map(() => 0);
	let [filling, best, left, unseen] = [taken.slice(), 0, MOST_LOOKED_AT, 0];
	const search = (from: number, room: number, value: number): void => {
		left--;
		if (value > best) [filling, best] = [taken.slice(), value];
		for (let at = from; at < order.length; at++) {
			const kind = order[at]!;
			const reachable = value + room * rate(kind);
			if (reachable <= best * (1 + ROUNDING)) return;
			if (left <= 0) {
				unseen = Math.max(unseen, reachable);
				return;
			}
			const most = Math.min(counts[kind]!, stepsWithin(room, lengths[kind]!));
			for (let count = most; count > 0; count--) {
				taken[kind] = count;
				search(at + 1, room - count * lengths[kind]!, value + count * values[kind]!);
			}
			taken[kind] = 0;
		}
	};
	search(0, room, 0);
	return { filling, most: Math.max(best * (1 + ROUNDING), unseen), isWhole: unseen <= best * (1 + ROUNDING) };
}

export interface Worthwhile {
	fillings: Filling[];
	/** Whether these are all. */
	all: boolean;
}

/** How many steps of the search are taken for the fillings of a stick. */
const MOST_STEPS = 4_000;

/**
 * The fillings of a stick that hold the kind `with`, are worth `least` or more and leave no room for any piece more: a piece can always be
 * taken from another stick into room that is left, so no others have to be tried.
 */
export function fillings(
	room: number,
	{ lengths, counts }: WantedPieces,
	{ with: first, values, least }: { with: number; values: readonly number[]; least: number },
): Worthwhile {
	const found: Filling[] = [];
	const taken = lengths.map(() => 0);
	// The best value by length among the kinds from each on.
	const rates = lengths.map((length, kind) => (counts[kind]! > 0 ? values[kind]! / length : 0));
	for (let kind = rates.length - 2; kind >= 0; kind--) rates[kind] = Math.max(rates[kind]!, rates[kind + 1]!);
	let left = MOST_STEPS;
	const isFull = (room: number) =>
		!lengths.some((length, kind) => taken[kind]! < counts[kind]! && stepsWithin(room, length) > 0);
	const search = (kind: number, room: number, value: number): void => {
		if (left-- <= 0) return;
		if (value + room * (rates[kind] ?? 0) < least) return;
		if (kind === lengths.length) {
			if (isFull(room)) found.push(taken.slice());
			return;
		}
		const most = Math.min(counts[kind]!, stepsWithin(room, lengths[kind]!));
		for (let count = most; count >= (kind === first ? 1 : 0); count--) {
			taken[kind] = count;
			search(kind + 1, room - count * lengths[kind]!, value + count * values[kind]!);
		}
		taken[kind] = 0;
	};
	search(0, room, 0);
	return { fillings: found, all: left > 0 };
}
