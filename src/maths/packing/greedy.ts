import { dot } from '../matrix.ts';
import { stepsWithin } from '../scalar.ts';
import { bestFilling } from './fill.ts';
import type { CuttingWay, Filling, StickKind, WantedPieces } from './wanted.ts';

/** Sticks and how each is cut, and what they cost together. */
export interface Cutting {
	ways: readonly CuttingWay[];
	cost: number;
}

/** A piece counts by its length to this power: over 1, long pieces are used up first. */
const POWERS = [1, 1.02, 1.05, 1.1, 1.2, 1.4];

/**
 * A cutting to begin with: stick by stick, each around the longest piece that is left and as full as can be (J. N. D. Gupta and J. C. Ho,
 * "A new heuristic algorithm for the one-dimensional bin-packing problem", Production Planning & Control 10, 1999, 598-603); the best of
 * several ways to choose. One endless kind of stick, at least, holds every piece.
 */
export function firstCutting(wanted: WantedPieces, kinds: readonly StickKind[]): Cutting {
	const favorites = [null, ...kinds.keys()];
	const tried = POWERS.flatMap((power) => {
		const values = wanted.lengths.map((length) => (length / wanted.lengths[0]!) ** power);
		return favorites.map((favorite) => cheaper(cutInTurn(wanted, kinds, { favorite, values }), wanted, kinds));
	});
	return tried.reduce((best, next) => (next.cost < best.cost ? next : best));
}

/** `favorite`: the kind of stick that is taken as long as it holds the longest piece left; `values`: what each kind of piece counts. */
interface GreedyChoice {
	favorite: number | null;
	values: readonly number[];
}

function cutInTurn(wanted: WantedPieces, kinds: readonly StickKind[], choice: GreedyChoice): CuttingWay[] {
	const counts = [...wanted.counts];
	const sticks = kinds.map(({ count }) => count);
	const ways: CuttingWay[] = [];
	for (let longest = 0; longest < counts.length; ) {
		if (counts[longest] === 0) {
			longest++;
			continue;
		}
		const way = nextStick({ lengths: wanted.lengths, counts }, kinds, sticks, longest, choice);
		for (const [kind, count] of way.filling.entries()) counts[kind]! -= count;
		sticks[way.stick]!--;
		ways.push(way);
	}
	return ways;
}

function nextStick(
	wanted: WantedPieces,
	kinds: readonly StickKind[],
	sticks: readonly number[],
	longest: number,
	{ favorite, values }: GreedyChoice,
): CuttingWay {
	const holding = [...kinds.keys()].filter(
		(stick) => sticks[stick]! > 0 && stepsWithin(kinds[stick]!.room, wanted.lengths[longest]!) > 0,
	);
	const candidates = favorite !== null && holding.includes(favorite) ? [favorite] : holding;
	const ways = candidates.map((stick) => ({
		stick,
		filling: fillingAround(longest, wanted, kinds[stick]!.room, values),
	}));
	const lossOf = ({ stick, filling }: CuttingWay) => kinds[stick]!.cost / dot(filling, wanted.lengths);
	return ways.reduce((best, way) => (lossOf(way) < lossOf(best) ? way : best));
}

function fillingAround(
	longest: number,
	{ lengths, counts }: WantedPieces,
	room: number,
	values: readonly number[],
): Filling {
	const others = counts.map((count, kind) => (kind === longest ? count - 1 : count));
	const { filling } = bestFilling(room - lengths[longest]!, { lengths, counts: others }, values);
	return filling.map((count, kind) => (kind === longest ? count + 1 : count));
}

/** Each stick's pieces in the cheapest stick that is still there and holds them, the fullest first. */
function cheaper(ways: readonly CuttingWay[], wanted: WantedPieces, kinds: readonly StickKind[]): Cutting {
	const sticks = kinds.map(({ count }) => count);
	for (const { stick } of ways) sticks[stick]!--;
	const changed = [...ways].map((way) => {
		const length = dot(way.filling, wanted.lengths);
		let { stick } = way;
		for (const [other, { room, cost }] of kinds.entries()) {
			if (sticks[other]! > 0 && cost < kinds[stick]!.cost && stepsWithin(room, length) > 0) {
				sticks[stick]!++;
				stick = other;
				sticks[stick]!--;
			}
		}
		return { ...way, stick };
	});
	return { ways: changed, cost: costOfWays(changed, kinds) };
}

export function costOfWays(ways: readonly CuttingWay[], kinds: readonly StickKind[]): number {
	return ways.reduce((sum, { stick }) => sum + kinds[stick]!.cost, 0);
}
