/** What is known about springback here and now, and how each pull and reading changes it. Every function returns a new state. */
import { covarianceWith, dot, type Gaussian, maxMoments, replaced, surprise, updated } from './gaussian.ts';
import {
	ANGLE,
	BUILD_UP,
	BUILD_UP_SD,
	CURVATURE,
	CURVATURE_SD,
	dialUnderLoad,
	FRAME,
	LAG,
	LAG_PRIOR,
	MECHANICS_SD,
	outcomeOf,
	PROPORTION,
	PULL_SD,
	type ReadingKind,
	readingRow,
	SEAT,
	TAKE_UP,
	TAKE_UP_PRIOR,
	TUBE_PROPORTION,
	TUBE_PROPORTION_SD,
	TUBE_TAKE_UP,
	TUBE_TAKE_UP_SD,
} from './model.ts';
import { normalCdf } from './normal.ts';
import { dialSet, either, FEW_SET, ofOdds, settingOdds } from './pointer.ts';
import {
	NOTHING_SEEN,
	roundingVariance,
	type Scatter,
	varianceOf,
	withDeviation,
	withReadings,
	wrongPart,
} from './scatter.ts';

/** A hair over half a division is half a division. */
const HAIR = 1e-9;
/** How far off a wrong number is: most are a slip of a few degrees, which is what is hard to tell from a bend. */
const BLUNDER_SD = 4.5;
/** A reading's miss tells of its scatter up to this many times its variance: one blunder must not pass for general noise. */
const MISS_CAP = 12;

/** Plain numbers throughout: it can be written as JSON and read back. */
export interface Filter extends Gaussian {
	/** Pulls of this bend, and the largest dial angle they reached. */
	readonly pulls: number;
	readonly largest: number;
	/** Whether anything has been read since the last pull. */
	readonly seen: boolean;
	/** Whether the bend may have been opened since its largest pull, and so lie far below it. */
	readonly opened: boolean;
	/** Variance that the seat's error had when the tube was put in; 0 before the first seat, and where the dial was set since. */
	readonly seated: number;
	/** How uncertain the outcome of this bend's first pull was, a standard deviation; 0 before it. */
	readonly first: number;
	/** Logarithm of the odds that these hands set the dial where it is wanted instead of reading it. */
	readonly setting: number;
	/** How hands and instruments were seen to scatter. */
	readonly scatter: Scatter;
	/** The dial's division, degrees. */
	readonly dialStep: number;
}

/** Variance of the operator's stop about the number he was given. */
export function stoppingVariance(f: Filter): number {
	return varianceOf('stop', f.scatter);
}

/** A plan counts on no look at the dial that leaves less than this part of the seat's variance unknown. */
const SEAT_LEFT = 0.6;

/**
 * Spread of the outcome of a pull where machine and tube are known, and of the seat as much as here: more where somebody said
 * what the dial shows with the tube snug.
 */
export function settledSd(f: Filter): number {
	const left = f.seated === 0 ? 1 : f.cov[SEAT]![SEAT]! / f.seated;
	return Math.sqrt(stoppingVariance(f) + varianceOf('seat', f.scatter) * Math.min(1, Math.max(SEAT_LEFT, left)));
}

/** By how much the dial was told to stand off since the tube was put in, degrees; 0 as long as nothing tells. */
export function seatShift(f: Filter): number {
	return f.mean[SEAT]!;
}

/** Variance of one reading. */
function readingVariance(f: Filter, kind: ReadingKind): number {
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
	const bend = { pulls: 0, largest: 0, seen: false, opened: false, seated: 0, first: 0, setting: FEW_SET };
	return newTube({ mean, cov, ...bend, scatter: NOTHING_SEEN, dialStep });
}

/** A fresh tube in the same machine: what was special about the last one is forgotten. */
export function newTube(f: Filter): Filter {
	const takeUp = replaced(f, TUBE_TAKE_UP, 0, TUBE_TAKE_UP_SD ** 2);
	const both = replaced(takeUp, TUBE_PROPORTION, 0, (TUBE_PROPORTION_SD * f.mean[PROPORTION]!) ** 2);
	return newBend({ ...f, ...both });
}

/** The next bend, in its first seat: straight there. */
export function newBend(f: Filter): Filter {
	return newSeat({ ...f, ...replaced(f, ANGLE, 0, 0), pulls: 0, largest: 0, seen: false, opened: false, first: 0 });
}

