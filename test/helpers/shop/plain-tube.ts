import { cholesky } from '../../../src/maths/cholesky.ts';
import { draws } from '../../../src/practice/random.ts';
import type { Point } from '../../../src/tube/job.ts';

/** A tube walked from its start end in plain numbers, each arc with its own radius: nothing of the program's geometry is used. */
export interface WalkedTube {
	corners: Point[];
	direction: Point;
}

const rad = Math.PI / 180;
const along = (p: Point, s: number, d: Point): Point => [p[0] + s * d[0], p[1] + s * d[1], p[2] + s * d[2]];
const cross = (a: Point, b: Point): Point => [
	a[1] * b[2] - a[2] * b[1],
	a[2] * b[0] - a[0] * b[2],
	a[0] * b[1] - a[1] * b[0],
];

export function walked(
	straights: readonly number[],
	bends: readonly { angle: number; rotation: number; radius: number }[],
): WalkedTube {
	let p: Point = [0, 0, 0];
	let t: Point = [1, 0, 0];
	let n: Point = [0, 1, 0];
	const corners: Point[] = [p];
	for (const [i, straight] of straights.entries()) {
		p = along(p, straight, t);
		const bend = bends[i];
		if (!bend) break;
		const [c, s] = [Math.cos(bend.rotation * rad), Math.sin(bend.rotation * rad)];
		const side = along([c * n[0], c * n[1], c * n[2]], s, cross(t, n));
		const leg = bend.radius * Math.tan((bend.angle / 2) * rad);
		p = along(p, leg, t);
		corners.push(p);
		const [ca, sa] = [Math.cos(bend.angle * rad), Math.sin(bend.angle * rad)];
		n = along([ca * side[0], ca * side[1], ca * side[2]], -sa, t);
		t = along([ca * t[0], ca * t[1], ca * t[2]], sa, side);
		p = along(p, leg, t);
	}
	return { corners: [...corners, p], direction: t };
}

export const apart = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

export function turnedBy(a: Point, b: Point): number {
	return Math.atan2(Math.hypot(...cross(a, b)), a[0] * b[0] + a[1] * b[1] + a[2] * b[2]) / rad;
}

/** Random vectors of a normal distribution, and more standard normal numbers beside each. */
export function normals(
	mean: readonly number[],
	covariance: readonly (readonly number[])[],
	more: number,
	count: number,
	seed: number,
): { x: number[]; z: number[] }[] {
	const draw = draws(seed);
	const lower = cholesky(covariance);
	return Array.from({ length: count }, () => {
		const z = mean.map(() => draw.normal(0, 1));
		const x = mean.map((m, i) => lower[i]!.reduce((sum, l, j) => sum + l * z[j]!, m));
		return { x, z: Array.from({ length: more }, () => draw.normal(0, 1)) };
	});
}
