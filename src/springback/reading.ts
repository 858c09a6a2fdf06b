/** What readings do to what is known: each by its own error, robust against a wrong number. Every function returns a new state. */

import { type Gaussian, replaced, surprise, updated } from '../maths/gaussian.ts';
import { dot } from '../maths/matrix.ts';
import { normalCdf } from '../maths/normal.ts';
import { ofLogOdds, ROUNDING } from '../maths/scalar.ts';
import { type Filter, readingVariance } from './filter.ts';
import { ANGLE, type FilterReading, readingRow, SEAT } from './model.ts';
import { dialSet, eitherOf, settingOdds } from './pointer.ts';
import { unrounded } from './rounding.ts';
import { roundingVariance, type Scatter, withDeviation, withReadings, wrongPart } from './scatter.ts';

/**
 * What all readings of one angle with one finder have in common, a standard deviation in degrees: however many there are, together they tell it no
 * better (common practice, no source).
 */
const FINDER_SHARED_SD = 0.1;

/** The variance of readings of an angle that is known within `before`, so that they leave it known no better than their common error lets them. */
export function finderTells(variance: number, before: number): number | null {
	const least = FINDER_SHARED_SD ** 2;
	return before > least ? Math.max(variance, (before * least) / (before - least)) : null;
}

/** How far off a wrong number is: most are a slip of a few degrees, which is what is hard to tell from a bend. */
const BLUNDER_SD = 4.5;
/** A reading's miss tells of its scatter up to this many times its variance: one blunder must not pass for general noise. */
const MISS_CAP = 12;

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

/** What a reading of `row` . x with its own `variance` is expected to be. */
function readsAs(g: Gaussian, row: readonly number[], variance: number): { mean: number; variance: number } {
	return { mean: dot(row, g.mean), variance: surprise(g, row, 0, variance).variance };
}

/** What a reading of this kind is expected to show; `sd` with the reading's own error. */
export function expectReading(f: Filter, kind: FilterReading): { value: number; sd: number } {
	const row = readingRow(kind, f.pulls === 0);
	const { mean, variance } = readsAs(f, row, readingVariance(f, kind));
	return { value: mean, sd: Math.sqrt(variance) };
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
	return ofLogOdds(logOdds);
}

/**
 * After a reading: `angle` by the angle finder, `released` on the dial, `pointer` on the dial with the tube snug before pulling. A pointer
 * that stands where it was wanted on a bent tube may have been set there; it is believed as far as these hands are known to read it.
 */
export function observe(f: Filter, kind: FilterReading, value: number, options: ReadingOptions = {}): Filter {
	if (kind === 'pointer' && f.pulls === 0 && options.confirmed) return zeroTold(f, value, options);
	const read = observed(f, kind, value, options);
	if (kind !== 'pointer') return read;
	const asWanted = isAsWanted(f, value);
	const told = { ...read, setting: oddsAfter(f, asWanted) };
	if (f.pulls === 0) return told.setting > 0 && asWanted ? untallied(f, told) : told;
	return { ...(asWanted ? perhapsSet(f, told, value) : told), moved: dialMoved(f, value) };
}

/** Whether a dial shows what it was wanted to, as far as its divisions tell. */
function isAsWanted(f: Filter, value: number): boolean {
	return Math.abs(value - expectReading(f, 'pointer').value) <= f.dialStep / 2 + ROUNDING;
}

/** After `read`, the dial having been set: that says nothing of how seats and readings scatter. */
const untallied = ({ scatter, tallied }: Filter, read: Filter): Filter => ({ ...read, scatter, tallied, seated: 0 });

/** What a dial shows with a straight tube snug, and was confirmed, is where this machine's dial stands: no error of the seat or of the reading. */
function zeroTold(f: Filter, value: number, { readings = 1, setAside = 0 }: ReadingOptions): Filter {
	const zeroed = { ...f, zero: value, ...replaced(f, SEAT, value, f.cov[SEAT]![SEAT]!) };
	return observed(zeroed, 'pointer', value, { readings, setAside });
}

/** How far a dial was told off from where it would stand if nothing had moved, from half a division on. */
function dialMoved(f: Filter, value: number): number {
	const off = value - expectReading(f, 'pointer').value;
	return Math.abs(off) < f.dialStep / 2 - ROUNDING ? 0 : off;
}

/** Logarithm of the odds that these hands set the dial, after it was told as wanted or not. */
function oddsAfter(f: Filter, asWanted: boolean): number {
	const chance = 2 * normalCdf(f.dialStep / 2 / expectReading(f, 'pointer').sd) - 1;
	return settingOdds(f.setting, { asWanted, chance, straight: f.pulls === 0 });
}

