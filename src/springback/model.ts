/**
 * The model of a pull. A pull to the loaded dial angle L leaves the angle max(before, C(L)), where
 * C(L) = L - take-up - proportional part - curvature - seat; after release the dial shows the angle + lag + seat.
 * Take-up and proportional part are the machine's and material's own plus what is special about this tube. The take-up
 * builds up over the first degrees of the stroke. The dial's lag is an unknown of its own: it has nothing to do with the take-up.
 * Degrees throughout; each constant is a standard deviation unless it says otherwise.
 */

import { clamp } from '../maths/scalar.ts';
import { unrounded } from './rounding.ts';
import { roundingVariance } from './scatter.ts';

/** The unknowns, in the order of the filter's vectors. The proportional part counts in degrees at 90. */
export const TAKE_UP = 0;
export const PROPORTION = 1;
export const CURVATURE = 2;
export const LAG = 3;
/** Logarithm of the degrees over which the take-up builds up, over the common figure. */
export const BUILD_UP = 4;
export const TUBE_TAKE_UP = 5;
export const TUBE_PROPORTION = 6;
export const SEAT = 7;
export const ANGLE = 8;

/** Slack, frame and dial zero together: several degrees on any machine. */
export const TAKE_UP_PRIOR = { mean: 3, sd: 0.9 };
/**
 * What the frame and the straight legs add to the part that mechanics gives: benders show 2 to 12 % in all on tubes for which
 * mechanics gives about 2 (common practice, no source); as a flat range that has this mean and sd.
 */
export const FRAME = { mean: 0.049, sd: 0.028 };
/** Published analytical models of tube springback err by 14 to 39 % (doi 10.1177/0036850420984303, abstract). */
export const MECHANICS_SD = 0.35;
export const CURVATURE_SD = 0.5;
/** Dials lag behind the angle finder by some degrees, or lead it (common practice, no source). */
export const LAG_PRIOR = { mean: 1, sd: 1.4 };
/** Benders build their take-up up over 3 to 13 degrees, most over 6.5 (common practice, no source). */
export const BUILD_UP_SD = 0.35;
/** One tube of a batch against the next: of the take-up, and as a part of the proportional part. */
export const TUBE_TAKE_UP_SD = 0.25;
export const TUBE_PROPORTION_SD = 0.1;
/** A dial under load as keyed, rounding to a division aside. */
const KEYED_SD = 0.15;
/** What a pull does beside the model. */
export const PULL_SD = 0.1;
/** Over this, what was keyed and confirmed is where the stroke ended, and the stop asked for says nothing. */
export const DIAL_AGREES = 1;

/** The take-up builds up over the first degrees of a bend, by this many each e-fold. */
export const COMMON_BUILD_UP = 6.5;
/** Readings that nothing explains can drive the estimate anywhere: what it means stays within one degree and fifty. */
const MOST_BUILD_UP = 2;

/** A die that a filter knows: its name, and what is expected to spring back on it before anything was read, as a part of the angle. */
export interface HeldDie {
	readonly name: string;
	readonly back: number;
}

export type FilterReading = 'angle' | 'released' | 'pointer';

/**
 * C(loaded) of these unknowns, and how it follows each of them there: `mean` and `row`. The build-up is the only unknown that it does not
 * follow in proportion.
 */
export function releasedFrom(x: readonly number[], loaded: number): { mean: number; row: number[] } {
	const u = loaded / 90;
	const buildUp = clamp(x[BUILD_UP]!, -MOST_BUILD_UP, MOST_BUILD_UP);
	const built = loaded / (COMMON_BUILD_UP * Math.exp(buildUp));
	const left = Math.exp(-built);
	const takeUp = x[TAKE_UP]! + x[TUBE_TAKE_UP]!;
	const proportion = x[PROPORTION]! + x[TUBE_PROPORTION]!;
	const curve = 4 * u * (1 - u);
	const mean = loaded - takeUp * (1 - left) - u * proportion - curve * x[CURVATURE]! - x[SEAT]!;
	return { mean, row: [left - 1, -u, -curve, 0, takeUp * built * left, left - 1, -u, -1, 0] };
}

/** A reading as a row . x: the angle finder, the dial after release, the dial with the tube snug before pulling. */
export function readingRow(kind: FilterReading, straight: boolean): number[] {
	if (kind === 'angle') return [0, 0, 0, 0, 0, 0, 0, 0, 1];
	// A tube still straight has no lag: the dial then shows the seat alone.
	if (kind === 'pointer' && straight) return [0, 0, 0, 0, 0, 0, 0, 1, 0];
	return [0, 0, 0, 1, 0, 0, 0, 1, 1];
}

/**
 * The loaded dial angle reached, from the stop asked for and the dial as keyed, each by its precision, and its variance.
 * `stopping`: variance of the operator's stop; `division`: the dial's; `deviation`: how far the stroke ended
 * past the stop, as far as the dial tells (`part` of the variance of stopping), null where the stop says nothing.
 */
export function dialUnderLoad(asked: number, keyed: number, stopping: number, division: number) {
	if (Math.abs(asked - keyed) > DIAL_AGREES) {
		return { loaded: keyed, variance: KEYED_SD ** 2 + roundingVariance(division), deviation: null, part: 0 };
	}
	const told = unrounded(keyed, division, { mean: asked, variance: stopping + KEYED_SD ** 2 });
	const reading = KEYED_SD ** 2 + told.rounding;
	const part = stopping / (stopping + reading);
	const deviation = part * (told.value - asked);
	return { loaded: asked + deviation, variance: part * reading, deviation, part };
}
