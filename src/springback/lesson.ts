/** What one session teaches those after it: its readings as a likelihood of the machine and material. */
import type { Filter } from './filter.ts';
import type { Gaussian } from './gaussian.ts';
import type { Told } from './hierarchy.ts';
import { type Kin, MACHINE } from './kin.ts';
import { eigen, inverse, times } from './linear.ts';

/** Squared deviations and how many there are: tallies of several sessions add up. */
export interface Tally {
	sum: number;
	count: number;
}

/** What one session's readings say of machine and material, and of how far readings scatter. Plain JSON. */
export interface Lesson extends Told {
	kin: Kin;
	/** When the session began, ISO time, and its id. */
	at: string;
	session: string;
	pulls: number;
	readings: number;
	information: number[][];
	vector: number[];
	scatter: { readings: Tally };
}

/** Along a direction that tells no more than this part of the best one, only rounding speaks. */
const ROUNDING = 1e-9;

/**
 * What was learned between two states of the filter: the quotient of two normal distributions, with what is this tube's own
 * integrated out. Where a robust update has left the machine less known than before, nothing was learned.
 */
export function lessonFrom(
	kin: Kin,
	start: Filter,
	end: Filter,
	about: { at: string; session: string; pulls: number; readings: number },
): Lesson {
	const [before, after] = [machineOf(start), machineOf(end)];
	const [loose, tight] = [inverse(before.cov), inverse(after.cov)];
	const gain = tight.map((line, i) => line.map((value, j) => value - loose[i]![j]!));
	const pull = times(
		tight,
		after.mean.map((mean, i) => mean - before.mean[i]!),
	);
	const all = eigen(gain);
	const least = ROUNDING * Math.max(...all.map(({ value }) => Math.abs(value)));
	const axes = all.filter(({ value }) => value > least);
	const information = MACHINE.map((_, i) =>
		MACHINE.map((_unknown, j) => axes.reduce((sum, { value, vector }) => sum + value * vector[i]! * vector[j]!, 0)),
	);
	const moved = axes.map(({ vector }) => vector.reduce((sum, x, i) => sum + x * pull[i]!, 0));
	const held = times(information, before.mean);
	const vector = held.map((value, i) => axes.reduce((sum, axis, n) => sum + axis.vector[i]! * moved[n]!, value));
	return { kin, ...about, information, vector, scatter: { readings: between(tallyOf(start), tallyOf(end)) } };
}

/** Whether anything at all was learned. */
export function teaches({ information, scatter }: Lesson): boolean {
	return scatter.readings.count > 0 || information.some((line, i) => line[i]! > 0);
}

/** The unknowns of machine and material alone: what is the tube's, the seat's and the bend's integrated out. */
export function machineOf({ mean, cov }: Gaussian): Gaussian {
	return { mean: MACHINE.map((i) => mean[i]!), cov: MACHINE.map((i) => MACHINE.map((j) => cov[i]![j]!)) };
}

function tallyOf({ surprises, readings }: Filter): Tally {
	return { sum: surprises, count: readings };
}

function between(start: Tally, end: Tally): Tally {
	return { sum: end.sum - start.sum, count: end.count - start.count };
}
