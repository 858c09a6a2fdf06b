import { solveDefinite } from './cholesky.ts';
import type { Matrix } from './matrix.ts';
import { clamp } from './scalar.ts';

/**
 * Bounded weighted least squares: Levenberg-Marquardt (Marquardt's scaling by the diagonal, Nielsen's damping rule) on the
 * variables that no bound holds, each trial step projected into the bounds.
 */
export interface Problem {
	/** Residuals, each in units of what may be. A value that is not finite makes a trial step refused. */
	residuals(x: readonly number[]): number[];
	/** One row a residual, one column a variable. */
	jacobian(x: readonly number[]): number[][];
	/** What each variable is drawn to, as by one residual more of slope 1; null: a variable that nothing draws. */
	drawnTo?: readonly (number | null)[];
	lower: readonly number[];
	upper: readonly number[];
}

/** What follows from a point, kept for the last one: misses and slopes are asked for of the same point one after the other. */
export function ofLast<X, T>(of: (x: X) => T): (x: X) => T {
	let last: { x: X; found: T } | null = null;
	return (x) => {
		if (last?.x !== x) last = { x, found: of(x) };
		return last.found;
	};
}

export type AtBound = 'low' | 'high' | null;

export interface Solution {
	x: readonly number[];
	residuals: number[];
	/** Half the sum of squares, what draws the variables included. */
	cost: number;
	/** The normal matrix J'J. */
	matrix: readonly (readonly number[])[];
	/** For each variable the bound that the cost still pushes it against. */
	held: AtBound[];
	/** False when no step downhill was found, or not within the step limit, before the slope was flat. */
	converged: boolean;
	steps: number;
}

const FIRST_DAMPING = 1e-8;
const LARGEST_DAMPING = 1e20;
export const FLAT_SLOPE = 1e-8;
const SMALLEST_STEP = 1e-12;
const MOST_STEPS = 100;
/** Where a step can gain no more than this, or this part of the cost, rounding is too much of what two costs differ by: the slopes tell. */
const ROUNDED = 1e-8;

/** Half the sum of squares of the residuals at x and of what draws x. */
export function costAt(
	{ drawnTo }: Pick<Problem, 'drawnTo'>,
	x: readonly number[],
	residuals: readonly number[],
): number {
	let sum = 0;
	for (let k = 0; k < residuals.length; k++) sum += residuals[k]! ** 2;
	for (let i = 0; drawnTo && i < x.length; i++) {
		const to = drawnTo[i] ?? null;
		if (to !== null) sum += (x[i]! - to) ** 2;
	}
	return sum / 2;
}

/** J'J of rows of `n` slopes. */
export function normalMatrix(rows: Matrix, n: number): number[][] {
	const m = rows.length;
	// Column by column in one row of plain numbers: the products are most of a step's work.
	const columns = new Float64Array(n * m);
	for (let k = 0; k < m; k++) {
		const row = rows[k]!;
		for (let i = 0; i < n; i++) columns[i * m + k] = row[i]!;
	}
	const matrix: number[][] = [];
	for (let i = 0; i < n; i++) {
		const row: number[] = [];
		const own = i * m;
		for (let j = 0; j <= i; j++) {
			const other = j * m;
			let sum = 0;
			for (let k = 0; k < m; k++) sum += columns[own + k]! * columns[other + k]!;
			row.push(sum);
		}
		matrix.push(row);
	}
	for (let i = 0; i < n; i++) for (let j = i + 1; j < n; j++) matrix[i]!.push(matrix[j]![i]!);
	return matrix;
}

/** J'J and J'r, what draws the variables included. */
export function normal(
	problem: Pick<Problem, 'jacobian' | 'drawnTo'>,
	x: readonly number[],
	residuals: readonly number[],
) {
	const n = x.length;
	const rows = problem.jacobian(x);
	const matrix = normalMatrix(rows, n);
	const gradient = x.map(() => 0);
	for (const [k, row] of rows.entries()) for (let i = 0; i < n; i++) gradient[i]! += row[i]! * residuals[k]!;
	for (let i = 0; problem.drawnTo && i < n; i++) {
		const to = problem.drawnTo[i] ?? null;
		if (to === null) continue;
		matrix[i]![i]! += 1;
		gradient[i]! += x[i]! - to;
	}
	return { matrix, gradient };
}

/** A point with all that the next step is chosen from. */
interface SolverPoint {
	x: readonly number[];
	residuals: number[];
	cost: number;
	matrix: number[][];
	gradient: number[];
	held: AtBound[];
	/** The variables that may move: not held by a bound, and seen by some residual. */
	free: number[];
}

function placeAt(problem: Problem, x: readonly number[], residuals: number[]): SolverPoint {
	const { matrix, gradient } = normal(problem, x, residuals);
	const held = x.map((value, i): AtBound => {
		if (value <= problem.lower[i]! && gradient[i]! >= 0) return 'low';
		return value >= problem.upper[i]! && gradient[i]! <= 0 ? 'high' : null;
	});
	const free = held.flatMap((h, i) => (h === null && matrix[i]![i]! > 0 ? [i] : []));
	return { x, residuals, cost: costAt(problem, x, residuals), matrix, gradient, held, free };
}

