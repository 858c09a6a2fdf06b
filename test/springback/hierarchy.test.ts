import { describe, expect, it } from 'vitest';
import { type Member, posterior } from '../../src/springback/hierarchy.ts';

/**
 * Effects of coaching in eight schools, and their standard errors. Source: D. B. Rubin, "Estimation in parallel randomized
 * experiments", Journal of Educational Statistics 6 (1981) 377-401; rounded in Gelman et al., Bayesian Data Analysis, sec. 5.5.
 */
const RUBIN = {
	effect: [28.39, 7.94, -2.75, 6.82, -0.64, 0.63, 18.01, 12.16],
	error: [14.9, 10.2, 16.3, 11, 9.4, 11.4, 10.4, 17.6],
};
/** The mean of all schools is not known beforehand: as wide as the digits bear. */
const FLAT = 1e8;

function schools({ effect, error }: typeof RUBIN): Member<number>[] {
	return effect.map((y, j) => {
		const precision = 1 / error[j]! ** 2;
		return { who: j, mean: [0], told: { information: [[precision]], vector: [y * precision] } };
	});
}

/** A school's effect is the mean of all plus its own of standard deviation `tau`. */
const kinship = (tau: number) => (a: number, b: number) => [[FLAT + (a === b ? tau ** 2 : 0)]];

/** The conditional posterior given tau, by the formulas (5.17) and (5.20) of Bayesian Data Analysis (numbers from memory). */
function byFormula(j: number, tau: number) {
	const weights = RUBIN.error.map((sd) => 1 / (sd ** 2 + tau ** 2));
	const total = weights.reduce((sum, w) => sum + w, 0);
	const center = weights.reduce((sum, w, i) => sum + w * RUBIN.effect[i]!, 0) / total;
	const [own, common] = [1 / RUBIN.error[j]! ** 2, 1 / tau ** 2];
	return {
		mean: (own * RUBIN.effect[j]! + common * center) / (own + common),
		variance: 1 / (own + common) + (common / (own + common)) ** 2 / total,
	};
}

describe('the posterior of members that are kin', () => {
	it.each([1, 5, 10, 25])('is that of the eight schools with tau %d', (tau) => {
		for (let j = 0; j < 8; j++) {
			const { mean, cov } = posterior({ who: j, mean: [0] }, schools(RUBIN), kinship(tau));
			const wanted = byFormula(j, tau);
			expect(mean[0]).toBeCloseTo(wanted.mean, 4);
			expect(cov[0]![0]).toBeCloseTo(wanted.variance, 4);
		}
	});

	it('pools the schools where they do not differ', () => {
		const { mean, cov } = posterior({ who: 0, mean: [0] }, schools(RUBIN), kinship(0));
		// Source: Gelman et al., Bayesian Data Analysis (1st and 2nd ed.), sec. 5.5: pooled estimate 7.9, variance 17.4
		expect(mean[0]!.toFixed(1)).toBe('7.9');
		expect(cov[0]![0]!.toFixed(1)).toBe('17.4');
	});

	it('leaves them apart where they have nothing in common', () => {
		const { mean, cov } = posterior({ who: 6, mean: [0] }, schools(RUBIN), (a, b) => [[a === b ? FLAT : 0]]);
		expect(mean[0]).toBeCloseTo(18.01, 4);
		expect(Math.sqrt(cov[0]![0]!)).toBeCloseTo(10.4, 4);
	});

	it('tells a school that was not read what the others have in common', () => {
		const { mean, cov } = posterior({ who: 8, mean: [0] }, schools(RUBIN), kinship(10));
		const weights = RUBIN.error.map((sd) => 1 / (sd ** 2 + 100));
		const total = weights.reduce((sum, w) => sum + w, 0);
		expect(mean[0]).toBeCloseTo(weights.reduce((sum, w, i) => sum + w * RUBIN.effect[i]!, 0) / total, 4);
		expect(cov[0]![0]).toBeCloseTo(100 + 1 / total, 3);
	});

	it('reads a vector along one direction only, and knows no more across it', () => {
		const cov = [
			[2, 0.5],
			[0.5, 1],
		];
		// One reading of x + y with a variance of 1: 4.
		const told = {
			information: [
				[1, 1],
				[1, 1],
			],
			vector: [4, 4],
		};
		const got = posterior({ who: 0, mean: [1, 1] }, [{ who: 0, mean: [1, 1], told }], () => cov);
		// Kalman's update by hand: c = (2.5, 1.5), S = 5, miss 2.
		expect(got.mean[0]).toBeCloseTo(2, 12);
		expect(got.mean[1]).toBeCloseTo(1.6, 12);
		expect(got.cov.flat().map((x) => Number(x.toFixed(12)))).toEqual([0.75, -0.25, -0.25, 0.55]);
	});
});
