import type { Job } from './job.ts';
import { cutLength, type Mark, marks } from './marks.ts';
import type { Shape } from './shape.ts';
import { type Around, around } from './turns.ts';

/** A strip of paper that goes once round the tube at a bend's mark. */
export interface WrapStrip extends Around {
	/** From 1. */
	bend: number;
	mark: Mark;
}

/** Once round the tube. */
export const roundLength = ({ od }: Pick<Job['tube'], 'od'>): number => Math.PI * od;

/** A strip a bend, from the start end on. `around` has where the bend's inside lies, from bend 1's. Lengths in the job's unit. */
export function wrapStrips(job: Job, shape: Shape): WrapStrip[] {
	const rotations = shape.bends.map(({ rotation }) => rotation);
	return marks(job, shape, cutLength(job, shape)).map((mark, i) => ({
		bend: i + 1,
		mark,
		...around(job, rotations, i + 1),
	}));
}

/** Whether the bends lie in several planes, so that marks are to be carried round the tube. */
export function isTurned(job: Job, shape: Shape): boolean {
	return wrapStrips(job, shape).some(({ face }) => face === 'other');
}
