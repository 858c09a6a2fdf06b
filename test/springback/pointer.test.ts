import { describe, expect, it } from 'vitest';
import type { Gaussian } from '../../src/maths/gaussian.ts';
import { ofLogOdds } from '../../src/maths/scalar.ts';
import { filterPrior, made, newBend, newSeat, newTube, pull, reach } from '../../src/springback/filter.ts';
import { ANGLE, LAG, SEAT } from '../../src/springback/model.ts';
import { dialSet, eitherOf, FEW_SET, settingOdds } from '../../src/springback/pointer.ts';
import { observe } from '../../src/springback/reading.ts';
import { draws } from '../helpers/shop/plain-shop.ts';

const short = newSeat(observe(pull(newBend(newTube(filterPrior(0.021))), 60, 60), 'angle', 52, { readings: 2 }));

const variance = ({ cov }: Gaussian, row: readonly number[]) =>
	row.reduce((sum, a, i) => sum + row.reduce((inner, b, j) => inner + a * b * cov[i]![j]!, 0), 0);
const rowOf = (...places: number[]) => short.mean.map((_, i) => (places.includes(i) ? 1 : 0));

describe('a dial that was set', () => {
	const set = dialSet(short, 53, 0.02);

	it('shows what it was set to, but for the setting and the rounding', () => {
		expect(set.mean[LAG]! + set.mean[ANGLE]! + set.mean[SEAT]!).toBeCloseTo(53, 12);
		expect(variance(set, rowOf(LAG, ANGLE, SEAT))).toBeCloseTo(0.1 ** 2 + 0.02, 12);
	});

	it('tells nothing of lag and angle', () => {
		for (const place of [LAG, ANGLE]) {
			expect(set.mean[place]).toBe(short.mean[place]);
			expect(variance(set, rowOf(place))).toBe(variance(short, rowOf(place)));
		}
	});

	it('is off by whatever was wrong with lag and angle', () => {
		expect(variance(set, rowOf(SEAT))).toBeCloseTo(variance(short, rowOf(LAG, ANGLE)) + 0.1 ** 2 + 0.02, 12);
	});
});

describe('either of two', () => {
	it('has the moments of a mixture: law of total variance, drawn as well', () => {
		const a = {
			mean: [1, 0],
			cov: [
				[0.5, 0.1],
				[0.1, 0.4],
			],
		};
		const b = {
			mean: [-1, 2],
			cov: [
				[0.2, 0],
				[0, 0.3],
			],
		};
		const both = eitherOf(a, b, 0.3);
		const draw = draws(11);
		let [n, sum, square, product] = [200_000, 0, 0, 0];
		let second = 0;
		for (let i = 0; i < n; i++) {
			const first = draw.uniform(0, 1) < 0.3;
			const [z, y] = [draw.normal(0, 1), draw.normal(0, 1)];
			const x = first ? 1 + Math.sqrt(0.5) * z : -1 + Math.sqrt(0.2) * z;
			const w = first ? (0.1 / Math.sqrt(0.5)) * z + Math.sqrt(0.4 - 0.02) * y : 2 + Math.sqrt(0.3) * y;
			sum += x / n;
			second += w / n;
			square += (x * x) / n;
			product += (x * w) / n;
		}
		expect(both.mean[0]).toBeCloseTo(sum, 1);
		expect(Math.abs(both.cov[0]![0]! - (square - sum * sum))).toBeLessThan(0.01);
		expect(Math.abs(both.cov[0]![1]! - (product - sum * second))).toBeLessThan(0.01);
	});
});

describe('hands', () => {
	// Of dials that are read a third stand where they were wanted by chance.
	const oddsAfter = (before: number, straight: boolean, ...told: boolean[]) =>
		told.reduce((odds, asWanted) => settingOdds(odds, { asWanted, chance: 1 / 3, straight }), before);

	it('that read are told from hands that set within a few readings', () => {
		expect(ofLogOdds(oddsAfter(0, false, true, true, true))).toBeGreaterThan(0.95);
		expect(ofLogOdds(oddsAfter(0, true, false))).toBeLessThan(0.05);
		expect(ofLogOdds(oddsAfter(0, true, false, true, false))).toBeLessThan(0.02);
	});

	it('that set it on a bent tube, too, do not pass for hands that read after one wrong number', () => {
		expect(oddsAfter(FEW_SET, false, false)).toBe(FEW_SET);
		expect(oddsAfter(0, false, false)).toBe(FEW_SET);
		expect(oddsAfter(6, false, false)).toBeGreaterThan(0);
		expect(oddsAfter(FEW_SET, false, false, true, true, true)).toBeGreaterThan(0);
		// Nor does it make hands that are known to read seem any other.
		expect(oddsAfter(-5, false, false)).toBe(-5);
	});

	it('are never thought to set it by what they do with a straight tube alone', () => {
		expect(oddsAfter(FEW_SET, true, true)).toBeGreaterThan(FEW_SET);
		expect(ofLogOdds(oddsAfter(FEW_SET, true, ...new Array<boolean>(50).fill(true)))).toBeLessThan(0.3);
		expect(oddsAfter(3, true, true)).toBe(3);
		const straight = newBend(newTube(filterPrior(0.021)));
		expect(observe(straight, 'pointer', 0).setting).toBeGreaterThan(FEW_SET);
		expect(observe(straight, 'pointer', 0.5).setting).toBeLessThan(FEW_SET);
	});

	it('that set the dial where it was wanted make nothing sure', () => {
		const wanted = short.mean[LAG]! + short.mean[ANGLE]!;
		const told = observe({ ...short, setting: 6 }, 'pointer', wanted);
		expect(made(told).sd).toBeGreaterThan(0.99 * made(short).sd);
		// And the next pull is known no better than the lag is, which nothing has told yet.
		expect(reach(told, 66).variance).toBeGreaterThan(reach(short, 66).variance);
	});

	it('that read it are believed', () => {
		const wanted = short.mean[LAG]! + short.mean[ANGLE]!;
		const told = observe({ ...short, setting: -6 }, 'pointer', wanted);
		expect(told.cov[LAG]![LAG]).toBeLessThan(0.5 * short.cov[LAG]![LAG]!);
	});

	it('that set it with a straight tube, too, tell nothing of how seats and dials scatter', () => {
		const straight = newBend(newTube(short));
		const dialAfter = (setting: number, shown: number) => observe({ ...straight, setting }, 'pointer', shown).scatter;
		expect(dialAfter(6, 0)).toEqual(straight.scatter);
		expect(newSeat(observe({ ...straight, setting: 6 }, 'pointer', 0)).scatter).toEqual(straight.scatter);
		// Those that read it do, and a dial that stands elsewhere was read.
		expect(dialAfter(-6, 0).dial.count).toBeGreaterThan(straight.scatter.dial.count);
		expect(dialAfter(6, 0.5).dial.count).toBeGreaterThan(straight.scatter.dial.count);
	});
});
