import { sumOf } from '../maths/list.ts';
import { formatTape } from '../units/tape.ts';
import { rawArc } from './arcs.ts';
import { toolingOf } from './dies.ts';
import type { EndName, Job } from './job.ts';
import type { Shape } from './shape.ts';

/** Where a bend's mark goes along the unbent tube. */
export interface Mark {
	fromStart: number;
	/** On tube still straight. */
	fromFarEnd: number;
	/** From the end tangent of the bend before; null for bend 1. */
	fromLastBend: number | null;
	/** `fromStart` as read on the tape. */
	tape: string;
}

/** How far a mark lies from that end. */
export const markFrom = ({ fromStart, fromFarEnd }: Pick<Mark, 'fromStart' | 'fromFarEnd'>, end: EndName): number =>
	end === 'far' ? fromFarEnd : fromStart;

const rawArcs = (job: Job, shape: Shape): number[] =>
	shape.bends.map(({ angle, radius }, i) => rawArc(angle, radius, toolingOf(job, i + 1).stretch));

/** Raw tube that the finished shape takes, trim not counted. */
export const developedLength = (job: Job, shape: Shape): number => sumOf(shape.straights) + sumOf(rawArcs(job, shape));

/** Raw tube to cut: the developed length and both trims. */
export const cutLength = (job: Job, shape: Shape): number =>
	developedLength(job, shape) + job.trim.start + job.trim.end;

/** The mark of every bend, on a raw piece of length `piece` (the cut length, or what was really cut). */
export function marks(job: Job, shape: Shape, piece: number): Mark[] {
	let tangent = job.trim.start;
	return shape.bends.map(({ angle, radius }, i) => {
		const { markOffset, stretch, tape } = toolingOf(job, i + 1);
		const straight = shape.straights[i]!;
		tangent += straight;
		const fromStart = tangent - markOffset;
		tangent += rawArc(angle, radius, stretch);
		return {
			fromStart,
			fromFarEnd: piece - fromStart,
			fromLastBend: i === 0 ? null : straight - markOffset,
			tape: formatTape(fromStart, tape, job.units),
		};
	});
}
