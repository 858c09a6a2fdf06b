import { angleBetween } from '../tube/angles.ts';
import { cornerOf, type Frames } from '../tube/frames.ts';
import type { Point } from '../tube/job.ts';
import { isInside } from '../tube/tolerance.ts';
import { distance } from '../tube/vector.ts';

/** What a finished tube is held against. Lengths in one unit, angles in degrees. */
export interface Limits {
	/** Of the drawing: sharp corners, both finished ends included, and where its last straight points. */
	corners: readonly Point[];
	direction: Point;
	/** How far a corner or the far end may be off its place, and the last straight off its direction. */
	shape: number;
	turn: number;
	measures: readonly { design: number; tolerance: number; value(tube: Frames): number }[];
}

/** One finished tube beside the drawing. */
export interface Judged {
	endOffset: number;
	endAngle: number;
	/** How far each bend's corner is off its place. */
	off: number[];
	/** What each measure comes to. */
	values: number[];
}

export function judged(tube: Frames, limits: Limits): Judged {
	const { corners } = limits;
	const far = tube.straights.at(-1)!;
	return {
		endOffset: distance(far.end, corners.at(-1)!),
		endAngle: angleBetween(far.direction, limits.direction),
		off: tube.arcs.map((arc, i) => distance(cornerOf(arc), corners[i + 1]!)),
		values: limits.measures.map((measure) => measure.value(tube)),
	};
}

/** The largest miss in units of its tolerance: the far end's and the corners' places, the last straight's direction, every measure. */
export function largestMiss({ endOffset, endAngle, off, values }: Judged, { shape, turn, measures }: Limits): number {
	let most = Math.max(endOffset / shape, endAngle / turn);
	for (const each of off) most = Math.max(most, each / shape);
	for (let i = 0; i < values.length; i++) {
		const { design, tolerance } = measures[i]!;
		most = Math.max(most, Math.abs(values[i]! - design) / tolerance);
	}
	return most;
}

/** Nothing is missed by more than its tolerance. */
export const keeps = (tube: Judged, limits: Limits): boolean => isInside(largestMiss(tube, limits), 1);
