import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Filter, filterPrior, made, newBend, newSeat, pull, reach } from '../../src/springback/filter.ts';
import { expectReading, observe } from '../../src/springback/reading.ts';
import { accept, expectedSpringback, predictStop, type StopRequest, suggestStop } from '../../src/springback/stop.ts';
import { BEND_OF_60 as base } from '../helpers/shop/stop-request.ts';

const cold = filterPrior(0.021);

/** A machine that has made eight bends with 5 degrees and 5 % of springback, every reading off by as much as is common. */
const taught = [...Array(8).keys()].reduce((f: Filter, i) => {
	const loaded = 40 + 10 * i;
	const angle = loaded - 3 - 0.05 * loaded;
	const off = i % 2 === 0 ? 0.25 : -0.25;
	const released = observe(pull(newBend(f), loaded, loaded + off), 'released', angle + 1.5 - off);
	return observe(released, 'angle', angle + off);
}, cold);

describe('suggestStop', () => {
	it('stops beyond the target, but aims at or under it and within the risk', () => {
		for (const f of [cold, newBend(taught)]) {
			const { stop, expect: out, risk } = suggestStop(f, base);
			expect(stop).toBeGreaterThan(60);
			expect(out.angle).toBeLessThanOrEqual(60);
			expect(risk).toBeLessThanOrEqual(0.025);
		}
	});

	it('comes closer to the target the more is known', () => {
		const [first, later] = [cold, newBend(taught)].map((f) => suggestStop(f, base).expect);
		expect(first!.angle).toBeLessThan(later!.angle - 2);
		expect(later!.angle).toBeGreaterThan(58.5);
		expect(later!.sd).toBeLessThan(first!.sd / 2);
	});

	it('never gives a larger target a smaller first stop', () => {
		const angle = fc.double({ min: 1, max: 150, noNaN: true });
		fc.assert(
			fc.property(angle, angle, fc.boolean(), (a, b, learned) => {
				const f = learned ? newBend(taught) : cold;
				const [low, high] = [Math.min(a, b), Math.max(a, b)].map((target) => suggestStop(f, { ...base, target }).stop);
				expect(low).toBeLessThanOrEqual(high!);
			}),
			{ numRuns: 400 },
		);
	});

	it('is rounded down to what the dial shows', () => {
		for (const dialStep of [0.1, 0.25, 0.5, 1, 2.5]) {
			const { stop } = suggestStop(newBend(taught), { ...base, dialStep });
			expect(Math.abs(stop / dialStep - Math.round(stop / dialStep))).toBeLessThan(1e-6);
			expect(suggestStop(newBend(taught), { ...base, dialStep }).expect.angle).toBeLessThanOrEqual(60);
		}
		const fine = suggestStop(newBend(taught), { ...base, dialStep: 0.001, risk: 0.05 }).stop;
		expect(suggestStop(newBend(taught), { ...base, dialStep: 0.5 }).stop).toBeLessThanOrEqual(fine);
	});

	it('goes further where more risk or more tolerance above is allowed', () => {
		const f = newBend(taught);
		const stop = (change: Partial<StopRequest>) => suggestStop(f, { ...base, dialStep: 0.1, ...change }).stop;
		expect(stop({ risk: 0.001 })).toBeLessThan(stop({}));
		expect(stop({ risk: 0.2 })).toBeGreaterThan(stop({}));
		expect(stop({ over: 0.25 })).toBeLessThan(stop({}));
		expect(stop({ risk: 1 })).toBeLessThanOrEqual(predictStop(f, 60));
	});

	it('is capped by the machine, and says so', () => {
		const capped = suggestStop(newBend(taught), { ...base, target: 110, maxAngle: 100.3 });
		expect(capped.stop).toBe(100);
		expect(capped.limit).toBe(true);
		expect(capped.expect.angle).toBeLessThan(95);
		expect(suggestStop(newBend(taught), { ...base, maxAngle: 100.3 }).limit).toBe(false);
	});

	it('forced, stops at least a dial step where the tube is expected to move, with its true risk', () => {
		const f = newSeat(observe(pull(newBend(taught), 67, 67), 'angle', 60.4));
		const free = suggestStop(f, base);
		const forced = suggestStop(f, { ...base, forced: true });
		expect(reach(f, forced.stop).mean).toBeGreaterThan(made(f).angle);
		expect(forced.stop).toBeGreaterThan(predictStop(f, made(f).angle) + 0.499);
		expect(forced.stop).toBeGreaterThanOrEqual(free.stop);
		expect(forced.risk).toBeGreaterThan(0.1);
	});

	it('in the same seat stops further than before', () => {
		const f = pull(newBend(taught), 70, 70);
		expect(suggestStop(f, { ...base, loadedBefore: 70 }).stop).toBe(70.5);
	});

	it('shows where to ease up only on a long stroke', () => {
		const { stop, lead } = suggestStop(newBend(taught), base);
		expect(lead).toBe(stop - 3);
		expect(suggestStop(newBend(taught), { ...base, loadedBefore: stop - 2 }).lead).toBeNull();
		expect(suggestStop(newBend(taught), { ...base, target: 2 }).lead).toBeNull();
	});

	it('moves a tube however small the angle', () => {
		expect(suggestStop(cold, { ...base, target: 0.4 }).stop).toBe(0.5);
	});

	it('never lies below one that left the bend short, unless the dial is known to stand off by as much', () => {
		const short = newSeat(observe(pull(newBend(taught), 66, 66), 'angle', 59, { readings: 2 }));
		// By this band alone it would lie below.
		const narrow = { ...base, target: 59.3, under: 0.25, over: 0.25, dialStep: 0.1 };
		expect(predictStop(short, narrow.target)).toBeLessThan(66.2);
		expect(suggestStop(short, narrow).stop).toBeGreaterThanOrEqual(66);
		const shown = expectReading(short, 'pointer').value - 1;
		const lower = observe(short, 'pointer', shown, { readings: 2 });
		expect(suggestStop(lower, narrow).stop).toBeLessThan(66);
	});
});

