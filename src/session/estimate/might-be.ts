import { rawTubeOf } from '../../fit/as-built.ts';
import type { AsBuilt } from '../../fit/built-tube.ts';
import type { RawBend, RawTube } from '../../fit/raw-tube.ts';
import { dieOn, uncutShape } from '../../fit/raw-tube.ts';
import { toldOtherwise } from '../../fit/told-otherwise.ts';
import { triangle } from '../../maths/cholesky.ts';
import { spreadTo, standardCloud } from '../../maths/cloud.ts';
import { at } from '../../maths/list.ts';
import type { Shape } from '../../tube/shape.ts';
import type { State } from '../log/state.ts';
import { madeCount } from '../log/state.ts';
import type { Numbers } from '../protocol/asks.ts';
import { BEND_SPREAD, builtNow, inputBy } from './estimate.ts';
import { handsNow, markSd, turnSd, type WhoseHands } from './hands.ts';
import { rawTube, tubeAtWork } from './tube-at-work.ts';

/** One tube that this may be: as it lies before its ends are cut, and as it is finished. */
export interface MightBe {
	raw: RawTube;
	uncut: Shape;
	finished: Shape;
	/** What has nothing to do with the shape: standard normal numbers, as many as were asked for. */
	more: readonly number[];
	/** Whose hands bent it, and how likely all that was told and read is by these, over the likeliest. */
	hands: WhoseHands;
	weight: number;
}

/** A cloud of such tubes, each made when it is asked for: where only their number counts, none has to be kept. */
export interface Might {
	count: number;
	/** `k` counts from 0. */
	tube(k: number): MightBe;
}

/** What a bend still to come will be off by that the bends after it do not take up, degrees: what measuring leaves unknown of it. */
export const UNKNOWN = 0.2;

/** How the bends left come out: each corrected for the one before, or by numbers that stay what they are. */
export type BendsLeft = 'corrected' | 'kept';

/**
 * Tubes that this one may be or become by these numbers, by all that is known and by the errors that hands make, a part of them by hands of each size
 * that these may have: the same for the same state. Both ends are cut off by what is believed now.
 */
export function mightBe(state: State, numbers: readonly Numbers[], left: BendsLeft, more: number): Might {
	const made = madeCount(state);
	const built = state.built ?? builtNow(state);
	const planned = rawTube(state, numbers).bends.slice(made);
	const sizes = bySize(state, built).map((size) => ({
		...size,
		errors: planned.map((_, i) => errorsOf(size.hands, left === 'kept' || i === planned.length - 1)),
	}));
	const { trimStart, trimEnd } = tubeAtWork(state, numbers);
	const points = standardCloud(built.mean.length + 4 * planned.length + 3 + more);
	const tube = (z: readonly number[], { hands, weight, mean, lower, errors }: (typeof sizes)[number]): MightBe => {
		const tape = markSd(hands);
		const x = spreadTo(mean, lower, z);
		let next = built.mean.length;
		const draw = (sd: number) => sd * z[next++]!;
		const raw = tubeWith(built, x, made, (tube) =>
			planned.map((bend, i) => offBy(bend, dieOn(tube, bend).radius, at(errors, i), draw)),
		);
		const uncut = uncutShape(raw, state.piece + draw(tape));
		const finished = cutBy(uncut, trimStart + draw(tape), Math.max(0, trimEnd) + draw(tape));
		return { raw, uncut, finished, more: z.slice(next), hands, weight };
	};
	return { count: points.length, tube: (k) => tube(at(points, k), at(sizes, k % sizes.length)) };
}

/** What is known of the made part where hands are of each size that they may be. */
function bySize(state: State, built: AsBuilt) {
	const found = handsNow(state).map((hands) => ({ hands, ...toldOtherwise(built, inputBy(state, built, hands)) }));
	const likeliest = Math.max(...found.map(({ likely }) => likely));
	return found.map(({ hands, likely, built: { mean, covariance } }) => ({
		hands,
		weight: Math.exp(likely - likeliest),
		mean,
		lower: triangle(covariance),
	}));
}

interface Errors {
	mark: number;
	angle: number;
	rotation: number;
	radius: number;
}

/** `whole`: nothing takes up what is measured of it, so that all counts that its tolerance lets pass, evenly. */
function errorsOf(hands: WhoseHands, whole: boolean): Errors {
	const { under, over } = hands.job.tolerance;
	return {
		mark: markSd(hands),
		angle: whole ? (under + over) / Math.sqrt(12) : UNKNOWN,
		rotation: turnSd(hands),
		radius: BEND_SPREAD,
	};
}

function tubeWith(built: AsBuilt, x: readonly number[], made: number, rest: (tube: RawTube) => RawBend[]): RawTube {
	const tube = rawTubeOf(built, x);
	return { ...tube, bends: [...tube.bends.slice(0, made), ...rest(tube)] };
}

function offBy(planned: RawBend, radius: number, errors: Errors, draw: (sd: number) => number): RawBend {
	const angle = Math.max(1, planned.angle + draw(errors.angle));
	return {
		...planned,
		mark: planned.mark + draw(errors.mark),
		angle,
		rotation: planned.rotation + draw(errors.rotation),
		radius: radius * Math.exp(draw(errors.radius)),
		wrapped: Math.max(angle, planned.wrapped - planned.angle + angle),
	};
}

/** A piece with so much cut off its ends. */
function cutBy({ straights, bends }: Shape, start: number, far: number): Shape {
	const last = straights.length - 1;
	const cut = straights.map((s, i) => s - (i === 0 ? start : 0) - (i === last ? far : 0));
	return { straights: [...cut.slice(0, -1), Math.max(0, at(cut, last))], bends };
}
