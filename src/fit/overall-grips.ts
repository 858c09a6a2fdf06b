import type { Frames } from '../tube/frames.ts';
import type { Check, Point } from '../tube/job.ts';
import { axisOf, outermost, type Ring, ringRise } from '../tube/overall.ts';
import { dot, scale, step, subtract } from '../tube/vector.ts';
import { before, type Carrier, directionGrip, type Grip, straightGrip, withinGrip } from './grip.ts';

/** Nearer than this to running along the axis, a ring's rise has no slope: it turns back there. */
const TURNS_BACK = 1e-9;

/** Lower than this, in radii, a tube lies flat. */
const LIES_FLAT = 1e-9;

/**
 * A size follows its two outermost rings, each by its middle and by the direction of the tube there, and the axis itself. A ring within an arc is
 * the one that stands farthest, so that its moving along the arc does not count. `half`: half the outside diameter.
 */
export function overallGrips({ axis, at }: Extract<Check, { kind: 'overall' }>, tube: Frames, half: number): Grip[] {
	const up = axisOf(tube, axis, at);
	const { top, bottom } = outermost(tube, 2 * half, up);
	// The rise of a ring by its direction d: -(d.u) u / sqrt(1 - (d.u)^2), and the same the other way about by the axis u.
	const lean = ({ direction }: Ring) => {
		const rise = ringRise(direction, up);
		return rise < TURNS_BACK ? 0 : (-half * dot(direction, up)) / rise;
	};
	const [high, low] = [lean(top), lean(bottom)];
	const apart = subtract(top.place, bottom.place);
	// A tube that lies flat is as high as it is thick, whichever way it is turned out of that.
	if (dot(apart, up) <= LIES_FLAT * half) return [];
	return [
		...ringGrips(top, up, scale(up, high), tube),
		...ringGrips(bottom, scale(up, -1), scale(up, low), tube),
		directionGrip(up, step(step(apart, high, top.direction), low, bottom.direction), axisCarrier(tube, axis, at)),
	];
}

function ringGrips({ of, direction }: Ring, pull: Point, lean: Point, { straights, arcs }: Frames): Grip[] {
	if ('bend' in of) {
		const by: Carrier = { straights: of.bend, rotations: of.bend, angles: of.bend - 1 };
		return [withinGrip(arcs[of.bend - 1]!, of.turn, pull, by), directionGrip(direction, lean, by)];
	}
	return [straightGrip(of, straights, pull), directionGrip(direction, lean, before(of.straight - 1))];
}

/** Straight 1 and the start of the tube stand still; bend 1's inside goes with its own rotation. */
function axisCarrier({ arcs }: Frames, axis: string, at: 'end' | undefined): Carrier {
	const bends = at === 'end' ? arcs.length : 0;
	return { straights: bends, rotations: at === 'end' ? bends : axis === 'x' ? 0 : 1, angles: bends };
}
