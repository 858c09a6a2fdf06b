import { describe, expect, it } from 'vitest';
import { stopRequest } from '../../src/session/advice/bend-check.ts';
import { ask } from '../../src/session/ask.ts';
import { initial } from '../../src/session/log/fold.ts';
import { readBack } from '../../src/session/log/read-back.ts';
import { upToDate } from '../../src/session/log/start.ts';
import { standing } from '../../src/session/outputs.ts';
import { wrongPart } from '../../src/springback/scatter.ts';
import { begin, give, giveAll, open, type Run, startOf } from '../helpers/session/session-run.ts';
import { whyOf } from '../helpers/session/why.ts';
import { hatJob } from '../helpers/shop/hat.ts';
import { plainJob } from '../helpers/shop/plain-job.ts';

/** The next pull at its stop, and the dial after release so far above the angle wanted. */
function pulled(run: Run, above: number): Run {
	const { stop, target } = open(run, 'pull');
	return give(run, { loaded: stop, released: target + above });
}

/** A session in which `wrong` of `count` readings were seen to be wrong before. */
function afterWrong(wrong: number, count: number): Run {
	const start = startOf(hatJob());
	const scatter = { ...start.prior.scatter, wrong: { sum: wrong, count } };
	const state = initial({ ...start, prior: { ...start.prior, scatter } });
	return { state, outputs: [standing(state, 'log')] };
}

describe('the first pull of a tube', () => {
	const first = give(begin(plainJob({ tooling: { growth: 1 } })), { ready: true });

	it('is measured, twice, where the dial shows it a little short: nothing is built on the dial alone', () => {
		const measure = open(pulled(first, -3), 'measure');
		expect(measure).toMatchObject({ bend: 1, readings: 2 });
		expect(whyOf(measure)).toBe('This is the first measurement of this tube: everything after builds on it.');
	});

	it('counts as measured where the operator skips that and goes by the dial', () => {
		const one = pulled(first, -2);
		expect(stopRequest(one.state).measured).toBe(false);
		expect(stopRequest(give(one, { skip: true }).state).measured).toBe(true);
	});

	it('is followed by another in the same seat where it was held far short and not read after release', () => {
		const { stop } = open(first, 'pull');
		const again = giveAll(first, { loaded: stop - 9 }, { keep: true });
		expect(open(again, 'pull')).toMatchObject({ bend: 1, pull: 2, stop });
	});

	it('is followed by another where the dial shows it far short', () => {
		expect(open(pulled(first, -9), 'pull')).toMatchObject({ bend: 1, pull: 2 });
	});
});

describe('a measurement', () => {
	/** Bend 1 pulled and measured short, then pulled again as far as the dial goes. */
	const second = (run: Run) => {
		const { target } = open(run, 'set');
		const pull = giveAll(
			pulled(give(run, { ready: true }), 0),
			{ angles: [target - 1.5, target - 1.5] },
			{ do: 'pull' },
		);
		return pulled(give(pull, { ready: true }), 1.5);
	};

	it('is one reading after the first where few numbers are wrong', () => {
		const measure = open(second(afterWrong(2, 60)), 'measure');
		expect(measure.readings).toBe(1);
		expect(measure.reason).toEqual([]);
	});

	it('is two readings every time where many numbers were wrong', () => {
		const measure = open(second(afterWrong(8, 60)), 'measure');
		expect(measure.readings).toBe(2);
		expect(whyOf(measure)).toMatch(/About [89] readings in 100 are wrong numbers here/);
	});
});

describe('a wrong number', () => {
	const wrongOf = (run: Run) => run.state.filter.scatter.wrong;
	const pull = give(begin(hatJob()), { ready: true });

	it('counts where it is set aside, and no more once it is taken back', () => {
		const { stop } = open(pull, 'pull');
		const doubted = give(pull, { loaded: stop, released: stop + 6 });
		expect(open(doubted, 'confirm').of).toBe('released');
		const settled = give(doubted, { reading: stop - 3 });
		expect(wrongOf(settled).count).toBe(2);
		expect(wrongOf(settled).sum).toBeGreaterThan(1);
		expect(wrongOf(settled).sum).toBeLessThan(1.1);
		expect(wrongOf(giveAll(settled, { undo: true }, { undo: true }))).toEqual({ sum: 0, count: 0 });
	});

	it('is none where the reading is read again and stands', () => {
		const doubted = give(pull, { loaded: open(pull, 'pull').stop, released: open(pull, 'pull').stop + 6 });
		expect(wrongOf(give(doubted, { keep: true }))).toEqual({ sum: 0, count: 2 });
	});

	it('of two that disagree is the one set aside when a third is there', () => {
		const measure = pulled(pull, 0);
		const { target } = open(pull, 'pull');
		const settled = giveAll(measure, { angles: [target - 1.5, target + 6] }, { reading: target - 1.4 });
		const before = wrongOf(measure);
		// Those before it have faded by a hundredth each.
		expect(wrongOf(settled).count - before.count).toBeCloseTo(3, 1);
		expect(wrongOf(settled).sum - before.sum).toBeCloseTo(1, 1);
	});
});

describe('an opened bend', () => {
	it('is measured twice where many numbers were wrong', () => {
		const { target } = open(afterWrong(10, 60), 'set');
		const over = giveAll(
			pulled(give(afterWrong(10, 60), { ready: true }), 1.5),
			{ angles: [target + 1.5, target + 1.5] },
			{ keep: true },
		);
		expect(open(give(over, { do: 'relieve' }), 'measure')).toMatchObject({ readings: 2 });
	});
});

describe('a log of before a job said how far its shape and direction may be off', () => {
	it('opens with what is usual', () => {
		const start = startOf(hatJob());
		const { shape: _shape, direction: _direction, ...told } = start.job.tolerance;
		const old = { ...start, job: { ...start.job, tolerance: { ...told, length: 0.1 } as typeof start.job.tolerance } };
		expect(upToDate(old).job.tolerance).toEqual({ ...told, length: 0.1, shape: 0.4, direction: 1 });
		expect(upToDate(start).job.tolerance).toEqual(start.job.tolerance);
	});
});

describe('a log of before a job said whether a bend may be opened', () => {
	it('opens with what holds where nothing is said', () => {
		const start = startOf(hatJob());
		const { mayOpen: _may, quantity: _quantity, ...told } = start.job;
		expect(upToDate({ ...start, job: told as typeof start.job }).job).toEqual(start.job);
		expect(upToDate({ ...start, job: { ...start.job, mayOpen: false } }).job.mayOpen).toBe(false);
	});
});

describe('a log with a name that a job file may not have now', () => {
	it('opens all the same', () => {
		const name = `old \u001b[2J\n${'x'.repeat(200)}`;
		const start = startOf({ ...hatJob(), name, notes: 'y'.repeat(9000) });
		const opened = readBack([{ seq: 0, at: start.at, start }]);
		expect(opened.start.job.name).toBe(name);
		expect(ask(opened)).toMatchObject({ ask: 'set', bend: 1 });
	});
});

describe('a log of before wrong numbers were tallied', () => {
	it('goes on as if none had been read', () => {
		const start = startOf(hatJob());
		const { wrong: _wrong, ...rest } = start.prior.scatter;
		const old = { ...start, prior: { ...start.prior, scatter: rest as typeof start.prior.scatter } };
		expect(upToDate(old).prior.scatter).toEqual(start.prior.scatter);
		expect(wrongPart(upToDate(old).prior.scatter)).toBeCloseTo(0.04, 12);
	});
});
