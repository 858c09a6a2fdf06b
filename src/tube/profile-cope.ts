import { at } from '../maths/list.ts';
import { cosine, sine } from './angles.ts';
import { copeCut } from './cope.ts';
import type { EndName, Job, Point } from './job.ts';
import type { Flat, TubePlane } from './planes.ts';
import type { Shape } from './shape.ts';
import { around } from './turns.ts';
import { combine, dot, step } from './vector.ts';

/** The cut of a coped end as it is seen square to a plane: its edge on the near side of the tube, and behind it. */
export interface ProfileCope {
	end: EndName;
	/** Both from the side of the bend's inside to the other side. */
	near: readonly Flat[];
	behind: readonly Flat[];
}

/** Places in which each half of the cut is drawn: one a degree, a chord of it strays less than a ten-thousandth of the diameter. */
const HALF_PLACES = 180;

/**
 * The cut of an end of the plane that is coped; null where it is cut square, or is no end of the tube. Where round the tube the cut lies is told
 * from bend 1's plane and carried to the far end by the sum of rotations, as the joint's `turn` is.
 */
export function profileCope(end: EndName, plane: TubePlane, job: Job, shape: Shape): ProfileCope | null {
	const cope = job.ends?.[end]?.cope;
	const isEnd = end === 'start' ? plane.bends[0] === 1 : plane.bends[1] === shape.bends.length;
	if (cope === undefined || !isEnd) return null;
	const last = plane.arcs.length - 1;
	const isStart = end === 'start';
	const arc = at(plane.arcs, isStart ? 0 : last);
	const { start, end: stop, direction } = at(plane.straights, isStart ? 0 : last + 1);
	const inside = isStart ? arc.normal : arc.endNormal;
	const rotations = shape.bends.map(({ rotation }) => rotation);
	const bendsAt = isStart ? 0 : around(job, rotations, shape.bends.length).around.degrees;
	const { back } = copeCut(job.tube, cope, end);
	const half = job.tube.od / 2;
	/** On the cut, so many degrees from the bend's inside. */
	const place = (degrees: number): Point => {
		const spoke = combine(cosine(degrees), inside, sine(degrees), arc.binormal);
		const out = -back(degrees + bendsAt - cope.turn).outer;
		return step(step(isStart ? start : stop, isStart ? -out : out, direction), half, spoke);
	};
	const side = (sign: number) =>
		Array.from({ length: HALF_PLACES + 1 }, (_, i): Flat => plane.flat(place((sign * 180 * i) / HALF_PLACES)));
	// The plane is looked at with its first bend's inside to the left of the travel.
	const isSeen = dot(arc.binormal, at(plane.arcs, 0).binormal) > 0;
	return { end, near: side(isSeen ? 1 : -1), behind: side(isSeen ? -1 : 1) };
}
