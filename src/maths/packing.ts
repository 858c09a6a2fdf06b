import { sumOf } from './list.ts';
import { dot } from './matrix.ts';
import { cheapestCutting } from './packing/cheapest.ts';
import type { CuttingWay, StickKind, WantedPieces } from './packing/wanted.ts';
import { ROUNDING, stepsWithin } from './scalar.ts';

/** So many pieces of a length. */
export interface Piece {
	length: number;
	quantity: number;
}

/** So many sticks of a length; `count` may be Infinity. */
export interface Stick {
	length: number;
	count: number;
}

export interface CutStick {
	/** Index of its kind in the sticks given. */
	stick: number;
	/** Not in hand: the sticks that there are do not suffice. */
	isMissing: boolean;
	/** Indices of the pieces given, the longest first. */
	pieces: number[];
	/** What is left of it after the last cut. */
	left: number;
}

export interface Packing {
	sticks: CutStick[];
	/** Lengths of all these sticks together. */
	used: number;
	/** No cutting that misses as few sticks uses less. */
	bound: number;
	/** `used` is as little as can be, and so are the sticks missing. */
	isProven: boolean;
}

/** So many pieces are looked at longer. */
const FEW = 30;
const EFFORT = { few: { set: 400, all: 2000 }, many: { set: 40, all: 80 } };

/**
 * Which pieces to cut from which sticks (the one-dimensional cutting-stock problem, with several lengths of stick), so that the sticks used
 * are as short as can be together. Between two pieces the saw takes `kerf`. Sticks that are missing are of the longest length there is and
 * as few as can be. All lengths in one unit.
 * @throws RangeError when a piece is longer than every stick
 */
export function packed(pieces: readonly Piece[], sticks: readonly Stick[], kerf: number): Packing {
	const longest = sticks.reduce((best, { length }, i) => (length > sticks[best]!.length ? i : best), 0);
	const most = sticks[longest]?.length ?? 0;
	for (const { length } of pieces)
		if (stepsWithin(most, length) === 0) throw new RangeError(`a piece of ${length} is longer than every stick`);
	const lengths = [...new Set(pieces.map(({ length }) => length))].sort((a, b) => b - a);
	const named = lengths.map((length) =>
		pieces.flatMap((piece, i) => (piece.length === length ? repeated(i, piece) : [])),
	);
	const wanted: WantedPieces = {
		lengths: lengths.map((length) => length + kerf),
		counts: named.map((each) => each.length),
	};
	const number = sumOf(wanted.counts);
	const kinds: StickKind[] = sticks.map(({ length, count }) => ({ room: length + kerf, cost: length, count }));
	// A stick that is missing costs more than all that could be used in its place.
	const missing = { room: most + kerf, cost: 2 * most * (number + 1), count: Number.POSITIVE_INFINITY };
	const isEnough = kinds.some(
		({ room, count }) => count === missing.count && stepsWithin(room, wanted.lengths[0] ?? 0) > 0,
	);
	const { best, least } = cheapestCutting(
		wanted,
		isEnough ? kinds : [...kinds, missing],
		number <= FEW ? EFFORT.few : EFFORT.many,
	);
	const cut = best.ways.map(({ stick, filling }: CuttingWay): CutStick => {
		const isMissing = stick === sticks.length;
		const kind = isMissing ? longest : stick;
		const taken = dot(filling, wanted.lengths);
		const own = filling.flatMap((count, i) => named[i]!.splice(0, count));
		return { stick: kind, isMissing, pieces: own, left: Math.max(0, sticks[kind]!.length - taken) };
	});
	const used = cut.reduce((sum, { stick }) => sum + sticks[stick]!.length, 0);
	const isProven = least >= best.cost * (1 - ROUNDING);
	const inHand = least - cut.filter(({ isMissing }) => isMissing).length * (missing.cost - most);
	const material = pieces.reduce((sum, { length, quantity }) => sum + length * quantity, 0);
	return { sticks: cut, used, isProven, bound: isProven ? used : Math.max(material, inHand) };
}

function repeated(piece: number, { quantity }: Piece): number[] {
	return Array<number>(quantity).fill(piece);
}
