import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
	type Filter,
	filterPrior,
	made,
	newBend,
	newSeat,
	newTube,
	pull,
	reach,
	relieved,
	reopened,
} from '../../src/springback/filter.ts';
import { expectReading, observe, observeMade } from '../../src/springback/reading.ts';
import { draws, newMachine } from '../helpers/shop/plain-shop.ts';

const cold = filterPrior(0.021);

/** Smallest eigenvalue's sign by Cholesky: throws nothing, says whether every pivot is positive. */
function isPositiveDefinite(cov: readonly (readonly number[])[]): boolean {
	const l: number[][] = [];
	for (const [i, line] of cov.entries()) {
		l.push([]);
		for (let j = 0; j <= i; j++) {
			const rest = line[j]! - l[j]!.reduce((sum, value, k) => sum + value * (l[i]![k] ?? 0), 0);
			if (i === j && !(rest > 0)) return false;
			l[i]!.push(i === j ? Math.sqrt(rest) : rest / l[j]![j]!);
		}
	}
	return true;
}

/** A bend pulled to `loaded` and measured as `angle`. */
function bent(f: Filter, loaded: number, angle: number): Filter {
	return observe(pull(newBend(f), loaded, loaded), 'angle', angle);
}

describe('the prior', () => {
	it('expects what benders show: a few degrees at once, then some 7 % of the angle', () => {
		expect(90 - reach(cold, 90).mean).toBeGreaterThan(7);
		expect(90 - reach(cold, 90).mean).toBeLessThan(12);
		expect(5 - reach(cold, 5).mean).toBeLessThan(3);
	});

	it('expects more of a springier material', () => {
		expect(reach(filterPrior(0.03), 90).mean).toBeLessThan(reach(filterPrior(0.01), 90).mean);
	});
});

describe('levels', () => {
	const taught = [...Array(6).keys()].reduce((f) => bent(f, 90, 78), cold);

	it('a further bend of the tube is known better than the first, a further tube in between', () => {
		const [first, tube, bend] = [cold, newTube(taught), newBend(taught)].map((f) => reach(f, 90));
		expect(bend!.variance).toBeLessThan(tube!.variance);
		expect(tube!.variance).toBeLessThan(first!.variance / 4);
		expect(Math.abs(tube!.mean - 78)).toBeLessThan(1);
	});

	it('a new bend is straight, and nothing has been seen of it', () => {
		const f = newBend(taught);
		expect(made(f)).toEqual({ angle: 0, sd: 0 });
		expect([f.pulls, f.largest, f.seen]).toEqual([0, 0, false]);
	});

	it('a new seat forgets how the tube lay, not what the bend is', () => {
		const f = observe(observe(pull(newBend(taught), 60, 60), 'angle', 50), 'pointer', 53);
		expect(made(newSeat(f))).toEqual(made(f));
		expect(reach(newSeat(f), 60).variance).toBeGreaterThan(reach(f, 60).variance);
	});

	it('a reopened bend is what it was made', () => {
		const f = reopened(taught, { angle: 44.5, sd: 0.2 }, 52);
		expect(made(f).angle).toBe(44.5);
		expect(made(f).sd).toBeCloseTo(0.2, 12);
		expect(f.largest).toBe(52);
	});
});

describe('pull', () => {
	it('leaves a straight tube at what the pull is expected to reach', () => {
		const f = pull(cold, 90, 90);
		expect(made(f).angle).toBeCloseTo(reach(cold, 90).mean, 6);
	});

	it('never takes a bend back', () => {
		const f = bent(cold, 90, 80);
		expect(made(pull(f, 60, 60)).angle).toBeCloseTo(made(f).angle, 3);
	});

	it('that moved nothing still tells that more is needed', () => {
		const f = bent(cold, 90, 80);
		const idle = observe(pull(newSeat(f), 91, 91), 'angle', 80);
		expect(reach(newSeat(idle), 92).mean).toBeLessThan(reach(newSeat(f), 92).mean);
	});

	it('goes by the dial as keyed where the stop asked for is far from it', () => {
		expect(made(pull(cold, 90, 80)).angle).toBeCloseTo(reach(cold, 80).mean, 6);
	});

	it('goes by both where they nearly agree', () => {
		const angle = made(pull(cold, 90, 90.5)).angle;
		expect(angle).toBeGreaterThan(reach(cold, 90.2).mean);
		expect(angle).toBeLessThan(reach(cold, 90.5).mean);
	});
});

