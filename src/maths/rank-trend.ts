import { sumOf } from './list.ts';
/** Whether numbers in the order in which they came rise or fall. */

export interface RankTrend {
	/** Pairs of which the later is larger, less those of which it is smaller. */
	score: number;
	/** Probability that numbers without any trend score as far from 0, either way. */
	chance: number;
	/** Median rise from one number to the next. */
	slope: number;
}

/**
 * Mann's test of a trend (H. B. Mann, "Nonparametric tests against trend", Econometrica 13, 1945; M. G. Kendall, "Rank Correlation Methods", 1975),
 * exact, as without ties; and the slope of P. K. Sen ("Estimates of the regression coefficient based on Kendall's tau", Journal of the American
 * Statistical Association 63, 1968). For two numbers or more; a constant scatter and no shape of it is taken for granted.
 */
export function rankTrend(values: readonly number[]): RankTrend {
	if (values.length < 2) throw new RangeError(`a trend of ${values.length} numbers: at least 2 are needed`);
	const pairs = values.flatMap((before, i) =>
		values.slice(i + 1).map((after, k) => ({ rise: after - before, apart: k + 1 })),
	);
	const score = pairs.reduce((sum, { rise }) => sum + Math.sign(rise), 0);
	const slopes = pairs.map(({ rise, apart }) => rise / apart).sort((a, b) => a - b);
	return { score, chance: chanceOfScore(Math.abs(score), values.length), slope: middle(slopes) };
}

/** P(|S| >= score) where every order of n numbers is as likely: each number adds 0 to i inversions to those of the i before it. */
function chanceOfScore(score: number, n: number): number {
	if (score === 0) return 1;
	let parts = [1];
	for (let i = 1; i < n; i++) {
		const next = Array<number>(parts.length + i).fill(0);
		for (const [inversions, part] of parts.entries()) {
			for (let more = 0; more <= i; more++) next[inversions + more]! += part / (i + 1);
		}
		parts = next;
	}
	// S is the number of pairs less twice the inversions, and even about 0.
	const most = Math.floor(((n * (n - 1)) / 2 - score) / 2);
	const tail = sumOf(parts.slice(0, most + 1));
	return Math.min(1, 2 * tail);
}

/** The median of sorted numbers. */
export function middle(sorted: readonly number[]): number {
	const half = Math.floor(sorted.length / 2);
	return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}
