import { sumOf } from './list.ts';
import { NINE_IN_TEN } from './normal.ts';

/** What is read off a cloud of equally or unequally weighted points: chances, moments, and what one more reading would tell. */

/**
 * The give or take of a number that was told: nine in ten of `values`, weighed, lie within 1.645 of it. For a normal
 * distribution about what was told that is its standard deviation; a distance near 0 is none, and its true value lies above what is told
 * more often than below, so that the band says more than a deviation would.
 */
export function halfBand(values: readonly number[], weights: readonly number[], told: number): number {
	const misses = values.map((value, i) => ({ miss: Math.abs(value - told), weight: weights[i]! }));
	misses.sort((a, b) => a.miss - b.miss);
	const all = sumOf(weights);
	let [below, last] = [0, 0];
	for (const { miss, weight } of misses) {
		const to = below + weight / all;
		if (to >= 0.9) return (last + ((0.9 - below) / (to - below)) * (miss - last)) / NINE_IN_TEN;
		[below, last] = [to, miss];
	}
	return last / NINE_IN_TEN;
}

/** The part of the weight for which something holds. */
export function weightedChance(holds: readonly boolean[], weights: readonly number[]): number {
	let [yes, all] = [0, 0];
	for (let i = 0; i < holds.length; i++) {
		all += weights[i]!;
		if (holds[i]) yes += weights[i]!;
	}
	return yes / all;
}

/** Where a standard normal variable is looked at, and with what weight: the trapezoidal rule, whose error for it is below 1e-3 so. */
const NODES = Array.from({ length: 25 }, (_, i) => {
	const z = (i - 12) / 4;
	return { z, weight: Math.exp(-0.5 * z * z) / (4 * Math.sqrt(2 * Math.PI)) };
});

/** A reading finer than this part of what is not known would rest on a handful of points. */
const FINEST = 0.15;

/**
 * The part of the doubt whether something holds that one more reading would clear away, 0 to 1: of the variance p (1 - p), what the
 * reading explains on average (expected value of sample information: H. Raiffa, R. Schlaifer, Applied Statistical Decision Theory, 1961).
 * `values` are what would be read without error, `sd` is the reading's own.
 */
export function clears(
	holds: readonly boolean[],
	weights: readonly number[],
	values: readonly number[],
	sd: number,
): number {
	const p = weightedChance(holds, weights);
	if (p <= 0 || p >= 1) return 0;
	const { mean, variance } = momentsOf(values, weights);
	const own = Math.max(sd, FINEST * Math.sqrt(variance));
	const spread = Math.sqrt(variance + own * own);
	if (!(variance > 0)) return 0;
	let explained = 0;
	for (const { z, weight } of NODES) {
		const reading = mean + z * spread;
		const likely = values.map((value, i) => weights[i]! * Math.exp(-0.5 * ((reading - value) / own) ** 2));
		if (likely.some((x) => x > 0)) explained += weight * (weightedChance(holds, likely) - p) ** 2;
	}
	return explained / (p * (1 - p));
}

export function momentsOf(values: readonly number[], weights: readonly number[]): { mean: number; variance: number } {
	let [all, sum, squares] = [0, 0, 0];
	for (let i = 0; i < values.length; i++) {
		all += weights[i]!;
		sum += weights[i]! * values[i]!;
	}
	const mean = sum / all;
	for (let i = 0; i < values.length; i++) squares += weights[i]! * (values[i]! - mean) ** 2;
	return { mean, variance: squares / all };
}
