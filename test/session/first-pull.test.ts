import { describe, expect, it } from 'vitest';
import { initial } from '../../src/session/fold.ts';
import { standing } from '../../src/session/outputs.ts';
import { upToDate } from '../../src/session/start.ts';
import { wrongPart } from '../../src/springback/scatter.ts';
import { hatJob } from '../helpers/hat.ts';
import { plainJob } from '../helpers/plain-job.ts';
import { begin, give, giveAll, open, type Run, startOf } from '../helpers/session-run.ts';

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
		expect(measure.why).toBe('It is the first measurement of this tube: all that follows is built on it.');
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
		expect(measure.why).toBeUndefined();
	});

	it('is two readings every time where many numbers were wrong', () => {
		const measure = open(second(afterWrong(8, 60)), 'measure');
		expect(measure.readings).toBe(2);
		expect(measure.why).toMatch(/^About [89] in 100 of the numbers given so far were wrong ones/);
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
