import { describe, expect, it } from 'vitest';
import { builtNow } from '../../src/session/estimate/estimate.ts';
import { angleReadingSd, checkReadingSd, markSd, tapedSd, turnSd } from '../../src/session/estimate/hands.ts';
import { verdictOf } from '../../src/session/report/verdict.ts';
import { NOTHING_SEEN, SCATTER_KINDS, type Scatter, varianceOf } from '../../src/springback/scatter.ts';
import { convertLength } from '../../src/units/units.ts';
import { startOf } from '../bench/fit-made.ts';
import { bendAndSkip } from '../helpers/session/bend-to.ts';
import { begin, give } from '../helpers/session/session-run.ts';
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
	return [mark, checkReadingSd(startOf(job), check!)].map((sd) => inMm(sd, units));
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

describe('hands of a shop that sessions have taught', () => {
	/** A shop whose every deviation so far was so many times the one that is common; enough were seen to believe it. */
	const seen = (times: number): Scatter => {
		const kinds = SCATTER_KINDS.map((kind) => [
			kind,
			{ sum: 1e6 * times ** 2 * varianceOf(kind, NOTHING_SEEN), count: 1e6 },
		]);
		return { ...NOTHING_SEEN, ...Object.fromEntries(kinds) };
	};
	const shop = (scatter: Scatter) => {
		const start = startOf(jobOf('in', 1 / 16));
		return { ...start, prior: { ...start.prior, scatter } };
	};
	const common = shop(NOTHING_SEEN);

	it('are as common where nothing was seen', () => {
		expect(turnSd(common)).toBe(0.33);
		expect(angleReadingSd(common)).toBeCloseTo(0.25, 12);
	});

	it('are so much rougher, or finer, with turn and finder, and with tape as far as rounding lets them', () => {
		const rounding = 1 / 16 / Math.sqrt(12);
		for (const times of [0.6, 1.5]) {
			const theirs = shop(seen(times));
			expect(turnSd(theirs) / turnSd(common)).toBeCloseTo(times, 4);
			expect(angleReadingSd(theirs) / angleReadingSd(common)).toBeCloseTo(times, 4);
			const byHand = (sd: number, part: number) => Math.sqrt(sd ** 2 - (part * rounding) ** 2);
			expect(byHand(markSd(theirs), 1) / byHand(markSd(common), 1)).toBeCloseTo(times, 4);
			expect(byHand(tapedSd(theirs), 0.5) / byHand(tapedSd(common), 0.5)).toBeCloseTo(times, 4);
		}
	});

	it('are never thought more than twice as rough as common', () => {
		expect(turnSd(shop(seen(5))) / turnSd(common)).toBeCloseTo(2, 9);
	});

	it('are told with what this session shows: the rougher, the less well a tube is known', () => {
		const run = give(bendAndSkip(begin(jobOf('in', 1 / 16)), 90), { do: 'accept' });
		const sdBy = (scatter: Scatter) =>
			verdictOf({ ...run.state, filter: { ...run.state.filter, scatter } })!.sd.endAngle;
		expect(sdBy(seen(1.3))).toBeGreaterThan(sdBy(NOTHING_SEEN));
		expect(sdBy(seen(1.8))).toBeGreaterThan(sdBy(seen(1.3)));
	});

	it('count for what is asked with what sessions before showed alone', () => {
		const bent = bendAndSkip(begin(jobOf('in', 1 / 16)), 90).state;
		const { sd } = builtNow({ ...bent, filter: { ...bent.filter, scatter: seen(1.8) } }).input.bends[0]!.mark!;
		expect(sd).toBe(markSd(bent.start));
	});
});
