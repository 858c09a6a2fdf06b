import type { Point } from './job.ts';

/** Vectors in space as plain number triples. Nothing here changes its arguments. */
export const subtract = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];

export const scale = (a: Point, k: number): Point => [a[0] * k, a[1] * k, a[2] * k];

/** a + k b: a step of length k from a along b. */
export const step = (a: Point, k: number, b: Point): Point => [a[0] + k * b[0], a[1] + k * b[1], a[2] + k * b[2]];

/** p a + q b. */
export const combine = (p: number, a: Point, q: number, b: Point): Point => [
	p * a[0] + q * b[0],
	p * a[1] + q * b[1],
	p * a[2] + q * b[2],
];

export const dot = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

export const cross = (a: Point, b: Point): Point => [
	a[1] * b[2] - a[2] * b[1],
	a[2] * b[0] - a[0] * b[2],
	a[0] * b[1] - a[1] * b[0],
];

export const norm = (a: Point): number => Math.sqrt(dot(a, a));

export function distance(a: Point, b: Point): number {
	const x = a[0] - b[0];
	const y = a[1] - b[1];
	const z = a[2] - b[2];
	return Math.sqrt(x * x + y * y + z * z);
}

/** a at length 1. Throws RangeError for a vector without length, which has no direction. */
export function unit(a: Point): Point {
	const length = norm(a);
	if (!(length > 0)) throw new RangeError(`The vector (${a.join(', ')}) has no direction; give two different points.`);
	return scale(a, 1 / length);
}

/** The part of a square to the unit vector u. */
export const across = (a: Point, u: Point): Point => step(a, -dot(a, u), u);