describe('predictStop', () => {
	it('is the stop whose reach is the angle', () => {
		for (const angle of [2, 30, 90, 140]) {
			expect(reach(cold, predictStop(cold, angle)).mean).toBeCloseTo(angle, 5);
		}
	});
});

describe('accept', () => {
	const measured = (angle: number) => observe(pull(newBend(taught), 66.5, 66.5), 'angle', angle, { readings: 4 });

	it('splits the probability between over, under and within', () => {
		const { over, under, within } = accept(measured(60), base);
		expect(over + under + within).toBeCloseTo(1, 12);
		expect(within).toBeGreaterThan(0.8);
	});

	it('calls short what lies under the band and over what lies above', () => {
		expect(accept(measured(58.8), base).under).toBeGreaterThan(0.5);
		expect(accept(measured(61.3), base).over).toBeGreaterThan(0.5);
		expect(accept(newBend(taught), base)).toMatchObject({ over: 0, under: 1, within: 0 });
	});

	it('pulls again in the same seat only after the dial has shown the bend short', () => {
		const pulled = pull(newBend(taught), 62, 62);
		expect(accept(pulled, { ...base, loadedBefore: 62 }).likelyShort).toBe(false);
		expect(accept(observe(pulled, 'released', 57.5), { ...base, loadedBefore: 62 }).likelyShort).toBe(true);
	});

	it('pulls again in the same seat what was held below its band, the dial after release read or not', () => {
		const pulled = pull(newBend(taught), 62, 50);
		expect(accept(pulled, { ...base, loadedBefore: 50 }).likelyShort).toBe(true);
	});

	it('measures a tube before it builds on the dial alone, but for a bend far short', () => {
		const pulled = pull(newBend(taught), 62, 62);
		const unmeasured = { ...base, loadedBefore: 62, measured: false };
		expect(accept(observe(pulled, 'released', 57.5), unmeasured).likelyShort).toBe(false);
		const short = pull(newBend(taught), 52, 52);
		expect(accept(observe(short, 'released', 48.5), { ...unmeasured, loadedBefore: 52 }).likelyShort).toBe(true);
	});

	it('on a machine whose lag is unknown measures what is little short, pulls on what is far short', () => {
		const pulled = pull(cold, 60, 60);
		const shows = (released: number) => accept(observe(pulled, 'released', released), { ...base, loadedBefore: 60 });
		expect(shows(59).likelyShort).toBe(false);
		expect(shows(50).likelyShort).toBe(true);
	});
});

describe('expectedSpringback', () => {
	it('is what lies between the stop and the angle that is expected after it', () => {
		const f = newBend(taught);
		const suggested = suggestStop(f, base);
		expect(suggested.stop - expectedSpringback(f, suggested)).toBeCloseTo(suggested.expect.angle, 9);
	});

	it('leaves out where the dial stands with a straight tube: a tube does not spring back by that', () => {
		const f = newBend(taught);
		const zeroed = observe(f, 'pointer', 7, { confirmed: true });
		const springback = (each: typeof f) => expectedSpringback(each, suggestStop(each, base));
		expect(springback(zeroed)).toBeGreaterThan(springback(f) - 1);
		expect(springback(zeroed)).toBeLessThan(springback(f) + 1);
	});
});

describe('a bend a little short, the next stop a division beyond what was held', () => {
	it('is taken as it is sooner where the hands set the dial: never later, and somewhere sooner', () => {
		const shorts = Array.from({ length: 40 }, (_, i) => {
			const f = observe(pull(newBend(taught), 66, 66), 'angle', made(pull(newBend(taught), 66, 66)).angle, {
				readings: 2,
			});
			const target = made(f).angle + 0.5 + i / 50;
			const tooFar = (setting: number) => accept({ ...f, setting }, { ...base, target }).nextTooFar !== null;
			return { reads: tooFar(-6), sets: tooFar(6) };
		});
		expect(shorts.filter(({ reads, sets }) => reads && !sets)).toEqual([]);
		expect(shorts.some(({ reads, sets }) => sets && !reads)).toBe(true);
	});
});
