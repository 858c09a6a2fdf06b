import { dot } from '../matrix.ts';
import { ROUNDING } from '../scalar.ts';
import { leastCost } from './cover.ts';
import { type Cutting, firstCutting } from './greedy.ts';
import { cutFrom } from './search.ts';
import { stickSets } from './sets.ts';
import type { CuttingWay, StickKind, WantedPieces } from './wanted.ts';

export interface Cheapest {
	best: Cutting;
	/** No cutting costs less. */
	least: number;
}

/** How many sticks may be tried, for one set of sticks and for all together. */
export interface Effort {
	set: number;
	all: number;
}

/**
 * The cheapest cutting, and how little any can cost: the first set of sticks, cheapest first, that all pieces can be cut from. Where it
 * takes more than the effort, `least` is the cost of the first set that is not settled.
 */
export function cheapestCutting(
	wanted: WantedPieces,
	kinds: readonly StickKind[],
	{ set: mostOfSet, all }: Effort,
): Cheapest {
	const best = firstCutting(wanted, kinds);
	const known: CuttingWay[] = [...best.ways];
	const { least } = leastCost(wanted, kinds, known, best.cost * (1 - ROUNDING));
	const length = dot(wanted.lengths, wanted.counts);
	const sets = stickSets(kinds, { least, below: best.cost, length });
	if (sets === null) return { best, least };
	let left = all;
	let unsettled = Number.POSITIVE_INFINITY;
	for (const set of sets) {
		if (left <= 0) return { best, least: Math.min(unsettled, set.cost) };
		const { ways, isImpossible, tried } = cutFrom(wanted, kinds, { set, known, most: Math.min(left, mostOfSet) });
		// Finding that a set is too little takes its time as well.
		left -= tried + 1;
		if (ways !== null) return { best: { ways, cost: set.cost }, least: Math.min(unsettled, set.cost) };
		if (!isImpossible) unsettled = Math.min(unsettled, set.cost);
	}
	return { best, least: Math.min(unsettled, best.cost) };
}
