import { at } from '../maths/list.ts';
import { radians, sine } from './angles.ts';
import { pointAt } from './drop.ts';
import { cornerOf, frames } from './frames.ts';
import type { Point } from './job.ts';
import type { Shape } from './shape.ts';
import { dot, subtract } from './vector.ts';

/** A point to chalk: `bend` is what it belongs to, null for an end of the straights. */
export interface ChalkPoint {
	what: 'start' | 'begins' | 'corner' | 'middle' | 'ends' | 'center' | 'end';
	bend: number | null;
	/** Along the base line from its point A, and square to it, towards the inside of the plane's first bend. */
	along: number;
	off: number;
	/** From the base line's two ends: where two arcs of a tape cross. */
	fromA: number;
	fromB: number;
}

/** Bends that lie in one plane, one after the other, with the straights before, between and after them. */
export interface ChalkPlane {
	/** First and last bend. */
	bends: readonly [number, number];
	/** Length of the base line from A to B. It begins at A with the start of the first bend's straight, and runs as that does. */
	base: number;
	points: ChalkPoint[];
}

/** The sine of the turn up to which two bends lie in one plane. */
const FLAT = 1e-9;

/** What to draw of a tube on the bench, plane by plane, from the start end on. Lengths in the shape's unit. */
export function chalkPlanes(shape: Shape): ChalkPlane[] {
	const firsts = shape.bends.flatMap(({ rotation }, i) => (i === 0 || Math.abs(sine(rotation)) > FLAT ? [i + 1] : []));
	return firsts.map((first, i) => plane(shape, first, (firsts[i + 1] ?? shape.bends.length + 1) - 1));
}

type Placed = Pick<ChalkPoint, 'what' | 'bend'> & { place: Point };

function plane(shape: Shape, first: number, last: number): ChalkPlane {
	const { straights, arcs } = frames(shape);
	const { start, direction } = at(straights, first - 1);
	const { normal } = at(arcs, first - 1);
	const places: Placed[] = [{ what: 'start', bend: null, place: start }];
	for (let bend = first; bend <= last; bend++) {
		const arc = at(arcs, bend - 1);
		const name = (what: ChalkPoint['what'], place: Point): Placed => ({ what, bend, place });
		const middle = pointAt(arc, radians(arc.angle) / 2);
		places.push(name('begins', arc.start), name('corner', cornerOf(arc)), name('middle', middle));
		places.push(name('ends', arc.end), name('center', arc.center));
	}
	places.push({ what: 'end', bend: null, place: at(straights, last).end });
	const flat = places.map(({ what, bend, place }) => {
		const from = subtract(place, start);
		return { what, bend, along: dot(from, direction), off: dot(from, normal) };
	});
	const base = Math.max(...flat.map(({ along }) => along));
	const points = flat.map(
		(point): ChalkPoint => ({
			...point,
			fromA: Math.hypot(point.along, point.off),
			fromB: Math.hypot(base - point.along, point.off),
		}),
	);
	return { bends: [first, last], base, points };
}