/** After a dial that stands as wanted on a bent tube, `read` if it was read. */
function perhapsSet(f: Filter, read: Filter, value: number): Filter {
	const part = ofLogOdds(read.setting);
	const told = { ...read, ...eitherOf(dialSet(f, value, roundingVariance(f.dialStep)), read, part) };
	return part <= 0.5 ? told : untallied(f, told);
}

function observed(f: Filter, kind: FilterReading, value: number, options: ReadingOptions): Filter {
	const { readings = 1 } = options;
	const variance = (options.sd === undefined ? readingVariance(f, kind) : options.sd ** 2) / readings;
	const row = readingRow(kind, f.pulls === 0);
	const { miss, variance: expected } = surprise(f, row, value, variance);
	const weight = options.confirmed ? 1 : soundness(miss, expected, wrongPart(f.scatter), readings);
	const unsure = kind === 'pointer' || f.pulls === 0 ? SEAT : ANGLE;
	const state = options.confirmed ? widened(f, (miss * miss) / 4 - expected, expected - variance, unsure) : f;
	const { scatter: counted, ...wrong } = wrongCounted(f, 1 - weight, options);
	const division = kind === 'angle' || options.sd !== undefined ? 0 : f.dialStep / Math.sqrt(readings);
	const own = variance - roundingVariance(division);
	const read = unrounded(value, division, readsAs(state, row, own));
	const told = kind === 'angle' ? finderTells(own, state.cov[ANGLE]![ANGLE]!) : own + read.rounding;
	const isOwn = options.sd === undefined && weight > 0.5;
	const missed = surprise(f, row, read.value, own + read.rounding);
	return {
		...f,
		...wrong,
		...(told === null ? { mean: state.mean, cov: state.cov } : updated(state, row, read.value, told, weight)),
		scatter: isOwn ? scatterAfter(counted, kind === 'angle' ? 'finder' : 'dial', missed, { own, readings }) : counted,
		seen: f.seen || kind !== 'pointer' || f.pulls > 0,
	};
}

/** What was set aside was wrong; of what counts, each reading is so with probability `wrong`. What has an `sd` of its own was no such reading. */
function wrongCounted(
	{ scatter, tallied, right }: Filter,
	wrong: number,
	{ readings = 1, setAside = 0, sd }: ReadingOptions,
): Pick<Filter, 'scatter' | 'tallied' | 'right'> {
	if (sd !== undefined) return { scatter, tallied, right };
	const count = readings + setAside;
	return {
		scatter: withReadings(scatter, wrong * readings + setAside, count),
		tallied: tallied + count,
		right: setAside > 0 || wrong > 0.5 ? 0 : right + readings,
	};
}

/** What a reading that missed says of how readings of its kind scatter; `own`: the variance that it has of itself. */
function scatterAfter(
	scatter: Scatter,
	kind: 'finder' | 'dial',
	{ miss, variance }: { miss: number; variance: number },
	{ own, readings }: { own: number; readings: number },
): Scatter {
	const part = own / variance;
	const most = Math.sqrt(MISS_CAP * variance);
	return withDeviation(scatter, kind, part * Math.min(Math.abs(miss), most) * Math.sqrt(readings), part);
}

/**
 * A confirmed reading that the model thought impossible: the model was too sure of itself. All of it is widened, but at most
 * twofold, since history is worth more than one odd bend; the bend's own angle takes the rest of the variance that `lacks`, or (`own`) its seat
 * where it was not pulled yet, and where a snug dial stands elsewhere before a pull: the dial moved, and the bend is as it was measured.
 */
function widened(f: Filter, lacks: number, has: number, own: number): Gaussian {
	if (lacks <= 0) return f;
	const factor = 1 + Math.min(1, lacks / has);
	const rest = Math.max(0, lacks - (factor - 1) * has);
	const cov = f.cov.map((line, i) => line.map((p, j) => p * factor + (i === own && j === own ? rest : 0)));
	return { mean: f.mean, cov };
}

/** After a check told the angle of the bend in hand as `value`, within `sd`. */
export function observeMade(f: Filter, value: number, sd: number): Filter {
	const row = readingRow('angle', false);
	const { miss, variance } = surprise(f, row, value, sd * sd);
	return { ...f, ...updated(f, row, value, sd * sd, soundness(miss, variance, wrongPart(f.scatter))), seen: true };
}
