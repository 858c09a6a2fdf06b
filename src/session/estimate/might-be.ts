import { rawTubeOf } from '../../fit/as-built.ts';
import type { AsBuilt } from '../../fit/built-tube.ts';
import type { RawBend, RawTube } from '../../fit/raw-tube.ts';
import { dieOn, uncutShape } from '../../fit/raw-tube.ts';
import { triangle } from '../../maths/cholesky.ts';
import { spreadTo, standardCloud } from '../../maths/cloud.ts';
import { at } from '../../maths/list.ts';
import type { Shape } from '../../tube/shape.ts';
import type { State } from '../log/state.ts';
import { madeCount } from '../log/state.ts';
import type { Numbers } from '../protocol/asks.ts';
import { BEND_SPREAD, builtNow } from './estimate.ts';
import { markSd, turnSd } from './hands.ts';
import { rawTube, tubeAtWork } from './tube-at-work.ts';

/** One tube that this may be: as it lies before its ends are cut, and as it is finished. */
export interface MightBe {
	raw: RawTube;
	uncut: Shape;
	finished: Shape;
	/** What has nothing to do with the shape: standard normal numbers, as many as were asked for. */
	more: readonly number[];
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
 * Tubes that this one may be or become by these numbers, by all that is known and by the errors that hands make: of equal weight, the
 * same for the same state. Both ends are cut off by what is believed now.
 */
export function mightBe(state: State, numbers: readonly Numbers[], left: BendsLeft, more: number): Might {
	const made = madeCount(state);
	const built = state.built ?? builtNow(state);
	const planned = rawTube(state, numbers).bends.slice(made);
	const errors = planned.map((_, i) => errorsOf(state, left === 'kept' || i === planned.length - 1));
	const { trimStart, trimEnd } = tubeAtWork(state, numbers);
	const tape = markSd(state.start);
	const points = standardCloud(built.mean.length + 4 * planned.length + 3 + more);
	const lower = triangle(built.covariance);
	const tube = (z: readonly number[]): MightBe => {
		const x = spreadTo(built.mean, lower, z);
		let next = built.mean.length;
		const draw = (sd: number) => sd * z[next++]!;
		const raw = tubeWith(built, x, made, (tube) =>
			planned.map((bend, i) => offBy(bend, dieOn(tube, bend).radius, at(errors, i), draw)),
		);
		const uncut = uncutShape(raw, state.piece + draw(tape));
		const finished = cutBy(uncut, trimStart + draw(tape), Math.max(0, trimEnd) + draw(tape));
		return { raw, uncut, finished, more: z.slice(next) };
	};
	return { count: points.length, tube: (k) => tube(at(points, k)) };
}

interface Errors {
	mark: number;
	angle: number;
	rotation: number;
	radius: number;
}

/** `whole`: nothing takes up what is measured of it, so that all counts that its tolerance lets pass, evenly. */
function errorsOf({ start }: State, whole: boolean): Errors {
	const { under, over } = start.job.tolerance;
	return {
		mark: markSd(start),
		angle: whole ? (under + over) / Math.sqrt(12) : UNKNOWN,
		rotation: turnSd(start),
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
