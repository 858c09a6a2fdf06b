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

type OfAngle = Pick<Tolerance, 'under' | 'over'>;

/** Between which angles a bend that is wanted at `target` lies within its tolerance, degrees. */
export function angleBand({ under, over }: OfAngle, target: number): { low: number; high: number } {
	return { low: target - under, high: target + over };
}

export function isInBand(tolerance: OfAngle, target: number, angle: number): boolean {
	const { low, high } = angleBand(tolerance, target);
	return angle >= low && angle <= high;
}