/**
 * The point a damped step leads to, projected into the bounds; null when the damping is too small for a step to exist. A variable
 * that stands at a bound and would step out of it is held and the step taken without it, or the projection would spoil the step.
 */
function stepFrom(place: SolverPoint, problem: Problem, damping: number): number[] | null {
	const { x, matrix, gradient } = place;
	let free = place.free;
	for (;;) {
		const damped = free.map((i, k) => {
			const row: number[] = [];
			for (let j = 0; j < k; j++) row.push(matrix[i]![free[j]!]!);
			row.push(matrix[i]![i]! * (1 + damping));
			return row;
		});
		const way = solveDefinite(
			damped,
			free.map((i) => -gradient[i]!),
		);
		if (way === null) return null;
		const next = [...x];
		for (const [k, i] of free.entries()) next[i] = clamp(x[i]! + way[k]!, problem.lower[i]!, problem.upper[i]!);
		const stuck = free.filter((i, k) => way[k] !== 0 && next[i] === x[i]);
		if (stuck.length === 0) return next;
		free = free.filter((i) => !stuck.includes(i));
	}
}

/** What the local quadratic says the step to `next` gains. */
function predictedGain({ x, matrix, gradient }: SolverPoint, next: readonly number[]): number {
	const moved = next.map((value, i) => value - x[i]!);
	let gain = 0;
	for (let i = 0; i < moved.length; i++) {
		let curve = 0;
		for (let j = 0; j < moved.length; j++) curve += matrix[i]![j]! * moved[j]!;
		gain -= moved[i]! * (gradient[i]! + curve / 2);
	}
	return gain;
}

/** The point that a step leads to, and what it gains in parts of what the local quadratic says; null where it leads up. */
function downhillPlace(
	problem: Problem,
	from: SolverPoint,
	next: readonly number[],
): { place: SolverPoint; gain: number } | null {
	const predicted = predictedGain(from, next);
	const residuals = problem.residuals(next);
	const cost = costAt(problem, next, residuals);
	const isFine = predicted <= ROUNDED * Math.max(1, from.cost);
	if (!(predicted > 0 && Number.isFinite(cost) && (isFine || cost < from.cost))) return null;
	const place = placeAt(problem, next, residuals);
	const gain = (isFine ? fallBySlopes(from, place) : from.cost - cost) / predicted;
	return gain > 0 ? { place, gain } : null;
}

/**
 * How far the cost falls by the slopes at both ends of a step, the trapezoid rule. Near the least that is more exact than the difference of two costs: W. W.
 * Hager and H. Zhang, A New Conjugate Gradient Method with Guaranteed Descent and an Efficient Line Search (2005), section 4 (from memory).
 */
function fallBySlopes(from: SolverPoint, to: SolverPoint): number {
	let fall = 0;
	for (let i = 0; i < from.x.length; i++) fall += ((from.gradient[i]! + to.gradient[i]!) * (from.x[i]! - to.x[i]!)) / 2;
	return fall;
}

function isLevelAt({ free, gradient, matrix, cost }: SolverPoint, flat: Flatness): boolean {
	const all = Math.max(1, Math.sqrt(2 * cost));
	const none = flat(all) * all;
	return free.every((i) => Math.abs(gradient[i]!) <= none * Math.sqrt(matrix[i]![i]!));
}

/** The slope that counts as none, in parts of the residuals; `all`: the root of the sum of their squares, 1 or more. */
export type Flatness = (all: number) => number;

/**
 * Minimises half the sum of squared residuals within the bounds, from `start` (first moved into them). Never ends above the cost
 * it started from, but for rounding. Variables should be of order one: the smallest step is absolute. Throws RangeError when a residual at the start
 * is not a finite number.
 */
export function solve(problem: Problem, start: readonly number[], flat: Flatness = () => FLAT_SLOPE): Solution {
	const inside = start.map((value, i) => clamp(value, problem.lower[i]!, problem.upper[i]!));
	let place = placeAt(problem, inside, problem.residuals(inside));
	if (!Number.isFinite(place.cost))
		throw new RangeError('The solver needs a start where every residual is a finite number.');
	let damping = FIRST_DAMPING;
	let growth = 2;
	for (let steps = 0; steps < MOST_STEPS; steps++) {
		if (isLevelAt(place, flat)) return { ...place, converged: true, steps };
		if (damping > LARGEST_DAMPING) return { ...place, converged: false, steps };
		const next = stepFrom(place, problem, damping);
		if (next?.every((value, i) => Math.abs(value - place.x[i]!) <= SMALLEST_STEP))
			return { ...place, converged: true, steps };
		const down = next && downhillPlace(problem, place, next);
		if (down) {
			place = down.place;
			damping *= Math.max(1 / 3, 1 - (2 * down.gain - 1) ** 3);
			growth = 2;
		} else {
			damping *= growth;
			growth *= 2;
		}
	}
	return { ...place, converged: false, steps: MOST_STEPS };
}
