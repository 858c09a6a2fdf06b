/**
 * How far hands and instruments scatter. Every shop begins with what is common; each deviation that the readings show is
 * tallied, so that a shop's own scatter takes the place of the common one. Degrees.
 */
import { clamp } from '../maths/scalar.ts';

/** Squared deviations, or readings keyed wrong, and of how many: tallies of several sessions add up. */
export interface Tally {
	sum: number;
	count: number;
}

/** Stopping at the number given; the tube's seat; reading the dial, its divisions aside; reading the angle finder. */
export const SCATTER_KINDS = ['stop', 'seat', 'dial', 'finder'] as const;
export type ScatterKind = (typeof SCATTER_KINDS)[number];
/** What is tallied: how each kind scatters, and how many readings are wrong numbers. */
export const TALLY_KINDS = [...SCATTER_KINDS, 'wrong'] as const;
export type TallyKind = (typeof TALLY_KINDS)[number];
export type Scatter = Readonly<Record<TallyKind, Tally>>;

/** Standard deviations of any shop (common practice, no source). */
const COMMON: Readonly<Record<ScatterKind, number>> = { stop: 0.25, seat: 0.25, dial: 0.2, finder: 0.25 };
/** The common figure weighs as much as so many deviations: of one kind against the shop's all, and of the shop's all. */
const WEIGHT = 24;
const SHOP_WEIGHT = 12;
/** No shop is thought this much better or worse than the common one, as a factor of the standard deviation. */
const WITHIN = { least: 0.4, most: 2 };
/** One deviation counts as no more than so many standard deviations: a blunder that was confirmed is no scatter. */
const MOST_AT_ONCE = 2.5;

/** Part of readings that are wrong numbers in any shop (common practice, no source), and how many readings that weighs as much as. */
const COMMONLY_WRONG = { part: 0.04, weight: 60 };

/** With each reading those before it count by so much less. */
const KEPT_EACH_READING = 0.99;

const NO_TALLY: Tally = { sum: 0, count: 0 };
export const NOTHING_SEEN: Scatter = {
	stop: NO_TALLY,
	seat: NO_TALLY,
	dial: NO_TALLY,
	finder: NO_TALLY,
	wrong: NO_TALLY,
};

/** Variance of one deviation of this kind, as far as it is known. */
export const varianceOf = (kind: ScatterKind, scatter: Scatter): number =>
	varianceWhere(shopWide(scatter), kind, scatter);

/** The same where a shop's scatter is so many times the common one, squared. */
export function varianceWhere(shop: number, kind: ScatterKind, scatter: Scatter): number {
	const { sum, count } = scatter[kind];
	const common = COMMON[kind] ** 2;
	const seen = (WEIGHT * common * shop + sum) / (WEIGHT + count);
	return clamp(seen, WITHIN.least ** 2 * common, WITHIN.most ** 2 * common);
}

/**
 * Variance of a shop's scatter over the common one, all kinds together: hands that are rough at one thing are mostly rough at the
 * others, and all kinds together are known long before each alone.
 */
function shopWide(scatter: Scatter): number {
	const { sum, count } = deviationsSeen(scatter);
	return (SHOP_WEIGHT + sum) / (SHOP_WEIGHT + count);
}

/** All deviations seen, each in units of the common one of its kind. */
export function deviationsSeen(scatter: Scatter): Tally {
	let { sum, count } = NO_TALLY;
	for (const kind of SCATTER_KINDS) {
		sum += scatter[kind].sum / COMMON[kind] ** 2;
		count += scatter[kind].count;
	}
	return { sum, count };
}

/** How many times as far as common these hands and instruments scatter, all kinds together. */
export function timesCommon(scatter: Scatter): number {
	return timesWithin(Math.sqrt(shopWide(scatter)));
}

/** So many times the common scatter, or as near to it as any shop is thought to be. */
export const timesWithin = (times: number): number => clamp(times, WITHIN.least, WITHIN.most);

/**
 * Variance of one tube against the next over the common one. Rough hands clamp and grease one tube otherwise than the next; steady hands make no tubes
 * more alike than they are.
 */
export function tubesDiffer(scatter: Scatter): number {
	return Math.max(1, timesCommon(scatter)) ** 2;
}

/** Variance of rounding to a division of the dial. */
export function roundingVariance(division: number): number {
	return division ** 2 / 12;
}

/**
 * With one more deviation. An estimate of it that rests on `part` of its variance (the rest is still unknown) has that part of its
 * square, so that both add up to the variance itself.
 */
export function withDeviation(scatter: Scatter, kind: ScatterKind, estimate: number, part: number): Scatter {
	const { sum, count } = scatter[kind];
	const square = Math.min(estimate ** 2, MOST_AT_ONCE ** 2 * part * varianceOf(kind, scatter));
	return { ...scatter, [kind]: { sum: sum + square, count: count + part } };
}

/** Part of readings that are wrong numbers: misread, or keyed wrong. */
export function wrongPart({ wrong: { sum, count } }: Scatter): number {
	return (COMMONLY_WRONG.weight * COMMONLY_WRONG.part + sum) / (COMMONLY_WRONG.weight + count);
}

/** With `readings` more, of which `wrong` are wrong numbers, as far as can be told. */
export function withReadings(scatter: Scatter, wrong: number, readings: number): Scatter {
	const { sum, count } = faded(scatter.wrong, readings);
	return { ...scatter, wrong: { sum: sum + wrong, count: count + readings } };
}

/** A tally of wrong numbers after so many readings more: hands that have learned a dial are judged by what they do now. */
export function faded({ sum, count }: Tally, readings: number): Tally {
	const left = KEPT_EACH_READING ** readings;
	return { sum: left * sum, count: left * count };
}
