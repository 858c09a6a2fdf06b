import type { Bounds } from '../../fit/correction-input.ts';
import { at } from '../../maths/list.ts';
import { toolingOf } from '../../tube/dies.ts';
import type { TubeAtWork } from '../estimate/tube-at-work.ts';
import type { State } from '../log/state.ts';

/** How far a straight may be moved by a correction, in parts of the piece: further is another tube. */
const FURTHEST = 0.25;

/** What clamp, follow, piece and machine leave a correction: the least and greatest of every straight and angle. */
export function limits(state: State, { shape, used }: TubeAtWork): { straights: Bounds[]; angles: Bounds[] } {
	const { job } = state.start;
	const last = shape.straights.length - 1;
	const { follow } = toolingOf(job, last);
	const nominal = state.design.nominal;
	// What the marks may move outwards before too little tube lies behind the last bend.
	const spare = Math.max(0, state.piece - used - follow);
	return {
		straights: shape.straights.map((now, i) => {
			const { clamp, markOffset } = toolingOf(job, i + 1);
			const least = i === last ? 0 : clamp + markOffset - (i === 0 ? job.trim.start : 0);
			// A design that is itself shorter than the clamp wants is warned of, not made impossible.
			const low = Math.max(0, Math.min(least, at(nominal.straights, i)));
			const room = i === last ? state.piece : Math.min(spare, FURTHEST * state.piece);
			return [low, Math.max(low, now + room)];
		}),
		angles: shape.bends.map((bend, i) => {
			const design = at(nominal.bends, i).angle;
			return [Math.min(1, design), Math.max(design, bend.angle, Math.min(at(state.design.reach, i), 179))];
		}),
	};
}
