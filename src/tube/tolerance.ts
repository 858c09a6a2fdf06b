import type { Tolerance } from './job.ts';

/** Lengths that the finished tube as a whole may be off by, for one that a length may be. */
const SHAPE = 4;
/** Degrees. */
const DIRECTION = 1;

/** A tolerance as told, with what holds for the whole tube where that is not told. */
export function wholeTolerance(
	told: Omit<Tolerance, 'shape' | 'direction'> & Partial<Pick<Tolerance, 'shape' | 'direction'>>,
): Tolerance {
	return { shape: SHAPE * told.length, direction: DIRECTION, ...told };
}
