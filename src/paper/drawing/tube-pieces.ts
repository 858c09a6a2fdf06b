import { arcPoints } from '../../tube/center-line.ts';
import type { Frames } from '../../tube/frames.ts';
import type { Point } from '../../tube/job.ts';
import type { View } from '../../tube/principal-views.ts';
import { combine, cross, dot, unit } from '../../tube/vector.ts';

/** A place in a view: to the right and up, in the job's unit. */
export type ViewPlace = readonly [x: number, y: number];

/**
 * A piece of the tube as it is seen: a line as wide as the tube, since its outline lies half its diameter off its center line wherever one looks
 * from; or, where it is seen from its end, the round of it.
 */
export interface DrawnPiece {
	kind: 'side' | 'round';
	line: ViewPlace[];
	/** Toward who looks; what is nearer is drawn over what is behind. */
	near: number;
}

/** Pieces of a straight and of an arc: each is before or behind others as a whole. */
const STRAIGHT_PIECES = 3;
const ARC_PIECES = 2;
const STEPS_OF_PIECE = 8;
const ROUND_STEPS = 24;
/** A piece that is seen this nearly from its end shows no sides. */
const END_ON = 0.15;

export const seenIn = ({ right, up }: View): ((point: Point) => ViewPlace) => {
	return (point) => [dot(point, right), dot(point, up)];
};

/** The tube's outside in a view, from what is farthest to what is nearest. */
export function tubePieces(at: Frames, od: number, view: View): DrawnPiece[] {
	const runs = [
		...at.straights.flatMap(({ start, end }) => straightRuns(start, end)),
		...at.arcs.flatMap((arc) => arcRuns(arcPoints(arc, ARC_PIECES * STEPS_OF_PIECE))),
	];
	const ends = [at.straights[0]!, at.straights.at(-1)!].map(({ start, end, direction }, i) =>
		endPiece(i === 0 ? start : end, direction, od, view),
	);
	return [...runs.map((run) => pieceOf(run, od, view)), ...ends].sort((a, b) => a.near - b.near);
}

function straightRuns(start: Point, end: Point): Point[][] {
	const at = (i: number) => combine(1 - i / STRAIGHT_PIECES, start, i / STRAIGHT_PIECES, end);
	return Array.from({ length: STRAIGHT_PIECES }, (_, i) => [at(i), at(i + 1)]);
}

function arcRuns(points: readonly Point[]): Point[][] {
	return Array.from({ length: ARC_PIECES }, (_, i) => points.slice(i * STEPS_OF_PIECE, (i + 1) * STEPS_OF_PIECE + 1));
}

const towardIn = ({ right, up }: View): Point => cross(right, up);

function pieceOf(run: readonly Point[], od: number, view: View): DrawnPiece {
	const line = run.map(seenIn(view));
	const toward = towardIn(view);
	const near = run.reduce((sum, point) => sum + dot(point, toward), 0) / run.length;
	const [first, last] = [run[0]!, run.at(-1)!];
	const [from, to] = [line[0]!, line.at(-1)!];
	const long = Math.hypot(...combine(1, last, -1, first));
	if (Math.hypot(to[0] - from[0], to[1] - from[1]) >= END_ON * long) return { kind: 'side', line, near };
	// Behind its neighbors, which leave of its line only what stands out.
	return { kind: 'round', line: roundAt(from, od / 2), near: near - od };
}

const roundAt = ([x, y]: ViewPlace, radius: number): ViewPlace[] =>
	turns().map((turn): ViewPlace => [x + radius * Math.cos(turn), y + radius * Math.sin(turn)]);

const turns = (): number[] => Array.from({ length: ROUND_STEPS + 1 }, (_, i) => (2 * Math.PI * i) / ROUND_STEPS);

/** The round of a finished end. */
function endPiece(center: Point, direction: Point, od: number, view: View): DrawnPiece {
	const aside = Math.abs(dot(direction, view.up)) < 0.9 ? view.up : view.right;
	const across = unit(cross(direction, aside));
	const other = cross(direction, across);
	const place = seenIn(view);
	const line = turns().map((turn) =>
		place(combine(1, center, 1, combine((Math.cos(turn) * od) / 2, across, (Math.sin(turn) * od) / 2, other))),
	);
	return { kind: 'round', line, near: dot(center, towardIn(view)) + od / 100 };
}
