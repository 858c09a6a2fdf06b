import { largestFirst } from '../maths/list.ts';
import { dot, times } from '../maths/matrix.ts';
import type { AsBuilt, AsBuiltUnknown } from './built-tube.ts';

/** One thing told or read that the rest of an estimate contradicts. */
export interface Suspect {
	kind: 'mark' | 'angle' | 'rotation' | 'reading';
	/** Counted from 0; null for a reading. */
	bend: number | null;
	/** Place among the readings; null for what was told of a bend. */
	reading: number | null;
	value: number;
	/** What it would have been by all the rest. */
	would: number;
	/** Its own error: standard deviation. */
	sd: number;
	/** How far it lies off, in standard deviations of what the rest lets expect of it. */
	off: number;
	/** Logarithm of how much likelier all that was told and read is with this one a gross error than with none. */
	likely: number;
	/** The part of what is believed of it that rests on it alone: 1 where nothing else says anything of it. */
	alone: number;
}

/** What cannot be told from an error of its own: nothing else says anything about it. */
const ALONE = 1e-6;

/** How large gross errors are, in standard deviations of what they are errors of, either way: each of these as often (common practice, no source). */
const GROSS_SIZES = [3, 4, 5, 6, 7, 8, 9, 10, 11, 12];
export const LARGEST_GROSS = 12;

/**
 * Everything told or read, each with what all the rest says of it. When exactly one of them is a gross error, the largest `off` is
 * most likely that one; where the readings are too few to tell them apart, several are equal.
 * Source: W. Baarda, A Testing Procedure for Use in Geodetic Networks (1968): the w-test of single observations (from memory).
 */
export function suspectsOf({ input, unknowns, mean, covariance, misses, slopes }: AsBuilt): Suspect[] {
	const told = unknowns.flatMap((unknown, k): Suspect[] => {
		const { bend } = unknown;
		if (!isToldOfABend(unknown) || !unknown.told || bend === null) return [];
		const { value, sd } = unknown.told;
		const off = offOf(value - mean[k]!, sd, covariance[k]![k]!);
		return off ? [{ kind: unknown.kind, bend, reading: null, value, sd, would: value - off.by, ...off }] : [];
	});
	const read = input.readings.flatMap(({ value, sd }, i): Suspect[] => {
		const row = slopes[i]!;
		const off = offOf(misses[i]!, sd, dot(times(covariance, row), row));
		return off ? [{ kind: 'reading', bend: null, reading: i, value, sd, would: value - off.by, ...off }] : [];
	});
	return largestFirst([...told, ...read], ({ off }) => off);
}

function isToldOfABend(unknown: AsBuiltUnknown): unknown is AsBuiltUnknown & { kind: 'mark' | 'angle' | 'rotation' } {
	return unknown.kind === 'mark' || unknown.kind === 'angle' || unknown.kind === 'rotation';
}

/** `left`: what the estimate leaves of it; `sd`: its own error; `variance`: of the estimate's own value for it; `by`: how far off, by all the rest. */
function offOf(
	left: number,
	sd: number,
	variance: number,
): (Pick<Suspect, 'off' | 'likely' | 'alone'> & { by: number }) | null {
	const rest = 1 - variance / sd ** 2;
	if (!(rest > ALONE)) return null;
	const off = Math.abs(left) / (sd * Math.sqrt(rest));
	return { off, by: left / rest, likely: grossLikelihood(off, rest), alone: 1 - rest };
}

/**
 * The rest leads one to expect a value with the variance sd^2 / rest, its own error included, and a gross error moves what is told by its size. The
 * ratio of the two normal densities at what the value is off, over all sizes, in logarithms: it would overflow.
 */
function grossLikelihood(off: number, rest: number): number {
	const each = GROSS_SIZES.flatMap((size) => {
		const moved = size * Math.sqrt(rest);
		return [moved * (off - moved / 2), -moved * (off + moved / 2)];
	});
	const most = Math.max(...each);
	return most + Math.log(each.reduce((sum, one) => sum + Math.exp(one - most), 0) / each.length);
}
