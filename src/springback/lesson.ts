/** What one session teaches those after it: its readings as a likelihood of the machine and material. */

import { inverse } from '../maths/cholesky.ts';
import { eigen } from '../maths/eigen.ts';
import { times } from '../maths/matrix.ts';
import { ROUNDING } from '../maths/scalar.ts';
import { type Filter, newSeat } from './filter.ts';
import type { Likelihood } from './hierarchy.ts';
import type { Kin } from './kin.ts';
import { faded, type Scatter, TALLY_KINDS, type Tally, type TallyKind } from './scatter.ts';
import { machinesOf } from './several-dies.ts';

/** What one session's readings say of machine and material, and of how far readings scatter. Plain JSON. */
export interface Lesson extends Likelihood {
	kin: Kin;
	/**
	 * The further combinations that it tells of, where one tube was bent on several dies: `information` and `vector` then hold the unknowns of
	 * all, one combination after the other. `pulls`: those on that die, and in the lesson's own `pulls` those on `kin`'s.
	 */
	besides?: readonly { kin: Kin; pulls: number }[];
	/** When the session began, ISO time, and its id. */
	at: string;
	session: string;
	pulls: number;
	readings: number;
	information: number[][];
	vector: number[];
	scatter: Scatter;
	/** What the machine's dial shows with a straight tube snug; absent where nobody has said. */
	zero?: number;
	/** How many readings in a row were right at its end. */
	right: number;
}

/** All combinations that a lesson tells of, in the order of its numbers. */
export function kinsOf({ kin, besides = [] }: Pick<Lesson, 'kin' | 'besides'>): readonly Kin[] {
	return [kin, ...besides.map((each) => each.kin)];
}

/**
 * What was learned between two states of the filter: the quotient of two normal distributions, with what is this tube's own
 * integrated out. Where a robust update has left the machine less known than before, nothing was learned.
 */
export function lessonFrom(
	kin: Kin,
	start: Filter,
	end: Filter,
	about: { at: string; session: string; pulls: number; readings: number; besides?: Lesson['besides'] },
): Lesson {
	const names = kinsOf({ kin, ...about }).map(({ die }) => die);
	const [before, after] = [machinesOf(start, names), machinesOf(end, names)];
	const [loose, tight] = [inverse(before.cov), inverse(after.cov)];
	const gain = tight.map((line, i) => line.map((value, j) => value - loose[i]![j]!));
	const pull = times(
		tight,
		after.mean.map((mean, i) => mean - before.mean[i]!),
	);
	const all = eigen(gain);
	// Along a direction that tells no more than this, only rounding speaks.
	const least = ROUNDING * Math.max(...all.map(({ value }) => Math.abs(value)));
	const axes = all.filter(({ value }) => value > least);
	const information = gain.map((line, i) =>
		line.map((_, j) => axes.reduce((sum, { value, vector }) => sum + value * vector[i]! * vector[j]!, 0)),
	);
	const moved = axes.map(({ vector }) => vector.reduce((sum, x, i) => sum + x * pull[i]!, 0));
	const held = times(information, before.mean);
	const vector = held.map((value, i) => axes.reduce((sum, axis, n) => sum + axis.vector[i]! * moved[n]!, value));
	return {
		kin,
		...about,
		information,
		vector,
		scatter: since(start, newSeat(end)),
		right: end.right,
		...(end.zero === null ? {} : { zero: end.zero }),
	};
}

/** Whether anything at all was learned. */
export function teaches({ information, scatter, zero }: Lesson): boolean {
	return (
		zero !== undefined ||
		TALLY_KINDS.some((kind) => scatter[kind].count > 0) ||
		information.some((line, i) => line[i]! > 0)
	);
}

/** `f` with these tallies on top of its own. */
export function withTallies(f: Filter, tallies: Scatter): Filter {
	const scatter = tallied((kind) => {
		const [own, more] = [f.scatter[kind], tallies[kind]];
		return { sum: own.sum + more.sum, count: own.count + more.count };
	});
	return { ...f, scatter };
}

function since(start: Filter, end: Filter): Scatter {
	return tallied((kind) => {
		const before = kind === 'wrong' ? faded(start.scatter.wrong, end.tallied) : start.scatter[kind];
		const now = end.scatter[kind];
		return { sum: now.sum - before.sum, count: now.count - before.count };
	});
}

/** Each kind's tallies of all lists together, as many as `most` readings at the most; `weight` counts a list in part. */
export function together(lists: readonly { scatter: Scatter; weight: number }[], most: number): Scatter {
	return tallied((kind) => {
		let [sum, count] = [0, 0];
		for (const { scatter, weight } of lists) {
			sum += weight * scatter[kind].sum;
			count += weight * scatter[kind].count;
		}
		const part = Math.min(1, most / Math.max(1, count));
		return { sum: part * sum, count: part * count };
	});
}

function tallied(of: (kind: TallyKind) => Tally): Scatter {
	return Object.fromEntries(TALLY_KINDS.map((kind) => [kind, of(kind)])) as Scatter;
}
