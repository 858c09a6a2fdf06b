import { meanOf } from '../../maths/list.ts';
import { middle, type RankTrend, rankTrend } from '../../maths/rank-trend.ts';
import type { PieceFacts } from './piece-facts.ts';
import type { Pieces } from './pieces.ts';

/** A bend over the pieces of a batch. */
export interface BendOver {
	bend: number;
	drawn: number;
	/** How far over the drawing it was made, degrees, the first piece first. */
	errors: number[];
	mean: number;
	/** It walks off: the errors rise or fall from piece to piece beyond their noise; else null. */
	walks: BatchWalk | null;
}

export interface BatchWalk extends RankTrend {
	/** Over so many pieces, by so many degrees. */
	pieces: number;
	by: number;
}

/** What follows a piece that is finished or given up. */
export type NextPiece =
	| { do: 'begin'; piece: number }
	/** All others are made or begun: this one lies unfinished. */
	| { do: 'go-on'; id: string; piece: number | null };

/** A batch as it stands once a piece of it is over. */
export interface Batch {
	pieces: Pieces;
	/** Null where as many are made as are wanted. */
	next: NextPiece | null;
	/** The finished ones of the same drawing, the oldest first. */
	made: PieceFacts[];
	bends: BendOver[];
	/** Pulls a piece, the mean; seconds at the bender a piece, the median. */
	pulls: number;
	seconds: number;
}

/** `others`: the sessions of its job besides the one that is over, with what is unfinished, oldest first. */
export function batchOf(
	pieces: Pieces,
	made: readonly PieceFacts[],
	unfinished: readonly { id: string; piece: number | null }[],
): Batch {
	const last = made.at(-1);
	const alike = made.filter((each) => last !== undefined && isSameDrawing(each, last));
	const seconds = alike.map((each) => each.seconds).sort((a, b) => a - b);
	return {
		pieces,
		next: pieceToDo(pieces, unfinished),
		made: alike,
		bends: last === undefined ? [] : last.bends.map((_, i) => bendOver(i, alike)),
		pulls: meanOrNone(alike.map((each) => each.pulls)),
		seconds: seconds.length === 0 ? 0 : middle(seconds),
	};
}

function pieceToDo(
	{ wanted, made, begun, next }: Pieces,
	unfinished: readonly { id: string; piece: number | null }[],
): NextPiece | null {
	if (made + begun < wanted) return { do: 'begin', piece: next };
	const [waits] = unfinished;
	return waits === undefined ? null : { do: 'go-on', ...waits };
}

const SAME_ANGLE = 0.05;

function isSameDrawing(one: PieceFacts, other: PieceFacts): boolean {
	return (
		one.bends.length === other.bends.length &&
		one.bends.every(({ drawn }, i) => Math.abs(drawn - other.bends[i]!.drawn) < SAME_ANGLE)
	);
}

function bendOver(index: number, made: readonly PieceFacts[]): BendOver {
	const known = made.flatMap(({ bends }) => {
		const { error, sd } = bends[index]!;
		return error === null || sd === null ? [] : [{ error, sd }];
	});
	const errors = known.map(({ error }) => error);
	return {
		bend: index + 1,
		drawn: made.at(-1)!.bends[index]!.drawn,
		errors,
		mean: meanOrNone(errors),
		walks: batchWalk(known),
	};
}

/** A trend that comes by chance more often than this is none; of five pieces or fewer none comes so seldom. */
const CHANCE = 0.01;
/** A walk of less than so many give or takes of one piece is none that anybody could measure. */
const LEAST_WALK = 2;

function batchWalk(known: readonly { error: number; sd: number }[]): BatchWalk | null {
	if (known.length < 2) return null;
	const trend = rankTrend(known.map(({ error }) => error));
	const by = trend.slope * (known.length - 1);
	const noise = middle(known.map(({ sd }) => sd).sort((a, b) => a - b));
	const walks = trend.chance < CHANCE && Math.abs(by) > LEAST_WALK * noise;
	return walks ? { ...trend, pieces: known.length, by } : null;
}

/** Of none the mean is told as 0. */
const meanOrNone = (values: readonly number[]): number => (values.length === 0 ? 0 : meanOf(values));
