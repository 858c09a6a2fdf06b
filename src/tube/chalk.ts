import { at } from '../maths/list.ts';
import { radians } from './angles.ts';
import { pointAt } from './drop.ts';
import { cornerOf } from './frames.ts';
import type { Point } from './job.ts';
import { planesOf, type TubePlane } from './planes.ts';
import type { Shape } from './shape.ts';

/** A point to chalk: `bend` is what it belongs to, null for an end of the straights. */
export interface ChalkPoint {
	what: 'start' | 'begins' | 'corner' | 'middle' | 'ends' | 'center' | 'end';
	bend: number | null;
	/** Along the base line from its point A, and square to it, toward the inside of the plane's first bend. */
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

/** What to draw of a tube on the bench, plane by plane, from the start end on. Lengths in the shape's unit. */
export function chalkPlanes(shape: Shape): ChalkPlane[] {
	return planesOf(shape).map(chalked);
}

type PlacedPoint = Pick<ChalkPoint, 'what' | 'bend'> & { place: Point };

function chalked({ bends, straights, arcs, flat }: TubePlane): ChalkPlane {
	const places: PlacedPoint[] = [{ what: 'start', bend: null, place: at(straights, 0).start }];
	for (const [i, arc] of arcs.entries()) {
		const name = (what: ChalkPoint['what'], place: Point): PlacedPoint => ({ what, bend: bends[0] + i, place });
		const middle = pointAt(arc, radians(arc.angle) / 2);
		places.push(name('begins', arc.start), name('corner', cornerOf(arc)), name('middle', middle));
		places.push(name('ends', arc.end), name('center', arc.center));
	}
	places.push({ what: 'end', bend: null, place: at(straights, arcs.length).end });
	const drawn = places.map(({ what, bend, place }) => {
		const [along, off] = flat(place);
		return { what, bend, along, off };
	});
	const base = Math.max(...drawn.map(({ along }) => along));
	const points = drawn.map(
		(point): ChalkPoint => ({
			...point,
			fromA: Math.hypot(point.along, point.off),
			fromB: Math.hypot(base - point.along, point.off),
		}),
	);
	return { bends, base, points };
}
