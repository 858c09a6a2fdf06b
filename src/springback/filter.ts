/** What is known about springback here and now, and how each pull and reading changes it. Every function returns a new state. */
import { covarianceWith, type Gaussian, maxMoments, replaced } from '../maths/gaussian.ts';
import { dot } from '../maths/matrix.ts';
import {
	ANGLE,
	BUILD_UP,
	BUILD_UP_SD,
	CURVATURE,
	CURVATURE_SD,
	dialUnderLoad,
	type FilterReading,
	FRAME,
	type HeldDie,
	LAG,
	LAG_PRIOR,
	MECHANICS_SD,
	PROPORTION,
	PULL_SD,
	releasedFrom,
	SEAT,
	TAKE_UP,
	TAKE_UP_PRIOR,
	TUBE_PROPORTION,
	TUBE_PROPORTION_SD,
	TUBE_TAKE_UP,
	TUBE_TAKE_UP_SD,
} from './model.ts';
import { FEW_SET } from './pointer.ts';
import { NOTHING_SEEN, roundingVariance, type Scatter, tubesDiffer, varianceOf, withDeviation } from './scatter.ts';

/** Plain numbers throughout: it can be written as JSON and read back. */
export interface Filter extends Gaussian {
	/** Pulls of this bend, and the largest dial angle they reached. */
	readonly pulls: number;
	readonly largest: number;
	/** Largest stop asked for since the bend was last opened, less what the dial was known to stand off by in that seat; 0 before. */
	readonly stopped: number;
	/** Largest dial angle that was told as held at this bend since it was last opened; 0 before. */
	readonly held: number;
	/** By how much the dial was told to stand otherwise in this seat than it did; 0 where it was not, or by less than half a division. */
	readonly moved: number;
	/** Whether anything has been read since the last pull. */
	readonly seen: boolean;
	/** Whether the bend may have been opened since its largest pull, and so lie far below it. */
	readonly opened: boolean;
	/** Variance that the seat's error had when the tube was put in; 0 before the first seat, and where the dial was set since. */
	readonly seated: number;
	/** What this machine's dial shows with a straight tube snug, where somebody has confirmed it; null: 0, as far as anybody knows. */
	readonly zero: number | null;
	/** How uncertain the outcome of this bend's first pull was, a standard deviation; 0 before it. */
	readonly first: number;
	/** Logarithm of the odds that these hands set the dial where it is wanted instead of reading it. */
	readonly setting: number;
	/** How many readings were tallied of this tube, and how many in a row were right up to now, earlier tubes' with them. */
	readonly tallied: number;
	readonly right: number;
	/** How hands and instruments were seen to scatter. */
	readonly scatter: Scatter;
	/** The dial's division, degrees. */
	readonly dialStep: number;
	/** The dies that bend this tube, the one at work first (`several-dies.ts`); absent where there is but one. */
	readonly dies?: readonly HeldDie[];
}

/** Variance of the operator's stop about the number he was given. */
export function stoppingVariance(f: Filter): number {
	return varianceOf('stop', f.scatter);
}

/** Standard deviation of the dial under load as it is told, about the stop asked for. */
export function heldSd(f: Filter): number {
	return Math.sqrt(stoppingVariance(f) + readingVariance(f, 'released'));
}

/** A plan counts on no look at the dial that leaves less than this part of the seat's variance unknown. */
const SEAT_LEFT = 0.6;

/**
 * Spread of the outcome of a pull where machine and tube are known, and of the seat as much as here: more where somebody said
 * what the dial shows with the tube snug.
 */
export function knownTubeSd(f: Filter): number {
	const left = f.seated === 0 ? 1 : f.cov[SEAT]![SEAT]! / f.seated;
	return Math.sqrt(stoppingVariance(f) + varianceOf('seat', f.scatter) * Math.min(1, Math.max(SEAT_LEFT, left)));
}

/** The stop that goes as far in this seat as the furthest one asked for at this bend did in its own, by what the dial is known to stand off; 0 before any. */
export function asFarAsBefore(f: Filter): number {
	return f.stopped === 0 ? 0 : f.stopped + f.mean[SEAT]!;
}

/** Variance of one reading. */
export function readingVariance(f: Filter, kind: FilterReading): number {
	if (kind === 'angle') return varianceOf('finder', f.scatter);
	return varianceOf('dial', f.scatter) + roundingVariance(f.dialStep);
}

/**
 * Before anything was bent. `k` is the part by which mechanics alone lets the bend open; what the machine's frame and the
 * straight legs add to it is known only as a range of machines. `dialStep`: the dial's division, degrees.
 */
export function filterPrior(k: number, dialStep = 0.5): Filter {
	const proportionSd = 90 * Math.hypot(MECHANICS_SD * k, FRAME.sd);
	const mean = [TAKE_UP_PRIOR.mean, 90 * (k + FRAME.mean), 0, LAG_PRIOR.mean, 0, 0, 0, 0, 0];
	const cov = mean.map(() => mean.map(() => 0));
	cov[TAKE_UP]![TAKE_UP] = TAKE_UP_PRIOR.sd ** 2;
	cov[PROPORTION]![PROPORTION] = proportionSd ** 2;
	cov[CURVATURE]![CURVATURE] = CURVATURE_SD ** 2;
	cov[LAG]![LAG] = LAG_PRIOR.sd ** 2;
	cov[BUILD_UP]![BUILD_UP] = BUILD_UP_SD ** 2;
	const bend = {
		pulls: 0,
		largest: 0,
		stopped: 0,
		held: 0,
		moved: 0,
		seen: false,
		opened: false,
		seated: 0,
		zero: null,
		first: 0,
		setting: FEW_SET,
	};
	return newTube({ mean, cov, ...bend, tallied: 0, right: 0, scatter: NOTHING_SEEN, dialStep });
}

