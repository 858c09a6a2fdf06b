import { at } from '../maths/list.ts';
import { cosine, sine } from './angles.ts';
import { frames } from './frames.ts';
import type { EndName, Job, Point } from './job.ts';
import type { Shape } from './shape.ts';
import { rotationsAfterFirst } from './turns.ts';
import { combine, cross, scale, step } from './vector.ts';

/** The center line of the tube that an end meets, as long as shows it well. */
export interface Joint {
	end: EndName;
	from: Point;
	to: Point;
	/** Where it comes nearest to the end's center line. */
	middle: Point;
}

/** How far the other tube is shown to either side, in diameters of the thicker of the two. */
const SHOWN_ASIDE = 1.5;

/** The tubes that the coped ends meet, start end first, in the frame in which the tube is laid out (see `frames`). */
export function joints({ tube, ends }: Pick<Job, 'tube' | 'ends'>, shape: Shape): Joint[] {
	const { straights, arcs } = frames(shape);
	const sum = rotationsAfterFirst(shape.bends);
	return (['start', 'far'] as const).flatMap((end): Joint[] => {
		const cope = ends?.[end]?.cope;
		if (cope === undefined) return [];
		const isStart = end === 'start';
		const straight = at(straights, isStart ? 0 : straights.length - 1);
		const inside = isStart ? at(arcs, 0).normal : at(arcs, arcs.length - 1).endNormal;
		// The last bend's inside lies round the tube by the sum of rotations; the joint line is told from bend 1's.
		const turn = isStart ? cope.turn : cope.turn - sum;
		const line = combine(cosine(turn), inside, sine(turn), cross(straight.direction, inside));
		const out = isStart ? scale(straight.direction, -1) : straight.direction;
		const right = cross(out, line);
		const middle = step(isStart ? straight.start : straight.end, cope.offset, right);
		const along = combine(-cosine(cope.angle), out, sine(cope.angle), line);
		const reach = SHOWN_ASIDE * Math.max(tube.od, cope.od);
		return [{ end, from: step(middle, -reach, along), to: step(middle, reach, along), middle }];
	});
}