/** The tube goes back into the die. */
export function newSeat(f: Filter): Filter {
	const scatter = seatTold(f);
	const seated = varianceOf('seat', scatter);
	return { ...f, scatter, seated, ...replaced(f, SEAT, 0, seated) };
}

/** What the seat that ends now says of seats. */
function seatTold(f: Filter): Scatter {
	if (f.seated === 0) return f.scatter;
	const part = 1 - f.cov[SEAT]![SEAT]! / f.seated;
	return part > 0 ? withDeviation(f.scatter, 'seat', f.mean[SEAT]!, part) : f.scatter;
}

/** Back at a bend made earlier, in a new seat: its angle as it was known, and the largest dial angle it was pulled to. */
export function reopened(f: Filter, made: { angle: number; sd: number }, largest: number): Filter {
	const bend = newBend(f);
	const angle = replaced(bend, ANGLE, made.angle, made.sd ** 2);
	return { ...bend, ...angle, pulls: 1, largest, seen: true, opened: true, first: settledSd(f) };
}

/** What a pull to exactly `loaded` would leave: mean and variance, and the covariance with the angle there now. */
export function reach(f: Filter, loaded: number): { mean: number; variance: number; withAngle: number } {
	const { mean, row } = outcomeOf(f.mean, loaded);
	const c = covarianceWith(f, row);
	return { mean, variance: dot(row, c), withAngle: c[ANGLE]! };
}

/** After a pull that was asked to stop at `asked` and of which `keyed` was read under load. */
export function pull(f: Filter, asked: number, keyed: number): Filter {
	const held = dialUnderLoad(asked, keyed, stoppingVariance(f), roundingVariance(f.dialStep));
	const { loaded, deviation, part } = held;
	const c = covarianceWith(f, outcomeOf(f.mean, loaded).row);
	const now = reach(f, loaded);
	const before = { mean: f.mean[ANGLE]!, variance: f.cov[ANGLE]![ANGLE]! };
	const max = maxMoments(
		{ mean: now.mean, variance: now.variance + held.variance + PULL_SD ** 2 },
		before,
		now.withAngle,
	);
	const withAngle = c.map((value, i) => value * max.first + f.cov[i]![ANGLE]! * (1 - max.first));
	withAngle[ANGLE] = max.variance;
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
		seen: false,
		first: f.pulls === 0 ? spread(f, now.variance) : f.first,
		scatter: deviation === null ? f.scatter : withDeviation(f.scatter, 'stop', deviation, part),
	};
}

/** Standard deviation of what a pull leaves, the operator stopping within his scatter; `variance` of a pull to an exact angle. */
export function spread(f: Filter, variance: number): number {
	return Math.sqrt(variance + stoppingVariance(f));
}

export interface ReadingOptions {
	/** Standard deviation of one reading, degrees. */
	sd?: number;
	/** How many independent readings `value` is the mean of. */
	readings?: number;
	/** The operator has read it again and it stands, however unlikely it looked. */
	confirmed?: boolean;
	/** How many other readings of the same thing were set aside for it. */
	setAside?: number;
}

/** What a reading of this kind is expected to show; `sd` with the reading's own error. */
export function expectReading(f: Filter, kind: ReadingKind): { value: number; sd: number } {
	const row = readingRow(kind, f.pulls === 0);
	const { variance } = surprise(f, row, 0, readingVariance(f, kind));
	return { value: dot(row, f.mean), sd: Math.sqrt(variance) };
}

/**
 * Probability that a reading that misses by `miss`, expected within `variance`, is no blunder, where `wrong` is the part of readings that
 * are; `readings` that agree with each other are hardly ever blunders all. In logs: 310 for 31 would underflow both likelihoods.
 */
export function soundness(miss: number, variance: number, wrong: number, readings = 1): number {
	const wide = variance + BLUNDER_SD ** 2;
	const blunder = wrong ** readings;
	const logOdds =
		Math.log((1 - blunder) / blunder) + 0.5 * Math.log(wide / variance) - 0.5 * miss * miss * (1 / variance - 1 / wide);
	return 1 / (1 + Math.exp(-logOdds));
}

/**
 * After a reading: `angle` by the angle finder, `released` on the dial, `pointer` on the dial with the tube snug before pulling. A pointer
 * that stands where it was wanted on a bent tube may have been set there; it is believed as far as these hands are known to read it.
 */
