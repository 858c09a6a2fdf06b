/** Springback as learned, over the angle: what the page of a bender shows. */

import { slopeAt } from '../maths/differences.ts';
import { NINE_IN_TEN } from '../maths/normal.ts';
import { type Filter, newTube, reach } from './filter.ts';
import { predictStop } from './stop.ts';

export interface SpringbackPoint {
	/** Permanent angle of the bend, degrees. */
	angle: number;
	/** The loaded dial angle that leaves it, less the angle: as expected, and the 90 % band of a pull on a fresh tube. */
	back: number;
	low: number;
	high: number;
}

/** Degrees over which the slope is taken. */
const SLOPE_OVER = 0.5;

/** What pulls that end at these permanent angles are expected to spring back, take-up included, each a tube's first. */
export function springbackAt(prior: Filter, angles: readonly number[]): SpringbackPoint[] {
	const f = newTube(prior);
	return angles.map((angle) => {
		const stop = predictStop(f, angle);
		const slope = slopeAt((loaded) => reach(f, loaded).mean, stop, SLOPE_OVER);
		// An angle that comes out short by so much takes a stop further by more: the dial gains on the tube.
		const margin = (NINE_IN_TEN * Math.sqrt(reach(f, stop).variance)) / slope;
		const back = stop - angle;
		return { angle, back, low: back - margin, high: back + margin };
	});
}
