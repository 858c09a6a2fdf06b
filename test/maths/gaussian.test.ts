import { describe, expect, it } from 'vitest';
import { type Gaussian, maxMoments, replaced, surprise, updated } from '../../src/maths/gaussian.ts';
import { draws } from '../helpers/shop/plain-shop.ts';

// Source: NIST StRD, Norris (linear regression, 36 observations), certified values.
const NORRIS_X = [
	0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9, 338.0, 447.5, 11.6,
	556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5,
];
const NORRIS_Y = [
	0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3, 448.9, 10.8,
	557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2,
];
const CERTIFIED = {
	b0: -0.262323073774029,
	b1: 1.00211681802045,
	sd0: 0.232818234301152,
	sd1: 0.429796848199937e-3,
	residual: 0.884796396144373,
};

function lineThrough(order: number[]): Gaussian {
	const wide: Gaussian = {
		mean: [0, 0],
		cov: [
			[1e8, 0],
			[0, 1e4],
		],
	};
	const variance = CERTIFIED.residual ** 2;
	return order.reduce((g, i) => updated(g, [1, NORRIS_X[i]!], NORRIS_Y[i]!, variance), wide);
}

describe('updated', () => {
	const inOrder = NORRIS_X.map((_, i) => i);

	it('fitted row by row from a wide prior is the certified line, errors included', () => {
		const { mean, cov } = lineThrough(inOrder);
		expect(mean[0]! / CERTIFIED.b0).toBeCloseTo(1, 6);
		expect(mean[1]! / CERTIFIED.b1).toBeCloseTo(1, 9);
		expect(Math.sqrt(cov[0]![0]!) / CERTIFIED.sd0).toBeCloseTo(1, 6);
		expect(Math.sqrt(cov[1]![1]!) / CERTIFIED.sd1).toBeCloseTo(1, 6);
	});

	it('does not depend on the order of the rows', () => {
		const [forth, back] = [lineThrough(inOrder), lineThrough([...inOrder].reverse())];
		expect(forth.mean[0]).toBeCloseTo(back.mean[0]!, 6);
		expect(forth.mean[1]).toBeCloseTo(back.mean[1]!, 9);
	});

	it('is the scalar Kalman filter of a building measured ten times', () => {
		// Source: kalmanfilter.net, "height of a building": the measurements as published, sd 5 m; prior 60 m, variance 225 and the
		// results from memory, recomputed.
		const measured = [48.54, 47.11, 55.01, 55.15, 49.89, 40.85, 46.72, 50.05, 51.27, 49.95];
		const estimates = [49.686, 48.466, 50.569, 51.684, 51.333, 49.617, 49.21, 49.313, 49.528, 49.57];
		const variances = [22.5, 11.842, 8.036, 6.081, 4.891, 4.091, 3.516, 3.082, 2.744, 2.473];
		let g: Gaussian = { mean: [60], cov: [[225]] };
		measured.forEach((value, i) => {
			g = updated(g, [1], value, 25);
			expect(g.mean[0]).toBeCloseTo(estimates[i]!, 2);
			expect(g.cov[0]![0]).toBeCloseTo(variances[i]!, 2);
		});
	});

	it('with a weight below 1 has the moments of reading mixed with not reading', () => {
		const before: Gaussian = {
			mean: [1, 2],
			cov: [
				[4, 1],
				[1, 3],
			],
		};
		const weight = 0.3;
		const full = updated(before, [1, 0], 5, 2);
		const part = updated(before, [1, 0], 5, 2, weight);
		for (const i of [0, 1]) {
			const mean = weight * full.mean[i]! + (1 - weight) * before.mean[i]!;
			expect(part.mean[i]).toBeCloseTo(mean, 12);
			const within = weight * full.cov[i]![i]! + (1 - weight) * before.cov[i]![i]!;
			const between = weight * (full.mean[i]! - mean) ** 2 + (1 - weight) * (before.mean[i]! - mean) ** 2;
			expect(part.cov[i]![i]).toBeCloseTo(within + between, 12);
		}
	});
});

describe('replaced', () => {
	it('forgets one unknown and leaves what the others know', () => {
		const g: Gaussian = {
			mean: [1, 2],
			cov: [
				[4, 1],
				[1, 3],
			],
		};
		expect(replaced(g, 1, 9, 5)).toEqual({
			mean: [1, 9],
			cov: [
				[4, 0],
				[0, 5],
			],
		});
		expect(surprise(g, [1, -1], 0, 1)).toEqual({ miss: 1, variance: 4 + 3 - 2 + 1 });
	});
});

describe('maxMoments', () => {
	// Clark's moments are exact for normal variables: 200 000 seeded samples must show them within sampling error.
	it.each([
		[90, 0.5, 89.8, 0.3, 0.1],
		[30.5, 0.4, 31, 0.25, 0.05],
		[0.2, 0.6, 0, 0, 0],
		[60, 1.2, 58, 1, -0.4],
	])('of %s (sd %s) and %s (sd %s) are those of samples', (meanA, sdA, meanB, sdB, covariance) => {
		const draw = draws(7);
		const n = 200_000;
		const slope = covariance / sdA ** 2;
		const rest = Math.sqrt(Math.max(0, sdB ** 2 - slope * covariance));
		let [sum, squares, wins, cross] = [0, 0, 0, 0];
		for (let i = 0; i < n; i++) {
			const a = draw.normal(0, sdA);
			const b = meanB - meanA + slope * a + draw.normal(0, rest);
			const max = Math.max(a, b);
			sum += max;
			squares += max * max;
			cross += max * a;
			wins += a > b ? 1 : 0;
		}
		const max = maxMoments({ mean: meanA, variance: sdA ** 2 }, { mean: meanB, variance: sdB ** 2 }, covariance);
		const mean = sum / n;
		expect(Math.abs(max.mean - meanA - mean)).toBeLessThan((4 * sdA) / Math.sqrt(n) + 1e-4);
		expect(Math.abs(max.variance / (squares / n - mean ** 2) - 1)).toBeLessThan(0.015);
		expect(Math.abs(max.first - wins / n)).toBeLessThan(0.005);
		const withA = sdA ** 2 * max.first + covariance * (1 - max.first);
		expect(Math.abs(withA - cross / n)).toBeLessThan(0.02 * sdA ** 2);
	});

	it('of two that always differ alike is the larger', () => {
		const same = maxMoments({ mean: 5, variance: 2 }, { mean: 4, variance: 2 }, 2);
		expect(same).toEqual({ mean: 5, variance: 2, first: 1 });
	});
});
