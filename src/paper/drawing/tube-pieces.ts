import { arcPoints } from '../../tube/center-line.ts';
import type { Frames } from '../../tube/frames.ts';
import type { Point } from '../../tube/job.ts';
import type { View } from '../../tube/principal-views.ts';
import { combine, cross, dot, subtract, unit } from '../../tube/vector.ts';

/** A place in a view: to the right and up, in the job's unit. */
export type Flat = readonly [x: number, y: number];

/** A piece of the tube as it is seen: what it covers, and the lines that are drawn of it. */
export interface Piece {
	covers: Flat[];
	lines: Flat[][];
	/** Toward who looks; what is nearer is drawn over what is behind. */
	near: number;
}

const ARC_STEPS = 16;
const STRAIGHT_STEPS = 6;
const ROUND_STEPS = 32;
/** A tube that is seen this nearly from its end shows no sides, but its round. */
const END_ON = 0.15;

export const seenIn = ({ right, up }: View): ((point: Point) => Flat) => {
	return (point) => [dot(point, right), dot(point, up)];
};

/** The tube's outside in a view, from what is farthest to what is nearest. A tube's outline lies half its diameter off its center line, wherever one looks from. */
export function tubePieces(at: Frames, od: number, view: View): Piece[] {
	const toward = cross(view.right, view.up);
	const runs = [
		...at.straights.map(({ start, end }) => between(start, end)),
		...at.arcs.map((arc) => arcPoints(arc, ARC_STEPS)),
	];
	const pieces = runs.flatMap((run) => run.slice(1).flatMap((to, i) => pieceOf(run[i]!, to, od, view, toward)));
	const ends = [at.straights[0]!, at.straights.at(-1)!].map(({ start, end, direction }, i) =>
		endPiece(i === 0 ? start : end, direction, od, view, toward),
	);
	return [...pieces, ...ends].sort((a, b) => a.near - b.near);
}

const between = (start: Point, end: Point): Point[] =>
	Array.from({ length: STRAIGHT_STEPS + 1 }, (_, i) => combine(1 - i / STRAIGHT_STEPS, start, i / STRAIGHT_STEPS, end));

function pieceOf(from: Point, to: Point, od: number, view: View, toward: Point): Piece[] {
	const step = subtract(to, from);
	const length = Math.hypot(...step);
	if (length === 0) return [];
	const place = seenIn(view);
	const [a, b] = [place(from), place(to)];
	const near = (dot(from, toward) + dot(to, toward)) / 2;
	const seen = Math.hypot(b[0] - a[0], b[1] - a[1]);
	if (seen < END_ON * length) {
		const round = roundAt(a, od / 2);
		// Behind its neighbors, which leave of its line only what stands out.
		return [{ covers: round, lines: [round], near: near - od }];
	}
	const side: Flat = [((a[1] - b[1]) * od) / 2 / seen, ((b[0] - a[0]) * od) / 2 / seen];
	const off = ([x, y]: Flat, k: number): Flat => [x + k * side[0], y + k * side[1]];
	const [left, right] = [1, -1].map((k) => [off(a, k), off(b, k)]);
	return [{ covers: [...left!, ...right!.toReversed()], lines: [left!, right!], near }];
}

const roundAt = ([x, y]: Flat, radius: number): Flat[] =>
	turns().map((turn): Flat => [x + radius * Math.cos(turn), y + radius * Math.sin(turn)]);

const turns = (): number[] => Array.from({ length: ROUND_STEPS + 1 }, (_, i) => (2 * Math.PI * i) / ROUND_STEPS);

/** The round of a finished end. */
function endPiece(center: Point, direction: Point, od: number, view: View, toward: Point): Piece {
	const aside = Math.abs(dot(direction, view.up)) < 0.9 ? view.up : view.right;
	const across = unit(cross(direction, aside));
	const other = cross(direction, across);
	const place = seenIn(view);
	const round = turns().map((turn) =>
		place(combine(1, center, 1, combine((Math.cos(turn) * od) / 2, across, (Math.sin(turn) * od) / 2, other))),
	);
	return { covers: round, lines: [round], near: dot(center, toward) + od / 100 };
}
