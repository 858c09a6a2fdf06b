import { packed, type Stick } from '../maths/packing.ts';

/** Pieces of one job: how long the tube is cut, and what has become of those that were. */
export interface CutPiece {
	length: number;
	wanted: number;
	finished: number;
	/** Cut, and in work. */
	begun: number;
	/** Cut, and to be cut again. */
	scrapped: number;
}

/** One stick, and where it is sawn. */
export interface SawnStick {
	length: number;
	/** `left`: what an earlier piece left of a longer stick; `missing`: not in hand. */
	from: 'stick' | 'left' | 'missing';
	/** In order from the stick's end: index of the piece, and where it ends. */
	cuts: { piece: number; mark: number }[];
	/** What is left of it after the last cut. */
	left: number;
}

export interface CutList {
	sticks: SawnStick[];
	/** Lengths of the sticks together, of the pieces cut from them, and of what is left of them. */
	used: number;
	inPieces: number;
	left: number;
	/** No cutting of as few missing sticks uses less; where it is proven, `used`. */
	bound: number;
	isProven: boolean;
}

export type NoCutList =
	/** No stick is as long as this piece. */
	| { why: 'too-long'; piece: number; longest: number }
	/** More has been cut already than came from these sticks. */
	| { why: 'cut-more' };

/** Sticks that are sawn alike, one after the other in the list: the first one's number and the last one's, from 1. */
export interface AlikeSticks {
	stick: SawnStick;
	first: number;
	last: number;
}

export function alikeSticks(sticks: readonly SawnStick[]): AlikeSticks[] {
	const groups: AlikeSticks[] = [];
	for (const [i, stick] of sticks.entries()) {
		const before = groups.at(-1);
		if (before && JSON.stringify(before.stick) === JSON.stringify(stick)) before.last = i + 1;
		else groups.push({ stick, first: i + 1, last: i + 1 });
	}
	return groups;
}

/** How many are still to be cut. */
export function toCut({ wanted, finished, begun }: CutPiece): number {
	return Math.max(0, wanted - finished - begun);
}

/**
 * Which pieces of one tube to saw from which sticks. Sticks that are counted are those that were there before the first piece was cut, so
 * what was cut since comes off them first; with `asNow` they are those that are there now. All lengths in one unit.
 */
export function cutList(
	pieces: readonly CutPiece[],
	sticks: readonly Stick[],
	{ kerf, asNow }: { kerf: number; asNow: boolean },
): CutList | NoCutList {
	const longest = Math.max(0, ...sticks.map(({ length }) => length));
	const piece = pieces.findIndex((each) => toCut(each) > 0 && each.length > longest);
	if (piece >= 0) return { why: 'too-long', piece, longest };
	const rack = asNow ? sticks.map((stick) => ({ ...stick, from: 'stick' as const })) : afterwards(pieces, sticks, kerf);
	if (rack === null) return { why: 'cut-more' };
	const wanted = pieces.map((each) => ({ length: each.length, quantity: toCut(each) }));
	const most = Math.max(0, ...rack.map(({ length }) => length));
	// Where what is left is too short for a piece, sticks like the longest are missing.
	const offered = most < longest ? [...rack, { length: longest, count: 0, from: 'stick' as const }] : rack;
	const packing = packed(wanted, offered, kerf);
	const sawn = packing.sticks.map(({ stick, isMissing, pieces: own, left }): SawnStick => {
		let at = -kerf;
		const cuts = own.map((piece) => {
			at += kerf + pieces[piece]!.length;
			return { piece, mark: at };
		});
		return { length: offered[stick]!.length, from: isMissing ? 'missing' : offered[stick]!.from, cuts, left };
	});
	return {
		sticks: sawn.sort((a, b) => b.length - a.length || b.cuts.length - a.cuts.length || a.left - b.left),
		used: packing.used,
		inPieces: wanted.reduce((sum, { length, quantity }) => sum + length * quantity, 0),
		left: sawn.reduce((sum, { left }) => sum + left, 0),
		bound: packing.bound,
		isProven: packing.isProven,
	};
}

interface Rack extends Stick {
	from: 'stick' | 'left';
}

/** The sticks without what has been cut from those that are counted; null where they were too few for that. */
function afterwards(pieces: readonly CutPiece[], sticks: readonly Stick[], kerf: number): Rack[] | null {
	const cut = pieces.map(({ length, finished, begun, scrapped }) => ({
		length,
		quantity: finished + begun + scrapped,
	}));
	const gone = cut.filter(({ quantity }) => quantity > 0);
	const whole = sticks.map((stick): Rack => ({ ...stick, from: 'stick' }));
	if (gone.length === 0 || sticks.every(({ count }) => count === Number.POSITIVE_INFINITY)) return whole;
	if (gone.some(({ length }) => sticks.every((stick) => stick.length < length))) return null;
	const before = packed(gone, sticks, kerf).sticks;
	if (before.some(({ isMissing }) => isMissing)) return null;
	const taken = (i: number) => before.filter(({ stick }) => stick === i);
	const counted = whole.map((stick, i) => ({ ...stick, count: stick.count - taken(i).length }));
	const lefts = before.filter(({ stick, left }) => sticks[stick]!.count !== Number.POSITIVE_INFINITY && left > 0);
	return [...counted, ...lefts.map(({ left }): Rack => ({ length: left, count: 1, from: 'left' }))];
}
