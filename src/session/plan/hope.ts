/** Which tubes no weighing of what they miss brings near their limits: known before it is tried. */
import type { CorrectionInput } from '../../fit/correct.ts';
import type { Judged, Limits } from '../../fit/judged.ts';
import type { Bounds } from '../../fit/problem.ts';
import { at, sumOf } from '../../maths/list.ts';

/**
 * Where even the least largest miss is as large, nothing is given up for it: better one thing outside than all. Between that and the tolerance itself
 * the weights go part of the way, so that a little more error changes the numbers by little.
 */
export const HOPELESS = 1.4;

/** No rotation lies further from the drawing's. */
const HALF_TURN = 180;

/**
 * The most that a correction can cost where nothing is missed by more than hope allows, every free value being as far from the drawing as its bounds
 * let it: one whose least cost is above that has none of its tubes within hope, however its misses are weighed. `allowed`: the tolerance of each of its
 * measures.
 */
export function costBeyondHope(asked: CorrectionInput, limits: Limits, allowed: readonly number[]): number {
	const { made, nominal, bounds, dear, tolerance, measures, corners } = asked;
	const missed = (limit: number, unit: number) => ((HOPELESS * limit) / unit) ** 2;
	const moved = ([low, high]: Bounds, drawn: number, unit: number) =>
		(Math.max(Math.abs(low - drawn), Math.abs(high - drawn)) / unit) ** 2;
	const misses = [
		missed(limits.shape, tolerance.position),
		missed(limits.turn, tolerance.direction),
		...(corners?.tolerances.slice(made) ?? []).map((unit) => missed(limits.shape, unit)),
		...measures.map((measure, i) => missed(at(allowed, i), measure.tolerance)),
	];
	const moves = [
		...nominal.straights.map((drawn, i) => (i < made ? 0 : moved(at(bounds.straights, i), drawn, dear.straight))),
		...nominal.bends.map(({ angle }, i) =>
			i < made ? 0 : moved(at(bounds.angles, i), angle, dear.angle) + (HALF_TURN / dear.rotation) ** 2,
		),
	];
	return sumOf([...misses, ...moves]) / 2;
}

/** Whether a corner that is made lies so far off that nothing left to bend brings the tube within hope. */
export const isMadeBeyondHope = ({ off }: Judged, { made }: CorrectionInput, { shape }: Limits): boolean =>
	off.slice(0, made).some((each) => each / shape >= HOPELESS);
