import fc from 'fast-check';
import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { describe, expect, test } from 'vitest';
import type { CorrectionInput } from '../../src/fit/correct.ts';
import { posed, shapeUnknowns } from '../../src/fit/problem.ts';
import { scales } from '../../src/fit/scales.ts';
import { type Problem, solve } from '../../src/maths/least-squares.ts';
import { corners, shapeEnd } from '../../src/tube/frames.ts';
import type { Units } from '../../src/tube/job.ts';
import type { Shape } from '../../src/tube/shape.ts';
import { anyTube } from '../helpers/shop/tubes.ts';
import { INCH } from '../helpers/shop/twin.ts';

const squares = (r: readonly number[]) => r.reduce((sum, e) => sum + e * e, 0) / 2;

/** A correction of a tube whose first bend came out wrong, without any bound. */
function unbounded(
	input: Pick<CorrectionInput, 'shape' | 'nominal' | 'made' | 'corners'>,
	units: Units = 'mm',
): { problem: Problem; start: number[] } {
	const open = (list: readonly unknown[]) => list.map(() => [-Infinity, Infinity] as const);
	const correction: CorrectionInput = {
		...input,
		...scales(units),
		goal: shapeEnd(input.nominal),
		measures: [],
		bounds: { straights: open(input.shape.straights), angles: open(input.shape.bends) },
	};
	const unknowns = shapeUnknowns(correction);
	return { problem: posed(correction, unknowns), start: unknowns.map((u) => u.nominal) };
}

/** The same least squares by ml-levenberg-marquardt 5.1, an independent implementation: the residuals as a curve against 0. */
function independent(problem: Problem, start: readonly number[]): number {
	const whole = (x: readonly number[]) => [
		...problem.residuals(x),
		...x.map((value, i) => value - problem.drawnTo![i]!),
	];
	const count = whole(start).length;
	const indices = Array.from({ length: count }, (_, i) => i);
	const got = levenbergMarquardt(
		{ x: indices, y: indices.map(() => 0) },
		(x) => {
			const residuals = whole(x);
			return (i) => residuals[i]!;
		},
		{
			initialValues: [...start],
			centralDifference: true,
			gradientDifference: 1e-5,
			damping: 1e-7,
			maxIterations: 200,
			errorTolerance: 1e-14,
		},
	);
	return squares(whole(got.parameterValues));
}

describe('unbounded least squares', () => {
	test('comes to the same cost as ml-levenberg-marquardt on corrections of random tubes', () => {
		const tubes = anyTube({ bends: { min: 2, max: 6 } });
		fc.assert(
			fc.property(tubes, fc.double({ min: -1.5, max: 1.5, noNaN: true }), (nominal, error) => {
				const [first, ...rest] = nominal.bends;
				const shape = { ...nominal, bends: [{ ...first!, angle: first!.angle + error }, ...rest] };
				const { problem, start } = unbounded({ shape, nominal, made: 1 });
				const ours = solve(problem, start);
				expect(ours.converged).toBe(true);
				expect(Math.abs(ours.cost - independent(problem, start))).toBeLessThan(1e-9 * Math.max(1, ours.cost));
			}),
			{ numRuns: 25, seed: 7 },
		);
	});

	test('comes by the same steps to the same, whatever rounding makes of the lengths', () => {
		// Only the last bend is left, so that much is missed: there costs differ by less than their rounding long before the slope is flat.
		const posedIn = (units: Units, nominal: Shape, error: number) => {
			const made = nominal.bends.length - 1;
			const bends = nominal.bends.map((bend, i) => (i < made ? { ...bend, angle: bend.angle + error } : bend));
			const places = corners(nominal).slice(1, -1);
			const tolerances = places.map(() => (units === 'mm' ? INCH : 1) / 16);
			return unbounded({ shape: { ...nominal, bends }, nominal, made, corners: { places, tolerances } }, units);
		};
		const inInches = ({ straights, bends }: Shape): Shape => ({
			straights: straights.map((length) => length / INCH),
			bends: bends.map((bend) => ({ ...bend, radius: bend.radius / INCH })),
		});
		const tubes = anyTube({ bends: { min: 3, max: 6 } });
		fc.assert(
			fc.property(tubes, fc.double({ min: 1, max: 5, noNaN: true }), (nominal, error) => {
				const [mm, inches] = [posedIn('mm', nominal, error), posedIn('in', inInches(nominal), error)];
				const [one, other] = [solve(mm.problem, mm.start), solve(inches.problem, inches.start)];
				expect(other.steps).toBe(one.steps);
				for (const [i, value] of one.x.entries()) expect(Math.abs(other.x[i]! - value)).toBeLessThan(1e-9);
			}),
			{ numRuns: 60, seed: 8 },
		);
	});

	test('walks the curved valley of Rosenbrock (1960) to its bottom at (1, 1)', () => {
		// Source: H. H. Rosenbrock, The Computer Journal 3 (1960) 175-184: minimum 0 at (1, 1), customary start (-1.2, 1).
		const valley: Problem = {
			residuals: ([x, y]) => [10 * (y! - x! * x!), 1 - x!],
			jacobian: ([x]) => [
				[-20 * x!, 10],
				[-1, 0],
			],
			lower: [-Infinity, -Infinity],
			upper: [Infinity, Infinity],
		};
		const { x, cost, converged } = solve(valley, [-1.2, 1]);
		expect(converged).toBe(true);
		expect(cost).toBeLessThan(1e-17);
		expect(x[0]).toBeCloseTo(1, 7);
		expect(x[1]).toBeCloseTo(1, 7);
	});
});

