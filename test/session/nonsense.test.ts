import { describe, expect, it } from 'vitest';
import { draws } from '../../src/practice/random.ts';
import { evolve, initial } from '../../src/session/log/fold.ts';
import { isReckoned } from '../../src/session/log/reckoned.ts';
import type { State } from '../../src/session/log/state.ts';
import { nextEntry } from '../../src/session/log/state.ts';
import type { Ask } from '../../src/session/protocol/asks.ts';
import { made } from '../../src/springback/filter.ts';
import { asExpected } from '../helpers/session/as-expected.ts';
import { begin, give, giveAll, open, type Run, startOf } from '../helpers/session/session-run.ts';
import { whyOf } from '../helpers/session/why.ts';
import { hatJob } from '../helpers/shop/hat.ts';
import { randomJob } from '../helpers/shop/random-jobs.ts';

const set = give(begin(hatJob()), { ready: true });
const pulled = give(set, { loaded: open(set, 'pull').stop });
const measured = give(pulled, { angles: [17, 17] });

/** The last output's kind. */
const asked = ({ outputs }: Run) => {
	const last = outputs.at(-1)!;
	return 'ask' in last ? last.ask : last.note;
};

describe('equal angles, typed a hundred times', () => {
	/** A finder's own error is in all of its readings: a tenth of a degree is what a good one is made to. */
	const FINDER = 0.1;

	function again(run: Run, times: number): Run {
		let now = run;
		for (let n = 0; n < times; n++) {
			now = give(now, { evidence: { kind: 'angle', bend: 1, reading: 17 } });
			if (asked(now) === 'confirm') now = give(now, { keep: true });
		}
		return now;
	}

	it('do not make the angle at work surer than the finder is', () => {
		expect(made(again(measured, 100).state.filter).sd).toBeGreaterThanOrEqual(FINDER - 1e-9);
		expect(made(again(measured, 1).state.filter).sd).toBeLessThan(made(measured.state.filter).sd);
	});

	it('nor that of a bend made before', () => {
		let run = measured;
		while (asked(run) === 'check') run = give(run, { skip: true });
		run = again(give(run, { do: 'accept' }), 100);
		expect(run.state.bends[0]!.told!.sd).toBeGreaterThanOrEqual(FINDER - 1e-9);
	});

	it('nor in one answer', () => {
		const once = give(pulled, { angles: Array(20).fill(17) });
		expect(made(once.state.filter).sd).toBeGreaterThanOrEqual(FINDER - 1e-9);
	});
});

describe('a number that no instrument has', () => {
	it.each([
		[{ ready: true, length: 4000 }, '4000 in cannot be the length of the piece: no tape is longer than 100 m.'],
		[{ ready: true, rotation: 361 }, '361° cannot be the rotation as set: a turn is at most 360 degrees either way.'],
		[{ ready: true, mark: 1.7e308 }, 'no tape is longer than 100 m.'],
	])('%j is refused', (answer, why) => {
		const run = begin(hatJob());
		const refused = give(run, answer);
		expect(refused.state).toBe(run.state);
		expect(whyOf(refused.outputs[0] as Parameters<typeof whyOf>[0])).toContain(why);
	});

	it('of a check is refused too', () => {
		const job = hatJob({
			checks: [{ name: 'leg', kind: 'span', from: { end: 'start' }, to: { bend: 1 }, tolerance: 1 }],
		});
		const stop = open(give(begin(job), { ready: true }), 'pull').stop;
		const run = giveAll(begin(job), { ready: true }, { loaded: stop }, { angles: [17, 17] });
		expect(asked(run)).toBe('check');
		const [refused] = give(run, { reading: 1e9 }).outputs;
		expect(whyOf(refused as Parameters<typeof whyOf>[0])).toContain('no tape is longer than 100 m.');
	});
});

describe('a check that reads what no bend makes it read, and is kept', () => {
	/** Tubes of two bends on which such a reading was taken for an angle of -3974, 442 and 629 degrees. */
	it.each([900_246, 901_676, 903_392])('tells no angle that a bend cannot have (seed %i)', (seed) => {
		let run = begin(randomJob(draws(seed), 2, true));
		let kept = 0;
		for (let ask = lastOf(run), n = 0; 'ask' in ask && n < 40; ask = lastOf(run), n++) {
			run = give(run, nonsenseAt(ask));
			kept += Number(ask.ask === 'confirm');
			const { angle } = made(run.state.filter);
			expect(angle).toBeGreaterThanOrEqual(0);
			expect(angle).toBeLessThanOrEqual(180);
		}
		expect(kept).toBeGreaterThan(0);
	});

	const lastOf = ({ outputs }: Run) => outputs.at(-1)!;

	/** As expected, but every bend measured twice and pulled only while it is short, and 60 in for every check. */
	function nonsenseAt(ask: Ask): unknown {
		if (ask.ask === 'measure') return { angles: [ask.expect.angle, ask.expect.angle] };
		if (ask.ask === 'check') return { reading: 60 };
		return ask.ask === 'decide' ? { do: ask.advice === 'pull' ? 'pull' : 'accept' } : asExpected(ask);
	}
});

describe('a log of an older version that kept what leads nowhere', () => {
	const start = startOf(hatJob());
	const record = (state: State, value: number) => ({
		entry: nextEntry(state),
		at: '',
		events: [{ type: 'reading-taken' as const, reading: { of: 'pointer' as const, value, bend: 1 } }],
	});

	it.each([1e200, 1e308, Number.NaN])(
		'opens: a dial of %s stands in it, does not count, and can be taken back',
		(value) => {
			const seated = evolve(initial(start), { entry: 1, at: '', events: [{ type: 'tube-set', bend: 1 }] });
			const stuck = evolve(seated, record(seated, value));
			expect(isReckoned(stuck)).toBe(true);
			expect(stuck.entries).toHaveLength(2);
			const undone = give({ state: stuck, outputs: [] }, { undo: true });
			expect(undone.state.entries.map((entry) => entry.void)).toEqual([false, true, false]);
			const stop = open(set, 'pull').stop;
			expect(asked(give({ state: stuck, outputs: [] }, { loaded: stop }))).toBe('measure');
		},
	);
});
