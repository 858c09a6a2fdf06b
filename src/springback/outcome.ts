/**
 * What a pull may leave. A stroke loses a part of its angle to slack, frame and springback. On a machine that nobody knows that may be far more than
 * is expected but not far less, since it is never less than nothing: the angle has a thinner tail above its mean than below it.
 */
import { chanceBelow } from '../maths/log-normal.ts';
import { normalCdf } from '../maths/normal.ts';
import { type Filter, knownTubeSd, pullSpread, reach } from './filter.ts';
import { releasedFrom, TAKE_UP, TUBE_TAKE_UP } from './model.ts';

/** Degrees. `variation`: of what is lost, as a log-normal variable, the standard deviation over the mean; 0 where the angle counts as normal. */
export interface Outcome {
	mean: number;
	sd: number;
	variation: number;
}

/** Of a stroke that the operator ends at `stop`, within his scatter. */
export function outcomeAt(f: Filter, stop: number): Outcome {
	const { mean, variance } = reach(f, stop);
	const sd = pullSpread(f, variance);
	return { mean, sd, variation: f.pulls === 0 ? variationOf(f, stop, { mean, sd }) : 0 };
}

/**
 * The part of the spread that hands and seat make is normal, so that the third moment is that of the rest. It counts by the share of the take-up: how
 * much more springs back on a larger bend depends on a law that nobody knows yet, which may take less as well.
 */
function variationOf(f: Filter, stop: number, { mean, sd }: Pick<Outcome, 'mean' | 'sd'>): number {
	const lost = stop - mean;
	const takenUp = -releasedFrom(f.mean, stop).row[TAKE_UP]! * (f.mean[TAKE_UP]! + f.mean[TUBE_TAKE_UP]!);
	if (lost <= 0 || takenUp <= 0) return 0;
	const unknown = Math.sqrt(Math.max(0, sd ** 2 - knownTubeSd(f) ** 2));
	return (takenUp / lost) * (unknown / lost) * (unknown / sd) ** 3;
}

/** Probability that an angle comes out above `bound`. */
export function chanceAbove({ mean, sd, variation }: Outcome, bound: number): number {
	if (sd === 0) return mean > bound ? 1 : 0;
	const z = (bound - mean) / sd;
	return z > 0 ? chanceBelow(z, variation) : normalCdf(-z);
}
