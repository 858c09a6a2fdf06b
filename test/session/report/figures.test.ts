import { describe, expect, it } from 'vitest';
import { lessonOf } from '../../../src/session/estimate/lesson-of-session.ts';
import { figuresOf } from '../../../src/session/report/figures.ts';
import { begin, give, giveAll, open, type Run } from '../../helpers/session/session-run.ts';
import { plainJob } from '../../helpers/shop/plain-job.ts';

const bends = [45, 45].map((angle) => ({ straight: 20, angle, rotation: 0 }));
const job = plainJob({ shape: { kind: 'bends', bends, last: 20 } });

const figures = ({ state }: Run) => {
	const taught = { ...state, start: { ...state.start, learn: true } };
	return figuresOf(taught, lessonOf(taught));
};

/** A bend pulled to the stop, of which `back` springs back; `more` pulls more are asked for until it is taken. Gives what was expected. */
function bent(run: Run, back: number): { run: Run; expected: number; measured: number; pulls: number } {
	let now = give(run, { ready: true });
	const { stop, expect: foretold } = open(now, 'pull');
	let measured = stop - back;
	const first = measured;
	now = measuredAs(give(now, { loaded: stop }), measured);
	let pulls = 1;
	for (; open(now, 'decide').advice === 'pull'; pulls++) {
		now = giveAll(now, { do: 'pull' }, { ready: true });
		const again = open(now, 'pull').stop;
		measured = again - back;
		now = measuredAs(give(now, { loaded: again }), measured);
	}
	return { run: give(now, { do: 'accept' }), expected: foretold.angle, measured: first, pulls };
}

/** The angle finder, read as often as it is asked for; each time a little otherwise, so that nothing is doubted for being typed twice. */
function measuredAs(run: Run, angle: number): Run {
	let now = run;
	for (;;) {
		const last = now.outputs.at(-1)!;
		if (!('ask' in last)) return now;
		if (last.ask === 'measure') now = give(now, last.readings === 2 ? { angles: [angle, angle] } : { angle });
		else if (last.ask === 'confirm') now = give(now, { keep: true });
		else return now;
	}
}

describe('what a session comes to in a chart', () => {
	it('is nothing before anything was read', () => {
		expect(figures(begin(job))).toEqual({ springback: null, error: null, miss: null, taken: 0, pulls: 0 });
	});

	it('is the springback that its readings show, the error of its bends and the miss of their first pulls', () => {
		const one = bent(begin(job), 5);
		const two = bent(one.run, 5);
		const told = figures(two.run);
		const made = two.run.state.bends.map((bend) => bend.made!.angle - bend.target);
		expect(told.taken).toBe(2);
		expect(told.pulls).toBe(one.pulls + two.pulls);
		expect(told.error).toBeCloseTo((made[0]! + made[1]!) / 2, 12);
		expect(told.miss).toBeCloseTo((one.measured - one.expected + two.measured - two.expected) / 2, 9);
		// Two bends of 45 degrees sprang back 5 degrees each: what mechanics expects weighs little against that.
		expect(Math.abs(told.springback! - 5)).toBeLessThan(0.3);
	});

	it('follows the springback degree by degree, wherever it lies', () => {
		const at = (back: number) => figures(bent(begin(job), back).run).springback!;
		const [low, middle, high] = [at(3.5), at(4.5), at(5.5)];
		for (const step of [middle - low, high - middle]) {
			expect(step).toBeGreaterThan(0.75);
			expect(step).toBeLessThan(1.1);
		}
	});

	it('leaves out the miss of a pull that nobody measured, and the springback without a finder', () => {
		let run = give(begin(job), { ready: true });
		run = give(run, { loaded: open(run, 'pull').stop });
		expect(figures(run)).toMatchObject({ springback: null, miss: null });
	});
});
