import { dot } from '../matrix.ts';
import { ROUNDING, stepsWithin } from '../scalar.ts';
import { leastCost } from './cover.ts';
import { fillings } from './fill.ts';
import type { StickSet } from './sets.ts';
import type { CuttingWay, Filling, StickKind, WantedPieces } from './wanted.ts';

/** What came of looking for a cutting from a set of sticks. */
export interface FoundPacking {
	/** Null: none was found. */
	ways: readonly CuttingWay[] | null;
	/** There is none. */
	isImpossible: boolean;
	/** How many sticks were tried. */
	tried: number;
}

/**
 * Cuts the wanted pieces from a set of sticks by branch and bound: the next stick is one around the longest piece left, the sticks that lose
 * least by the bound's prices first. A stick that loses more than the set has to lose is left out, and so is what has failed before. It
 * tries `most` sticks. `known`: ways to cut, to which those found are added.
 */
export function cutFrom(
	wanted: WantedPieces,
	kinds: readonly StickKind[],
	{ set, known, most }: { set: StickSet; known: CuttingWay[]; most: number },
): FoundPacking {
	const search = new Search(wanted, kinds, set, known, most);
	const ways = search.from({ counts: wanted.counts, sticks: set.counts, ways: [], cost: 0 });
	return { ways, isImpossible: ways === null && search.isWhole, tried: search.tried };
}

/** What is still to be cut, from which sticks, and what has been cut already. */
interface LeftToCut {
	counts: readonly number[];
	sticks: readonly number[];
	ways: readonly CuttingWay[];
	cost: number;
}

class Search {
	/** Whether nothing has been left out that could have led to a cutting. */
	isWhole = true;
	tried = 0;
	readonly #lengths: readonly number[];
	readonly #kinds: readonly StickKind[];
	/** A stick that is not in the set, for what does not go into the set: it costs more than the set. */
	readonly #spare: StickKind;
	readonly #known: CuttingWay[];
	readonly #most: number;
	readonly #cost: number;
	readonly #failed = new Set<string>();

	constructor(
		{ lengths }: WantedPieces,
		kinds: readonly StickKind[],
		{ cost }: StickSet,
		known: CuttingWay[],
		most: number,
	) {
		this.#lengths = lengths;
		this.#kinds = kinds;
		this.#known = known;
		this.#most = most;
		this.#cost = cost * (1 + 2 * ROUNDING);
		const room = Math.max(...kinds.map((kind) => kind.room));
		this.#spare = { room, cost: 2 * cost, count: Number.POSITIVE_INFINITY };
	}

	from(place: LeftToCut): readonly CuttingWay[] | null {
		const longest = place.counts.findIndex((count) => count > 0);
		if (longest < 0) return place.ways;
		const key = `${place.counts}|${place.sticks}`;
		if (this.#failed.has(key)) return null;
		this.#failed.add(key);
		for (const way of this.#next(place, longest)) {
			if (this.tried >= this.#most) {
				this.isWhole = false;
				return null;
			}
			this.tried++;
			const ways = this.from(this.#after(place, way));
			if (ways !== null) return ways;
		}
		return null;
	}

	#after({ counts, sticks, ways, cost }: LeftToCut, way: CuttingWay): LeftToCut {
		return {
			counts: counts.map((count, kind) => count - way.filling[kind]!),
			sticks: sticks.map((count, kind) => (kind === way.stick ? count - 1 : count)),
			ways: [...ways, way],
			cost: cost + this.#kinds[way.stick]!.cost,
		};
	}

	/** The sticks worth trying next, the least costly by the prices of the bound first. */
	#next({ counts, sticks, cost }: LeftToCut, longest: number): CuttingWay[] {
		const wanted = { lengths: this.#lengths, counts };
		const kinds = [...this.#kinds.map((kind, i) => ({ ...kind, count: sticks[i]! })), this.#spare];
		const bound = leastCost(wanted, kinds, this.#known, this.#cost - cost);
		if (cost + bound.least > this.#cost) return [];
		const next = this.#kinds.flatMap(({ room, cost: each }, stick) => {
			if (sticks[stick] === 0 || stepsWithin(room, this.#lengths[longest]!) === 0) return [];
			// By the same prices the rest costs what it did, without what this stick takes.
			const withNothing = cost + each + bound.least - bound.sticks[stick]!;
			const options = { with: longest, values: bound.pieces, least: withNothing - this.#cost };
			const found = fillings(room, wanted, options);
			// Of too many, those that the bound was made of are the likeliest.
			if (!found.all) this.isWhole = false;
			const tried = found.all ? found.fillings : this.#knownWith(longest, stick, counts);
			return tried.map((filling) => ({ stick, filling, costing: withNothing - dot(filling, bound.pieces) }));
		});
		return next.sort((a, b) => a.costing - b.costing);
	}

	#knownWith(longest: number, stick: number, counts: readonly number[]): Filling[] {
		const fits = (filling: Filling) => filling[longest]! > 0 && filling.every((count, kind) => count <= counts[kind]!);
		return this.#known.flatMap((way) => (way.stick === stick && fits(way.filling) ? [way.filling] : []));
	}
}
