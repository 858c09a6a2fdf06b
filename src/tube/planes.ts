import { at } from '../maths/list.ts';
import { sine } from './angles.ts';
import { type ArcFrame, frames, type StraightFrame } from './frames.ts';
import type { Point } from './job.ts';
import type { Shape } from './shape.ts';
import { dot, subtract } from './vector.ts';

/** A place in a plane: along its base line, and square to that, toward the inside of the plane's first bend. */
export type Flat = readonly [along: number, off: number];

/** Bends that lie in one plane, one after the other, with the straights before, between and after them. */
export interface TubePlane {
	/** First and last bend. */
	bends: readonly [number, number];
	/** One more than bends. */
	straights: readonly StraightFrame[];
	arcs: readonly ArcFrame[];
	/** A point of the plane on it: from where the first bend's straight begins, along that straight. */
	flat(point: Point): Flat;
}

/** The sine of the turn up to which two bends lie in one plane. */
const IN_ONE_PLANE = 1e-9;

/** The planes in which the tube lies, from the start end on. Two neighbors share the straight between them. */
export function planesOf(shape: Shape): TubePlane[] {
	const { straights, arcs } = frames(shape);
	const firsts = shape.bends.flatMap(({ rotation }, i) =>
		i === 0 || Math.abs(sine(rotation)) > IN_ONE_PLANE ? [i + 1] : [],
	);
	return firsts.map((first, i) => {
		const last = (firsts[i + 1] ?? shape.bends.length + 1) - 1;
		const { start, direction } = at(straights, first - 1);
		const { normal } = at(arcs, first - 1);
		return {
			bends: [first, last],
			straights: straights.slice(first - 1, last + 1),
			arcs: arcs.slice(first - 1, last),
			flat(point) {
				const from = subtract(point, start);
				return [dot(from, direction), dot(from, normal)];
			},
		};
	});
}
