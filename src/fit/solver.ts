/**
 * Bounded weighted least squares: Levenberg-Marquardt (Marquardt's scaling by the diagonal, Nielsen's damping rule) on the
 * variables that no bound holds, each trial step projected into the bounds.
 */
export interface Problem {
	/** Residuals, each in units of what may be. A value that is not finite makes a trial step refused. */
	residuals(x: readonly number[]): number[];
	/** One row a residual, one column a variable. */
	jacobian(x: readonly number[]): number[][];
	lower: readonly number[];
	upper: readonly number[];
}

export type Held = 'low' | 'high' | null;

export interface Solution {
	x: number[];
	residuals: number[];
	/** Half the sum of squares. */
	cost: number;
	/** For each variable the bound that the cost still pushes it against. */
	held: Held[];
	/** False when the step limit came first. */
	converged: boolean;
	steps: number;
}

const FIRST_DAMPING = 1e-8;
const LARGEST_DAMPING = 1e20;
const FLAT = 1e-9;
const SMALLEST_STEP = 1e-12;
const MOST_STEPS = 300;

const halfSquares = (r: readonly number[]): number => {
	let sum = 0;
	for (const e of r) sum += e * e;
	return sum / 2;
};

/** J'J and J'r. */
function normal(jacobian: readonly (readonly number[])[], residuals: readonly number[], n: number) {
	const matrix = Array.from({ length: n }, () => new Array<number>(n).fill(0));
	const gradient = new Array<number>(n).fill(0);
	for (const [k, row] of jacobian.entries()) {
		for (let i = 0; i < n; i++) {
			const a = row[i]!;
			if (a === 0) continue;
			gradient[i]! += a * residuals[k]!;
			const line = matrix[i]!;
			for (let j = 0; j < n; j++) line[j]! += a * row[j]!;
		}
	}
	return { matrix, gradient };
}

/** Solves a symmetric positive definite system by Cholesky's factors; null when it is not positive definite. */
export function solveCholesky(a: readonly (readonly number[])[], b: readonly number[]): number[] | null {
	const n = b.length;
	const factor: number[][] = [];
	const x = [...b];
	for (let i = 0; i < n; i++) {
		const row = [...a[i]!];
		for (let j = 0; j < i; j++) {
			for (let k = 0; k < j; k++) row[j]! -= row[k]! * factor[j]![k]!;
			row[j]! /= factor[j]![j]!;
		}
		for (let k = 0; k < i; k++) row[i]! -= row[k]! ** 2;
		if (!(row[i]! > 0)) return null;
		row[i] = Math.sqrt(row[i]!);
		factor.push(row);
		for (let k = 0; k < i; k++) x[i]! -= row[k]! * x[k]!;
		x[i]! /= row[i]!;
	}
	for (let i = n - 1; i >= 0; i--) {
		for (let k = i + 1; k < n; k++) x[i]! -= factor[k]![i]! * x[k]!;
		x[i]! /= factor[i]![i]!;
	}
	return x;
}

/** The damped step for the variables that are not held; null when the damping is too small for it to exist. */
function step(
	matrix: readonly (readonly number[])[],
	gradient: readonly number[],
	free: readonly number[],
	damping: number,
) {
	const damped = free.map((i) => free.map((j) => matrix[i]![j]! * (i === j ? 1 + damping : 1)));
	return solveCholesky(
		damped,
		free.map((i) => -gradient[i]!),
	);
}

const clamp = (value: number, low: number, high: number) => Math.min(Math.max(value, low), high);

function heldBy(x: readonly number[], gradient: readonly number[], { lower, upper }: Problem): Held[] {
	return x.map((value, i) => {
		if (value <= lower[i]! && gradient[i]! >= 0) return 'low';
		return value >= upper[i]! && gradient[i]! <= 0 ? 'high' : null;
	});
}

/** What the local quadratic says a step gains. */
function predictedGain(
	matrix: readonly (readonly number[])[],
	gradient: readonly number[],
	s: readonly number[],
): number {
	let gain = 0;
	for (const [i, si] of s.entries()) {
		let row = gradient[i]!;
		for (const [j, sj] of s.entries()) row += 0.5 * matrix[i]![j]! * sj;
		gain -= si * row;
	}
	return gain;
}

/**
 * Minimises half the sum of squared residuals within the bounds, from `start` (first moved into them). Never ends above the cost
 * it started from. Variables should be of order one: the smallest step is absolute.
 */
export function solve(problem: Problem, start: readonly number[]): Solution {
	const { lower, upper } = problem;
	let x = start.map((value, i) => clamp(value, lower[i]!, upper[i]!));
	let residuals = problem.residuals(x);
	let cost = halfSquares(residuals);
	if (!Number.isFinite(cost)) throw new RangeError('The solver needs a start where every residual is a finite number.');
	let damping = FIRST_DAMPING;
	let growth = 2;
	let { matrix, gradient } = normal(problem.jacobian(x), residuals, x.length);
	let held = heldBy(x, gradient, problem);
	const end = (converged: boolean, steps: number): Solution => ({ x, residuals, cost, held, converged, steps });
	for (let steps = 0; steps < MOST_STEPS; steps++) {
		const free = held.flatMap((h, i) => (h === null && matrix[i]![i]! > 0 ? [i] : []));
		const slope = Math.max(0, ...free.map((i) => Math.abs(gradient[i]!) / Math.sqrt(matrix[i]![i]!)));
		if (slope <= FLAT * Math.max(1, Math.sqrt(2 * cost))) return end(true, steps);
		const way = step(matrix, gradient, free, damping);
		if (way !== null) {
			const trial = [...x];
			for (const [k, i] of free.entries()) trial[i] = clamp(x[i]! + way[k]!, lower[i]!, upper[i]!);
			const moved = trial.map((value, i) => value - x[i]!);
			if (Math.max(...moved.map(Math.abs)) <= SMALLEST_STEP) return end(true, steps);
			const trialResiduals = problem.residuals(trial);
			const trialCost = halfSquares(trialResiduals);
			const gain = (cost - trialCost) / predictedGain(matrix, gradient, moved);
			if (trialCost < cost && gain > 0) {
				x = trial;
				residuals = trialResiduals;
				cost = trialCost;
				({ matrix, gradient } = normal(problem.jacobian(x), residuals, x.length));
				held = heldBy(x, gradient, problem);
				damping *= Math.max(1 / 3, 1 - (2 * gain - 1) ** 3);
				growth = 2;
				continue;
			}
		}
		damping *= growth;
		growth *= 2;
		if (damping > LARGEST_DAMPING) return end(true, steps);
	}
	return end(false, MOST_STEPS);
}