describe('bounded least squares', () => {
	/** A straight-line problem: r = A x - b. */
	const linear = (a: number[][], b: number[], lower: number[], upper: number[]): Problem => ({
		residuals: (x) => a.map((row, k) => row.reduce((sum, v, i) => sum + v * x[i]!, -b[k]!)),
		jacobian: () => a,
		lower,
		upper,
	});

	test('ends where no bound and no slope leaves a way down', () => {
		const number = fc.double({ min: -3, max: 3, noNaN: true });
		const size = 4;
		const rows = fc.array(fc.array(number, { minLength: size, maxLength: size }), { minLength: 6, maxLength: 6 });
		fc.assert(
			fc.property(
				rows,
				fc.array(number, { minLength: 6, maxLength: 6 }),
				fc.array(number, { minLength: size, maxLength: size }),
				(a, b, start) => {
					const damped = [
						...a,
						...Array.from({ length: size }, (_, k) => Array.from({ length: size }, (_, i) => (i === k ? 0.1 : 0))),
					];
					const problem = linear(damped, [...b, 0, 0, 0, 0], [-0.5, -0.5, -0.5, -0.5], [0.5, 0.5, 0.5, 0.5]);
					const { x, residuals, converged } = solve(problem, start);
					expect(converged).toBe(true);
					for (let i = 0; i < size; i++) {
						const slope = damped.reduce((sum, row, k) => sum + row[i]! * residuals[k]!, 0);
						if (x[i]! > -0.5) expect(slope).toBeLessThan(1e-6);
						if (x[i]! < 0.5) expect(slope).toBeGreaterThan(-1e-6);
					}
				},
			),
			{ numRuns: 300 },
		);
	});

	test('names the bound that holds a variable', () => {
		// By hand: the nearest point of the box to (3, -2, 0.25) is its corner side (1, -1, 0.25).
		const identity = [
			[1, 0, 0],
			[0, 1, 0],
			[0, 0, 1],
		];
		const { x, held, cost } = solve(linear(identity, [3, -2, 0.25], [-1, -1, -1], [1, 1, 1]), [0, 0, 0]);
		expect(x).toEqual([1, -1, expect.closeTo(0.25, 8)]);
		expect(held).toEqual(['high', 'low', null]);
		expect(cost).toBeCloseTo(2.5, 12);
	});

	test('a variable that no residual sees stays where it was', () => {
		const { x, converged } = solve(linear([[1, 0]], [2], [-9, -9], [9, 9]), [0, 4]);
		expect(x[0]).toBeCloseTo(2, 12);
		expect(x[1]).toBe(4);
		expect(converged).toBe(true);
	});

	test('refuses a start without a finite cost, and steps around a hole in the residuals', () => {
		const holed: Problem = {
			residuals: ([x]) => [x! > 1 ? Number.NaN : x! - 4],
			jacobian: () => [[1]],
			lower: [-9],
			upper: [9],
		};
		expect(() => solve(holed, [2])).toThrow('every residual is a finite number');
		const { x, cost } = solve(holed, [0]);
		expect(x[0]).toBeLessThanOrEqual(1);
		expect(cost).toBeLessThan(8);
	});
});