describe('observe', () => {
	const pulled = pull(cold, 90, 90);

	it('of the finder tells the angle, of the released dial the angle with the lag', () => {
		const measured = observe(pulled, 'angle', 80.5, { readings: 2 });
		expect(Math.abs(made(measured).angle - 80.5)).toBeLessThan(0.1);
		expect(made(measured).sd).toBeLessThan(0.2);
		const released = observe(pulled, 'released', 80.5);
		expect(made(released).sd).toBeGreaterThan(0.5);
		expect(made(released).sd).toBeLessThan(made(pulled).sd / 2);
	});

	it('of both teaches the lag, so that the next dial alone tells more', () => {
		const taught = observe(observe(pulled, 'released', 80.5), 'angle', 79, { readings: 2 });
		const next = (f: Filter) => made(observe(pull(newBend(f), 60, 60), 'released', 53)).sd;
		expect(next(taught)).toBeLessThan(0.75 * next(cold));
	});

	it('of the pointer at a straight tube tells the seat alone', () => {
		const seat = observe(cold, 'pointer', 1);
		expect(reach(seat, 60).mean).toBeLessThan(reach(cold, 60).mean - 0.3);
		expect(made(seat).angle).toBe(0);
		expect(expectReading(cold, 'pointer').value).toBe(0);
	});

	it('of the pointer at a bend expects angle and lag, and is seen', () => {
		const f = newSeat(observe(pulled, 'angle', 79));
		expect(expectReading(f, 'pointer').value).toBeGreaterThan(80);
		expect(observe(f, 'pointer', 80.5).seen).toBe(true);
	});

	it('of 310 for 31 hardly moves anything, and no number is lost', () => {
		const f = pull(newBend(bent(cold, 60, 51)), 38, 38);
		const wrong = observe(f, 'angle', 310);
		expect(Math.abs(made(wrong).angle - made(f).angle)).toBeLessThan(0.01);
		for (const value of [...wrong.mean, ...wrong.cov.flat()]) expect(Number.isFinite(value)).toBe(true);
	});

	it('of two readings weighs more than of one', () => {
		const [two, one, rough] = [{ readings: 2 }, {}, { sd: 1 }].map((o) => made(observe(pulled, 'angle', 79, o)).sd);
		expect(two).toBeLessThan(0.8 * one!);
		expect(rough).toBeGreaterThan(1.5 * one!);
	});

	it('keeps the chance of a blunder in mind where little is known, and drops it when two readings agree', () => {
		const [one, two] = [1, 2].map((readings) => made(observe(pulled, 'angle', 76, { readings })).sd);
		expect(one).toBeGreaterThan(2 * two!);
	});

	it('once confirmed stands, however unlikely, without ruining what the machine is known to be', () => {
		const known = [...Array(6).keys()].reduce((f) => bent(f, 90, 79), cold);
		const f = pull(newBend(known), 90, 90);
		const odd = observe(f, 'angle', 66, { confirmed: true, readings: 2 });
		expect(Math.abs(made(odd).angle - 66)).toBeLessThan(0.5);
		expect(Math.abs(reach(newTube(odd), 90).mean - 79)).toBeLessThan(3);
	});
});

describe('relieved', () => {
	const f = bent(cold, 60, 52);

	it('leaves an angle somewhere below, told only by measuring', () => {
		const open = relieved(f, 2);
		expect(made(open).angle).toBeCloseTo(made(f).angle - 2, 9);
		expect(made(open).sd).toBeGreaterThan(1);
		expect(open.seen).toBe(false);
		expect(Math.abs(made(observe(open, 'angle', 50.4, { readings: 2 })).angle - 50.4)).toBeLessThan(0.1);
	});

	it('teaches nothing about springback', () => {
		const measured = observe(relieved(f, 2), 'angle', 50);
		expect(reach(measured, 80).mean).toBeCloseTo(reach(f, 80).mean, 9);
	});
});

describe('observeMade', () => {
	it('sharpens the angle, and through it the springback', () => {
		const f = bent(cold, 60, 52);
		const sharper = observeMade(f, 52.2, 0.1);
		expect(made(sharper).sd).toBeLessThan(0.12);
		expect(reach(sharper, 80).variance).toBeLessThan(reach(f, 80).variance);
	});
});

describe('any history', () => {
	it('keeps a positive definite covariance through 1000 pulls', () => {
		const draw = draws(3);
		const shop = newMachine(3);
		let f = cold;
		for (let i = 0; i < 1000; i++) {
			if (i % 12 === 0) {
				f = newTube(f);
				shop.newTube();
			} else if (i % 3 === 0) {
				f = newBend(f);
				shop.newBend();
			}
			const stop = draw.uniform(20, 120);
			const { loadedKeyed, releasedKeyed } = shop.pull(stop);
			f = observe(observe(pull(f, stop, loadedKeyed), 'released', releasedKeyed), 'angle', shop.measure());
			expect(isPositiveDefinite(f.cov)).toBe(true);
			for (const [r, line] of f.cov.entries()) {
				for (const [c, value] of line.entries()) expect(Math.abs(value - f.cov[c]![r]!)).toBeLessThan(1e-9);
			}
		}
	});

	it('can be written as JSON and read back, and no step changes an earlier state', () => {
		const step = fc.oneof(
			fc.double({ min: 5, max: 150, noNaN: true }).map((l) => (f: Filter) => pull(f, l, l + 0.2)),
			fc.double({ min: -20, max: 400, noNaN: true }).map((v) => (f: Filter) => observe(f, 'angle', v)),
			fc
				.double({ min: -20, max: 400, noNaN: true })
				.map((v) => (f: Filter) => observe(f, 'released', v, { confirmed: true })),
			fc.constantFrom<(f: Filter) => Filter>(newTube, newBend, newSeat, (f) => relieved(f, 1.5)),
		);
		fc.assert(
			fc.property(fc.array(step, { maxLength: 25 }), (steps) => {
				let f = cold;
				for (const next of steps) {
					const before = JSON.stringify(f);
					const after = next(f);
					expect(JSON.stringify(f)).toBe(before);
					expect(JSON.parse(JSON.stringify(after))).toEqual(after);
					f = after;
				}
				for (const value of [...f.mean, ...f.cov.flat()]) expect(Number.isFinite(value)).toBe(true);
				expect(f.cov.every((line, i) => line[i]! >= -1e-9)).toBe(true);
			}),
		);
	});
});
