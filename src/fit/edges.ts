import { ofLast, type Problem } from '../maths/least-squares.ts';
import { sumOf } from '../maths/list.ts';
import type { Posed } from './correction-input.ts';
import { partCount } from './measure-parts.ts';

/** From this part of its tolerance on a thing weighs more, since the bends to come err as well. */
const FROM = 0.6;

/**
 * What a whole tolerance beyond that counts as, in residuals. Dearer, more tubes are brought inside, but by contortions: a bend is moved by degrees to
 * make a miss less by hundredths, and is moved by other degrees where a tenth of a degree more was measured.
 */
const WEIGHT = 2.5;

/**
 * So far beyond that, in tolerances, a corner pulls as hard as it ever does: end and checks give up nothing more for one that lies far from its place
 * whatever is chosen.
 */
const FULL_PULL = 0.25;

/** Rows whose root of squares is how far one thing is off, what part of its tolerance their unit is, from where on it pulls no harder, and its weight. */
export interface OffRows {
	rows: readonly number[];
	unit: number;
	fullPull: number;
	weight: number;
}

/**
 * The problem with a row more for each row of something near the edge of its tolerance or beyond. They are 0 up to there. Then the sum of their squares
 * grows as the square of what is too much; a corner's, from `FULL_PULL` on, in proportion to it (P. J. Huber, Robust Estimation of a Location Parameter,
 * 1964, from memory). It stays one problem whose cost has no step in its slope, so that what is found follows what was measured without a jump. With
 * one row for each thing, its length alone, the solver took 35 steps instead of 4: what is moved sideways gets further off too, which the slope of
 * the length does not show.
 */
export function edged(problem: Problem, input: Posed): Problem {
	const things = offRowsOf(input);
	if (things.length === 0) return problem;
	const residuals = ofLast(problem.residuals);
	return {
		...problem,
		residuals: (x) => {
			const found = residuals(x);
			return [...found, ...things.flatMap((thing) => tooNear(found, thing))];
		},
		jacobian: (x) => {
			const found = residuals(x);
			const slopes = problem.jacobian(x);
			return [...slopes, ...things.flatMap((thing) => slopesOfTooNear(found, slopes, thing))];
		},
	};
}

/** By the order of the rows of `posed`. */
export function offRowsOf({ tolerance, measures, corners, made, edges }: Posed): OffRows[] {
	if (edges === undefined) return [];
	const free = corners?.tolerances.slice(made) ?? [];
	let next = 6;
	const ofMeasures = measures.map((measure) => Array.from({ length: partCount(measure) }, () => next++));
	const firstCorner = next;
	const fullPull = Number.POSITIVE_INFINITY;
	const weight = edges.weight ?? WEIGHT;
	return [
		{ rows: [0, 1, 2], unit: tolerance.position / edges.shape, fullPull, weight },
		{ rows: [3, 4, 5], unit: tolerance.direction / edges.turn, fullPull, weight },
		...measures.map((measure, i) => ({
			rows: ofMeasures[i]!,
			unit: measure.tolerance / edges.measures[i]!,
			fullPull,
			weight,
		})),
		...free.map((corner, k) => ({
			rows: [0, 1, 2].map((i) => firstCorner + 3 * k + i),
			unit: corner / edges.shape,
			fullPull: FULL_PULL,
			weight,
		})),
	];
}

const lengthOf = (found: readonly number[], { rows }: OffRows) => Math.hypot(...rows.map((row) => found[row]!));

/** What so much off adds as one residual, and that residual's slopes: along the way it is off, and across it those that the cost curves by. */
function pullOf(
	{ unit, fullPull, weight }: OffRows,
	off: number,
): { residual: number; along: number; across: number } | null {
	const beyond = unit * off - FROM;
	if (beyond <= 0) return null;
	const force = Math.min(beyond, fullPull);
	const residual = Math.sqrt(force * (2 * beyond - force));
	return {
		residual: weight * residual,
		along: (weight * unit * force) / residual,
		across: weight * Math.sqrt((force * unit) / off),
	};
}

function tooNear(found: readonly number[], thing: OffRows): number[] {
	const off = lengthOf(found, thing);
	const pull = pullOf(thing, off);
	return thing.rows.map((row) => (pull === null ? 0 : (pull.residual * found[row]!) / off));
}

function slopesOfTooNear(found: readonly number[], slopes: readonly number[][], thing: OffRows): number[][] {
	const off = lengthOf(found, thing);
	const pull = pullOf(thing, off);
	const own = thing.rows.map((row) => slopes[row]!);
	if (pull === null) return own.map((row) => row.map(() => 0));
	const { along, across } = pull;
	const way = thing.rows.map((row) => found[row]! / off);
	const onWay = own[0]!.map((_, k) => sumOf(own.map((row, i) => way[i]! * row[k]!)));
	return own.map((row, i) => row.map((slope, k) => across * slope + (along - across) * way[i]! * onWay[k]!));
}
