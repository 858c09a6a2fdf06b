/**
 * What a dial tells that was read with a bent tube snug in the die. Some hands read it and some set it where they were told it should
 * stand; a dial that was set repeats our own estimate and tells nothing of the tube, but from then on it is off by what that estimate was.
 */
import { covarianceWith, type Gaussian } from '../maths/gaussian.ts';
import { dot } from '../maths/matrix.ts';
import { clamp } from '../maths/scalar.ts';
import { ANGLE, LAG, SEAT } from './model.ts';

/** Of hands that set the dial, the part of readings that lie where it was wanted; of a reading that is wrong by chance at least this part does. */
const AS_WANTED = 0.97;
const LEAST_CHANCE = 0.02;
/** Of any shop: one in eight sets the dial, as logarithms of odds. Nothing on the screen asks for it (common practice, no source). */
export const FEW_SET = -2;
/** No more is believed of a shop's hands than these logarithms of odds say: they may change. */
const MOST_ODDS = 6;
/** How near to where it was wanted a dial is set, degrees. */
const SETTING_SD = 0.1;

/**
 * With a straight tube many set the dial that read it on a bent one: dials that stand as wanted there bring the odds no higher than this. One that
 * does not says that these hands leave it alone.
 */
const MOST_BY_STRAIGHT = -1;

/** What was told of a dial: whether it stands as wanted, which would be so by `chance` if it was read, and whether the tube is still `straight`. */
export interface DialTold {
	asWanted: boolean;
	chance: number;
	straight: boolean;
}

/**
 * Logarithm of the odds that these hands set the dial, after one more reading. On a bent tube one that is not as wanted may be a wrong number: it
 * brings the odds no lower than those of any shop.
 */
export function settingOdds(before: number, { asWanted, chance, straight }: DialTold): number {
	const byChance = clamp(chance, LEAST_CHANCE, 1 - LEAST_CHANCE);
	const told = asWanted ? AS_WANTED / byChance : (1 - AS_WANTED) / (1 - byChance);
	const after = clamp(before + Math.log(told), -MOST_ODDS, MOST_ODDS);
	if (straight) return Math.min(after, Math.max(before, MOST_BY_STRAIGHT));
	return Math.max(after, Math.min(before, FEW_SET));
}

/**
 * `g` after the dial was set to `value`: whatever the seat was, the dial's offset is now the value less lag and angle, exact but for the
 * setting and `rounding`, a variance.
 */
export function dialSet(g: Gaussian, value: number, rounding: number): Gaussian {
	const row = g.mean.map((_, i) => (i === LAG || i === ANGLE ? 1 : 0));
	const c = covarianceWith(g, row);
	const offset = value - dot(row, g.mean);
	const own = dot(row, c) + SETTING_SD ** 2 + rounding;
	return {
		mean: g.mean.map((m, i) => (i === SEAT ? offset : m)),
		cov: g.cov.map((line, i) =>
			line.map((v, j) => {
				if (i === SEAT && j === SEAT) return own;
				if (i === SEAT) return -c[j]!;
				return j === SEAT ? -c[i]! : v;
			}),
		),
	};
}

/** Mean and covariance of being `a` with probability `part`, else `b`. */
export function eitherOf(a: Gaussian, b: Gaussian, part: number): Gaussian {
	const apart = a.mean.map((m, i) => m - b.mean[i]!);
	return {
		mean: b.mean.map((m, i) => m + part * apart[i]!),
		cov: b.cov.map((line, i) =>
			line.map((v, j) => part * a.cov[i]![j]! + (1 - part) * v + part * (1 - part) * apart[i]! * apart[j]!),
		),
	};
}
