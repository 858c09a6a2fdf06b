import { exceeds } from './scalar.ts';

/** The element at `index`, counted from 0. @throws RangeError where the list has none there */
export function at<T>(list: readonly T[], index: number): T {
	const found = list[index];
	if (found === undefined) throw new RangeError(`index ${index} lies outside a list of ${list.length}`);
	return found;
}

export function sumOf(values: readonly number[]): number {
	return values.reduce((sum, value) => sum + value, 0);
}

/** NaN where there are none. */
export function meanOf(values: readonly number[]): number {
	return sumOf(values) / values.length;
}

/** The largest by `of` first; those that differ by no more than rounding stay in the order they came in. */
export function largestFirst<T>(list: readonly T[], of: (each: T) => number): T[] {
	const ranked = list
		.map((each, place) => ({ each, place, value: of(each), rank: 0 }))
		.sort((a, b) => b.value - a.value);
	for (const [i, one] of ranked.entries()) {
		const before = ranked[i - 1];
		if (before) one.rank = before.rank + (exceeds(before.value, one.value) ? 1 : 0);
	}
	return ranked.sort((a, b) => a.rank - b.rank || a.place - b.place).map(({ each }) => each);
}
