import type { Point } from './job.ts';
import { cross, dot, norm } from './vector.ts';

export const radians = (degrees: number): number => (degrees * Math.PI) / 180;

export const degrees = (radians: number): number => (radians * 180) / Math.PI;

/** Quarter turns are exact, so that a flat tube of right angles stays flat to the last digit. */
const QUARTERS = [0, 1, 0, -1] as const;

/** Sine of an angle in degrees, exact at multiples of 90. */
export function sine(angle: number): number {
	if (angle % 90 !== 0) return Math.sin(radians(angle));
	return QUARTERS[(((angle / 90) % 4) + 4) % 4]!;
}

/** Cosine of an angle in degrees, exact at multiples of 90. */
export function cosine(angle: number): number {
	return angle % 90 === 0 ? sine(angle + 90) : Math.cos(radians(angle));
}

/** tan(angle/2) of an angle in degrees, exact at 90. */
export const halfTangent = (angle: number): number => (angle === 90 ? 1 : Math.tan(radians(angle) / 2));

/** Half turns this near to -180 come from rounding and are told as 180. */
const HALF_TURN_ROUNDING = 1e-9;

/** The same rotation in (-180, 180], degrees. */
export function normalizeRotation(rotation: number): number {
	const turn = rotation % 360;
	const folded = turn > 180 ? turn - 360 : turn < -180 ? turn + 360 : turn;
	return folded <= -180 + HALF_TURN_ROUNDING ? 180 : folded + 0;
}

/** The angle between two directions of any length, in degrees, 0 to 180; well conditioned at both ends. */
export const angleBetween = (a: Point, b: Point): number => degrees(Math.atan2(norm(cross(a, b)), dot(a, b)));