/** A fresh tube in the same machine: what was special about the last one is forgotten. */
export function newTube(f: Filter): Filter {
	const differ = tubesDiffer(f.scatter);
	const takeUp = replaced(f, TUBE_TAKE_UP, 0, differ * TUBE_TAKE_UP_SD ** 2);
	const both = replaced(takeUp, TUBE_PROPORTION, 0, differ * (TUBE_PROPORTION_SD * f.mean[PROPORTION]!) ** 2);
	return newBend({ ...f, ...both, tallied: 0 });
}

/** The next bend, in its first seat: straight there. */
export function newBend(f: Filter): Filter {
	return newSeat({
		...f,
		...replaced(f, ANGLE, 0, 0),
		pulls: 0,
		largest: 0,
		stopped: 0,
		held: 0,
		seen: false,
		opened: false,
		first: 0,
	});
}

/** The tube goes back into the die. */
export function newSeat(f: Filter): Filter {
	const scatter = seatTold(f);
	const seated = varianceOf('seat', scatter);
	return { ...f, scatter, seated, moved: 0, ...replaced(f, SEAT, zeroOf(f), seated) };
}

/** Where the machine's dial stands with a straight tube, as far as that is known. */
export function zeroOf({ zero }: Filter): number {
	return zero ?? 0;
}

/** What the seat that ends now says of seats. */
function seatTold(f: Filter): Scatter {
	if (f.seated === 0) return f.scatter;
	const part = 1 - f.cov[SEAT]![SEAT]! / f.seated;
	return part > 0 ? withDeviation(f.scatter, 'seat', f.mean[SEAT]! - zeroOf(f), part) : f.scatter;
}

/**
 * Back at a bend made earlier, in a new seat: its angle as it was known, the largest dial angle it was pulled to, and the largest it was held
 * at since it was last opened.
 */
export function reopened(f: Filter, made: { angle: number; sd: number }, largest: number, held = largest): Filter {
	const bend = newBend(f);
	const angle = replaced(bend, ANGLE, made.angle, made.sd ** 2);
	return { ...bend, ...angle, pulls: 1, largest, held, seen: true, opened: true, first: knownTubeSd(f) };
}

/** What a pull to exactly `loaded` would leave: mean and variance, and the covariance with the angle there now. */
export function reach(f: Filter, loaded: number): { mean: number; variance: number; withAngle: number } {
	const { mean, row } = releasedFrom(f.mean, loaded);
	const c = covarianceWith(f, row);
	return { mean, variance: dot(row, c), withAngle: c[ANGLE]! };
}

/** Of a bend that was pulled no angle is known better than this, degrees: no two places along it are alike (common practice, no source). */
const LEAST_SD = 0.02;

/** After a pull that was asked to stop at `asked` and of which `keyed` was read under load. */
export function pull(f: Filter, asked: number, keyed: number): Filter {
	const held = dialUnderLoad(asked, keyed, stoppingVariance(f), f.dialStep);
	const { loaded, deviation, part } = held;
	const c = covarianceWith(f, releasedFrom(f.mean, loaded).row);
	const now = reach(f, loaded);
	const before = { mean: f.mean[ANGLE]!, variance: f.cov[ANGLE]![ANGLE]! };
	const max = maxMoments(
		{ mean: now.mean, variance: now.variance + held.variance + PULL_SD ** 2 },
		before,
		now.withAngle,
	);
	const withAngle = c.map((value, i) => value * max.first + f.cov[i]![ANGLE]! * (1 - max.first));
	withAngle[ANGLE] = Math.max(max.variance, LEAST_SD ** 2);
	const mean = f.mean.slice();
	mean[ANGLE] = max.mean;
	const cov = f.cov.map((line) => line.slice());
	for (let i = 0; i < withAngle.length; i++) cov[i]![ANGLE] = withAngle[i]!;
	cov[ANGLE] = withAngle;
	return {
		...f,
		mean,
		cov,
		pulls: f.pulls + 1,
		largest: Math.max(f.largest, loaded),
		stopped: Math.max(f.stopped, asked - f.mean[SEAT]!),
		held: Math.max(f.held, keyed),
		seen: false,
		first: f.pulls === 0 ? pullSpread(f, now.variance) : f.first,
		scatter: deviation === null ? f.scatter : withDeviation(f.scatter, 'stop', deviation, part),
	};
}

/**
 * Finished center-line radius over the die's, by the part of the springback that grows with the angle: the arc keeps the length it was wrapped
 * with, so that opening by that part of its angle lets its radius grow.
 */
export function growthExpected(f: Filter): number {
	return 1 / (1 - f.mean[PROPORTION]! / 90);
}

/** Standard deviation of what a pull leaves, the operator stopping within his scatter; `variance` of a pull to an exact angle. */
export function pullSpread(f: Filter, variance: number): number {
	return Math.sqrt(variance + stoppingVariance(f));
}

/** The angle of the bend in hand. */
export function made(f: Filter): { angle: number; sd: number } {
	return { angle: f.mean[ANGLE]!, sd: Math.sqrt(f.cov[ANGLE]![ANGLE]!) };
}

/** Hands that open a bend by so much are off by half of it, and by so much at the least: standard deviations. */
const OPENING_SD = { part: 0.5, least: 0.5 };

/** After the bend was opened by about `by` degrees: only measuring tells by how much it really was. */
export function relieved(f: Filter, by: number): Filter {
	const variance = OPENING_SD.least ** 2 + (OPENING_SD.part * by) ** 2 + f.cov[ANGLE]![ANGLE]!;
	return { ...f, ...replaced(f, ANGLE, f.mean[ANGLE]! - by, variance), seen: false, opened: true, stopped: 0, held: 0 };
}
