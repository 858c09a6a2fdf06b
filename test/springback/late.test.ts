import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { asFarAsBefore, type Filter, filterPrior, newBend, newSeat, pull } from '../../src/springback/filter.ts';
import { slow } from '../../src/springback/gates.ts';
import { lateBy } from '../../src/springback/late.ts';
import { observe } from '../../src/springback/reading.ts';
import { accept, suggestStop } from '../../src/springback/stop.ts';
import { BEND_OF_60 as base } from '../helpers/shop/stop-request.ts';

const HALF = { under: 0.5, over: 0.5 };

/** A bend of 60 whose pulls, each in a fresh seat at the stop asked for, all leave `angle`: the stops, and what is known in the end. */
function stuck(angle: number, pulls: number, dialStep = 0.5): { stops: number[]; before: Filter[]; f: Filter } {
	let f = newBend(filterPrior(0.021, dialStep));
	const [stops, before]: [number[], Filter[]] = [[], []];
	for (let i = 0; i < pulls; i++) {
		if (i > 0) f = newSeat(f);
		before.push(f);
		const { stop } = suggestStop(f, { ...base, dialStep, measured: i > 0 });
		stops.push(stop);
		f = observe(pull(f, stop, stop), 'angle', angle, { readings: 2, confirmed: true });
	}
	return { stops, before, f };
}

describe('a bend that takes long', () => {
	it('is late after three pulls in a band of a degree, later in a narrower one, never sooner in a wider one', () => {
		expect(lateBy(3, HALF)).toBe(0);
		expect(lateBy(3, { under: 0.25, over: 0.25 })).toBeLessThan(lateBy(3, { under: 0.5, over: 0.25 }));
		expect(lateBy(3, { under: 1.5, over: 1.5 })).toBe(0);
	});

	it('goes beyond every stop that left it short, once it is late', () => {
		const angle = fc.double({ min: 58, max: 59.2, noNaN: true });
		fc.assert(
			fc.property(angle, fc.constantFrom(0.1, 0.25, 0.5), (left, dialStep) => {
				const { stops, before } = stuck(left, 8, dialStep);
				for (const [i, stop] of stops.entries()) {
					if (lateBy(i, HALF) <= 1) continue;
					expect(stop).toBeGreaterThanOrEqual(asFarAsBefore(before[i]!) - dialStep / 2 - 1e-9);
				}
				expect(stops[7]).toBeGreaterThan(stops[3]!);
			}),
			{ numRuns: 40 },
		);
	});

	it('asks for no stop a third time', () => {
		const { stops } = stuck(59.2, 9);
		for (const stop of stops.slice(3)) expect(stops.filter((other) => other === stop).length).toBeLessThan(3);
	});

	it('is measured twice', () => {
		expect(slow(stuck(59, 2).f, HALF)).toBe(false);
		expect(slow(stuck(59, 3).f, HALF)).toBe(true);
		expect(slow(stuck(59, 3).f, { under: 0.25, over: 0.25 })).toBe(false);
	});

	it('is taken a hair below its band, but not far below it', () => {
		const request = { ...base, measured: true };
		const near = (pulls: number) => accept(stuck(59.25, pulls).f, request);
		expect(accept(stuck(58.8, 3).f, request)).toMatchObject({ short: true });
		expect(near(8)).toMatchObject({ short: false });
		expect(near(8).under).toBeGreaterThan(0.5);
		expect(accept(stuck(58, 12).f, request)).toMatchObject({ short: true });
	});
});
