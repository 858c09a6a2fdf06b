import { cholesky, inverseBy, solvedBy } from '../maths/cholesky.ts';
import { costAt, normal } from '../maths/least-squares.ts';
import { dot } from '../maths/matrix.ts';
import { asBuiltUnknowns, unknownScales } from './as-built.ts';
import type { AsBuilt, AsBuiltInput, AsBuiltUnknown } from './built-tube.ts';

/** The same tube where what was told and read of it has other errors, and the logarithm of how likely all of it is then. */
export interface ToldOtherwise {
	built: AsBuilt;
	likely: number;
}

/**
 * The estimate by `input`, which differs from the estimate's own in standard deviations alone: one step of Gauss-Newton from where it is. How likely all
 * of it is, to first order: the density of what was read where the told values and their errors are expected (C. M. Bishop, Pattern Recognition and
 * Machine Learning, 2006, section 3.5: the evidence of a linear model), but for a factor that all inputs share.
 */
export function toldOtherwise(built: AsBuilt, input: AsBuiltInput): ToldOtherwise {
	const unknowns = retold(built, input);
	const units = unknownScales(unknowns, input.piece);
	const rows = built.slopes.map((row, i) => row.map((slope, k) => (slope * units[k]!) / input.readings[i]!.sd));
	const residuals = built.misses.map((miss, i) => -miss / input.readings[i]!.sd);
	const drawnTo = unknowns.map(({ told }, k) => (told ? (told.value - built.mean[k]!) / units[k]! : null));
	const from = units.map(() => 0);
	const { matrix, gradient } = normal({ jacobian: () => rows, drawnTo }, from, residuals);
	const lower = cholesky(matrix, 1);
	const step = solvedBy(
		lower,
		gradient.map((slope) => -slope),
	);
	const squares = 2 * costAt({ drawnTo }, from, residuals) + dot(gradient, step);
	const spreads = lower.map((line, k) => line[k]!).concat(input.readings.map(({ sd }) => sd));
	return {
		built: {
			...built,
			unknowns,
			mean: built.mean.map((mean, k) => mean + step[k]! * units[k]!),
			covariance: inverseBy(lower).map((row, i) => row.map((value, j) => value * units[i]! * units[j]!)),
		},
		likely: -0.5 * squares - spreads.reduce((sum, spread) => sum + Math.log(spread), 0),
	};
}

/** What was taken to be told wrong stays as much looser than told as it was. */
function retold(built: AsBuilt, input: AsBuiltInput): AsBuiltUnknown[] {
	const before = asBuiltUnknowns(built.input);
	return asBuiltUnknowns(input).map(({ told: now }, k) => {
		const unknown = built.unknowns[k]!;
		const was = before[k]!.told;
		if (!unknown.told || !now || !was) return unknown;
		const looser = Math.max(0, unknown.told.sd ** 2 - was.sd ** 2);
		return {
			...unknown,
			told: { ...unknown.told, sd: Math.sqrt(now.sd ** 2 + looser) },
		};
	});
}
