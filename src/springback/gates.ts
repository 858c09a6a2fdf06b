/** Which readings are asked again before they count. */
import { type Filter, zeroOf } from './filter.ts';
import { lateBy } from './late.ts';
import { DIAL_AGREES, type FilterReading } from './model.ts';
import { expectReading, soundness } from './reading.ts';
import { varianceOf, wrongPart } from './scatter.ts';

/** How a finder's reading may lie below the largest dial angle of the bend: offset and part. */
const LEAST_BELOW = -0.75;
const MOST_BELOW = { offset: 6, part: 0.25 };

/**
 * A reading is asked again where it is right with less than this probability: the finder's from 3.7 of its standard deviations on, a dial's, of which
 * less follows, from 4.1. With one half for both (3.4) hands twice as rough as is common were questioned on 2 of 100 right numbers, and no more slips
 * found.
 */
const SOUND: Readonly<Record<FilterReading, number>> = { angle: 0.25, released: 0.03, pointer: 0.06 };

/**
 * A dial with the tube snug that stands so far off, in degrees, is asked again wherever it would count for less than half: where its lag is not known
 * yet so little is expected of it that one five degrees off was neither asked about nor used.
 */
export const DIAL_FAR_OFF = 4;
const HALF = 0.5;

/** Where more readings than this part are wrong numbers, one alone is not to be built on. */
const MANY_WRONG = 0.055;

/** Why a reading is doubtful, in degrees: beyond what the dial showed, or merely unlikely; `inside`: what it would be, read on the inside of the bend. */
export type GateDoubt =
	| { by: 'stop'; stop: number }
	| { by: 'above-the-dial' | 'below-the-dial'; held: number; inside?: number }
	| { by: 'expectation'; expected: number; sd: number };

/** Why the stroke's end as keyed is doubtful, or null; `most`: how far from the stop it may be, degrees. */
export function doubtLoaded(asked: number, keyed: number, most = DIAL_AGREES): GateDoubt | null {
	if (Math.abs(asked - keyed) <= most) return null;
	return { by: 'stop', stop: asked };
}

/** After so many right readings in a row one alone is built on again, whatever was tallied. */
const ALL_RIGHT = 20;

/** Whether so many wrong numbers were seen that a bend is measured twice each time. */
export function manyWrong(f: Filter): boolean {
	return wrongPart(f.scatter) > MANY_WRONG && f.right < ALL_RIGHT;
}

/** A band narrower than so many standard deviations of the finder asks for two readings: one would take a good bend for a short one. */
const NARROW_BAND = 3;

/** Whether the band is so narrow beside the finder's scatter that a bend is measured twice each time. */
export function narrowBand(f: Filter, { under, over }: { under: number; over: number }): boolean {
	return under + over < NARROW_BAND * Math.sqrt(varianceOf('finder', f.scatter));
}

/** Whether a bend takes so long that it is measured twice from here on: a short one is then told from a good one, and what the last pull did is known. */
export function slow(f: Filter, band: { under: number; over: number }): boolean {
	return lateBy(f.pulls, band) >= 0;
}

/** Why a reading of the bend in hand is doubtful, or null. Impossible first, then merely unlikely. */
export function doubtReading(f: Filter, kind: FilterReading, value: number): GateDoubt | null {
	return (f.pulls > 0 ? whyImpossible(f, kind, value) : null) ?? whyUnlikely(f, kind, value);
}

function whyImpossible(f: Filter, kind: FilterReading, value: number): GateDoubt | null {
	const beyond = (by: 'above-the-dial' | 'below-the-dial'): GateDoubt => {
		const inside = kind === 'angle' && passes(f, 180 - value);
		return { by, held: f.largest, ...(inside ? { inside: 180 - value } : {}) };
	};
	if (f.largest - zeroOf(f) - value < LEAST_BELOW) return beyond('above-the-dial');
	return kind === 'angle' && !passes(f, value) ? beyond('below-the-dial') : null;
}

function passes(f: Filter, value: number): boolean {
	const below = f.largest - zeroOf(f) - value;
	return below >= LEAST_BELOW && (f.opened || below <= MOST_BELOW.offset + MOST_BELOW.part * f.largest);
}

function whyUnlikely(f: Filter, kind: FilterReading, value: number): GateDoubt | null {
	const expected = expectReading(f, kind);
	const off = value - expected.value;
	const least = kind === 'pointer' && Math.abs(off) >= DIAL_FAR_OFF ? HALF : SOUND[kind];
	if (soundness(off, expected.sd ** 2, wrongPart(f.scatter)) >= least) return null;
	return { by: 'expectation', expected: expected.value, sd: expected.sd };
}
