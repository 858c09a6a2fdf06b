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
	/** How far it lies off, in standard deviations of what the rest lets expect of it. */
	off: number;
}

/** What cannot be told from an error of its own: nothing else says anything about it. */
const ALONE = 1e-6;

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
		return off ? [{ kind: unknown.kind, bend, reading: null, value, off: off.off, would: value - off.by }] : [];
	});
	const read = input.readings.flatMap(({ value, sd }, i): Suspect[] => {
		const row = slopes[i]!;
		const off = offOf(misses[i]!, sd, dot(times(covariance, row), row));
		return off ? [{ kind: 'reading', bend: null, reading: i, value, off: off.off, would: value - off.by }] : [];
	});
	return [...told, ...read].sort((a, b) => b.off - a.off);
}

function isToldOfABend(unknown: AsBuiltUnknown): unknown is AsBuiltUnknown & { kind: 'mark' | 'angle' | 'rotation' } {
	return unknown.kind === 'mark' || unknown.kind === 'angle' || unknown.kind === 'rotation';
}

/** `left`: what the estimate leaves of it; `sd`: its own error; `variance`: of the estimate's own value for it. */
function offOf(left: number, sd: number, variance: number): { off: number; by: number } | null {
	const rest = 1 - variance / sd ** 2;
	return rest > ALONE ? { off: Math.abs(left) / (sd * Math.sqrt(rest)), by: left / rest } : null;
}
