import { halfTangent, radians } from './angles.ts';

/** Length of an arc of `angle` degrees on the center line. */
export const arcLength = (angle: number, radius: number): number => radius * radians(angle);

/** From a bend's tangent point to its sharp corner: R tan(angle/2). */
export const setback = (angle: number, radius: number): number => radius * halfTangent(angle);

/** From the sharp corner to the middle of the arc: R (sec(angle/2) - 1), in a form that keeps small angles exact. */
export const external = (angle: number, radius: number): number => setback(angle, radius) * halfTangent(angle / 2);

/** Raw tube that an arc takes; `stretch` is the part by which the arc comes out longer than that. */
export const rawArc = (angle: number, radius: number, stretch: number): number =>
	arcLength(angle, radius) / (1 + stretch);