export function observe(f: Filter, kind: ReadingKind, value: number, options: ReadingOptions = {}): Filter {
	const read = observed(f, kind, value, options);
	if (kind !== 'pointer' || f.pulls === 0) return read;
	const wanted = expectReading(f, 'pointer');
	const near = f.dialStep / 2;
	const asWanted = Math.abs(value - wanted.value) <= near + HAIR;
	const odds = settingOdds(f.setting, asWanted, 2 * normalCdf(near / wanted.sd) - 1);
	if (!asWanted) return { ...read, setting: odds };
	const part = ofOdds(odds);
	const both = either(dialSet(f, value, roundingVariance(f.dialStep)), read, part);
	if (part <= 0.5) return { ...read, ...both, setting: odds };
	// How the dial was set says nothing of how seats and readings scatter.
	return { ...read, ...both, setting: odds, scatter: f.scatter, seated: 0 };
}

function observed(f: Filter, kind: ReadingKind, value: number, options: ReadingOptions): Filter {
	const { readings = 1 } = options;
	const variance = (options.sd === undefined ? readingVariance(f, kind) : options.sd ** 2) / readings;
	const row = readingRow(kind, f.pulls === 0);
	const { miss, variance: expected } = surprise(f, row, value, variance);
	const weight = options.confirmed ? 1 : soundness(miss, expected, wrongPart(f.scatter), readings);
	const state = options.confirmed ? widened(f, (miss * miss) / 4 - expected, expected - variance) : f;
	const isOwn = options.sd === undefined && weight > 0.5;
	const counted = wrongCounted(f.scatter, 1 - weight, options);
	return {
		...f,
		...updated(state, row, value, variance, weight),
		scatter: isOwn
			? readingTold(counted, kind, { miss, expected, variance, readings }, roundingVariance(f.dialStep))
			: counted,
		seen: f.seen || kind !== 'pointer' || f.pulls > 0,
	};
}

/** What was set aside was wrong; of what counts, each reading is so with probability `wrong`. What has an `sd` of its own was no such reading. */
function wrongCounted(scatter: Scatter, wrong: number, { readings = 1, setAside = 0, sd }: ReadingOptions): Scatter {
	if (sd !== undefined) return scatter;
	return withReadings(scatter, wrong * readings + setAside, readings + setAside);
}

/** What a reading that missed says of how readings of its kind scatter. */
function readingTold(
	scatter: Scatter,
	kind: ReadingKind,
	{ miss, expected, variance, readings }: { miss: number; expected: number; variance: number; readings: number },
	rounding: number,
): Scatter {
	const part = variance / expected;
	const most = Math.sqrt(MISS_CAP * expected);
	const own = part * Math.min(Math.abs(miss), most) * Math.sqrt(readings);
	if (kind === 'angle') return withDeviation(scatter, 'finder', own, part);
	return withDeviation(scatter, 'dial', own, part, rounding);
}

/**
 * A confirmed reading that the model thought impossible: the model was too sure of itself. All of it is widened, but at most
 * twofold, since history is worth more than one odd bend; the bend's own angle (before it is pulled: its seat) takes the rest of the
 * variance that `lacks`.
 */
function widened(f: Filter, lacks: number, has: number): Gaussian {
	if (lacks <= 0) return f;
	const factor = 1 + Math.min(1, lacks / has);
	const rest = Math.max(0, lacks - (factor - 1) * has);
	const own = f.pulls === 0 ? SEAT : ANGLE;
	const cov = f.cov.map((line, i) => line.map((p, j) => p * factor + (i === own && j === own ? rest : 0)));
	return { mean: f.mean, cov };
}

/** The angle of the bend in hand. */
export function made(f: Filter): { angle: number; sd: number } {
	return { angle: f.mean[ANGLE]!, sd: Math.sqrt(f.cov[ANGLE]![ANGLE]!) };
}

/** Hands that open a bend by so much are off by half of it, and by so much at the least: standard deviations. */
const OPENING = { part: 0.5, least: 0.5 };

/** After the bend was opened by about `by` degrees: only measuring tells by how much it really was. */
export function relieved(f: Filter, by: number): Filter {
	const variance = OPENING.least ** 2 + (OPENING.part * by) ** 2 + f.cov[ANGLE]![ANGLE]!;
	return { ...f, ...replaced(f, ANGLE, f.mean[ANGLE]! - by, variance), seen: false, opened: true };
}

/** After a check told the angle of the bend in hand as `value`, within `sd`. */
export function observeMade(f: Filter, value: number, sd: number): Filter {
	const row = readingRow('angle', false);
	const { miss, variance } = surprise(f, row, value, sd * sd);
	return { ...f, ...updated(f, row, value, sd * sd, soundness(miss, variance, wrongPart(f.scatter))), seen: true };
}
