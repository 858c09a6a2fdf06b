import { ROUNDING } from '../maths/scalar.ts';
import type { Tolerance } from './job.ts';

/** Lengths that the finished tube as a whole may be off by, for one that a length may be. */
const SHAPE_LENGTHS = 4;
/** Degrees. */
const SHAPE_DIRECTION = 1;

/** A tolerance as told, with what holds for the whole tube where that is not told. */
export function wholeTolerance(
	told: Omit<Tolerance, 'shape' | 'direction'> & Partial<Pick<Tolerance, 'shape' | 'direction'>>,
): Tolerance {
	return { shape: SHAPE_LENGTHS * told.length, direction: SHAPE_DIRECTION, ...told };
}

type OfAngle = Pick<Tolerance, 'under' | 'over'>;

/** Between which angles a bend that is wanted at `target` lies within its tolerance, degrees. */
export function angleBand({ under, over }: OfAngle, target: number): { low: number; high: number } {
	return { low: target - under, high: target + over };
}

export function isInBand({ under, over }: OfAngle, target: number, angle: number): boolean {
	return isInside(angle - target, angle < target ? under : over);
}

/** Whether what is off by so much, either way, lies inside a tolerance: at its very edge it does. */
export const isInside = (off: number, tolerance: number): boolean => Math.abs(off) <= tolerance * (1 + ROUNDING);
