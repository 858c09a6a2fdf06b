import { describe, expect, it } from 'vitest';
import { normalCdf } from '../../src/maths/normal.ts';
import { type Band, planned, worthiest } from '../../src/springback/worth.ts';

const hands = { stopping: 0.25, settled: 0.305 };
const band: Band = { target: 60, under: 0.5, over: 0.5, risk: 0.02, dialStep: 0.5 };

/** A machine that springs back 5 degrees, known to within `sd`. */
function stopFor(change: Partial<Band> = {}, sd = 0.305, first: number | null = null): number {
	const outcome = (loaded: number) => ({ mean: loaded - 5, sd, variation: 0 });
	return worthiest(outcome, { ...band, ...change }, { angle: 0, first }, hands);
}

const targets = Array.from({ length: 50 }, (_, i) => 60 + i / 100);
const past = (stop: number, target: number, over = 0.5) => normalCdf((stop - 5 - target - over) / 0.305);

describe('the worthiest stop', () => {
	it('is a division of the dial that aims at or under the target', () => {
		for (const dialStep of [0.1, 0.25, 0.5, 1]) {
			for (const target of targets) {
				const stop = stopFor({ dialStep, target });
				expect(Math.abs(stop / dialStep - Math.round(stop / dialStep))).toBeLessThan(1e-6);
				expect(stop - 5).toBeLessThanOrEqual(target + 1e-9);
			}
		}
	});

	it('takes its share of the risk on average over the divisions, and on none more than three times the risk', () => {
		const risks = targets.map((target) => past(stopFor({ target }), target));
		const mean = risks.reduce((a, b) => a + b) / risks.length;
		expect(mean).toBeGreaterThan(0.01);
		expect(mean).toBeLessThan(0.02);
		expect(Math.max(...risks)).toBeLessThanOrEqual(0.06);
	});

	it('goes no further where less may pass, less is known, or the bend began with less known', () => {
		for (const target of targets) {
			expect(stopFor({ target, risk: 0.002 })).toBeLessThanOrEqual(stopFor({ target }));
			expect(stopFor({ target }, 0.8)).toBeLessThanOrEqual(stopFor({ target }));
			expect(stopFor({ target }, 0.305, 1.2)).toBeLessThanOrEqual(stopFor({ target }));
			expect(stopFor({ target, over: 0.25 })).toBeLessThanOrEqual(stopFor({ target }));
		}
		expect(stopFor({ dialStep: 0.1 }, 0.8)).toBeLessThan(stopFor({ dialStep: 0.1 }));
	});

	it('stays two and a half standard deviations from the limit, and no further, however little is known', () => {
		const stop = stopFor({ dialStep: 0.01 }, 3);
		expect(stop - 5).toBeCloseTo(60.5 - 2.4 * 3, 1);
	});

	it('forgets the price of one band when asked for another', () => {
		const before = stopFor({ target: 60.2 });
		stopFor({ risk: 0.2, over: 0.25 });
		expect(stopFor({ target: 60.2 })).toBe(before);
	});

	it('plans a pull that may leave anything as one that may leave twenty degrees more or less', () => {
		expect(planned(band, hands, 50_000)).toEqual(planned(band, hands, 20));
	});
});
