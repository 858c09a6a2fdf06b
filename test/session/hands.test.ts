import { describe, expect, it } from 'vitest';
import { builtNow, checkReadingSd } from '../../src/session/estimate/estimate.ts';
import { convertLength } from '../../src/units/units.ts';
import { bendAndSkip } from '../helpers/session/bend-to.ts';
import { begin } from '../helpers/session/session-run.ts';
import { hatJob } from '../helpers/shop/hat.ts';
import { plainJob } from '../helpers/shop/plain-job.ts';

/** One bend on a tape of that division, in inches or in millimeters. */
const jobOf = (units: 'in' | 'mm', tape: number) => {
	const of = (inches: number) => convertLength(inches, 'in', units);
	return plainJob({
		units,
		tube: { material: { name: 'mild', yield: 60, modulus: 29_000 }, od: of(1.5), wall: of(0.095), stock: null },
		shape: { kind: 'bends', bends: [{ straight: of(20), angle: 90, rotation: 0 }], last: of(20) },
		tooling: { growth: 1, clr: of(6), tape },
	});
};
const [check] = hatJob().checks;
const inMm = (value: number, units: 'in' | 'mm') => convertLength(value, units, 'mm');
const sds = (units: 'in' | 'mm', tape: number) => {
	const job = jobOf(units, tape);
	const mark = builtNow(bendAndSkip(begin(job), 90).state).input.bends[0]!.mark!.sd;
	return [mark, checkReadingSd(job, check!)].map((sd) => inMm(sd, units));
};

describe('errors of hands', () => {
	it('are the same in either unit with the same tape', () => {
		for (const [i, sd] of sds('mm', 25.4 / 16).entries()) expect(sd).toBeCloseTo(sds('in', 1 / 16)[i]!, 9);
	});

	it('are .4 and .3 of a division of a tape in 16ths, and hardly finer with a tape in millimeters', () => {
		const [mark, reading] = sds('in', 1 / 16).map((sd) => sd / (25.4 / 16));
		expect(mark).toBeCloseTo(0.4, 2);
		expect(reading).toBeCloseTo(0.3, 2);
		for (const [i, sd] of sds('mm', 1).entries()) {
			const coarse = sds('in', 1 / 16)[i]!;
			expect(sd).toBeLessThan(coarse);
			// A division is 37 % shorter there; the hands are no steadier for it.
			expect(sd).toBeGreaterThan(0.8 * coarse);
		}
	});
});
