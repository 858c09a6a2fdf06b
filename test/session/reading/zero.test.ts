import { describe, expect, it } from 'vitest';
import { lessonOf } from '../../../src/session/estimate/lesson-of-session.ts';
import { initial } from '../../../src/session/log/fold.ts';
import { learnedPrior } from '../../../src/session/log/start.ts';
import { standing } from '../../../src/session/outputs.ts';
import type { Job } from '../../../src/tube/job.ts';
import { begin, give, giveAll, open, type Run, startOf } from '../../helpers/session/session-run.ts';
import { whyOf } from '../../helpers/session/why.ts';
import { byBends, plainJob } from '../../helpers/shop/plain-job.ts';

const JOB = plainJob({
	shape: byBends(
		[
			[20, 30, 0],
			[20, 40, 0],
		],
		20,
	),
	tooling: { growth: 1 },
});

function learning(job: Job, lessons: Parameters<typeof learnedPrior>[1]): Run {
	const state = initial({ ...startOf(job), learn: true, ...learnedPrior(job, lessons) });
	return { state, outputs: [standing(state, 'log')] };
}

/** The first bend made as wanted, on a dial that stands `zero` too high. */
function firstBend(run: Run, zero: number): Run {
	const held = open(run, 'pull').stop;
	let now = give(run, { loaded: held });
	for (let i = 0; i < 20 && now.state.bend === 1; i++) {
		const ask = now.outputs.at(-1) as { ask: string; stop: number; expect: { angle: number } };
		if (ask.ask === 'measure') now = give(now, { angles: [30, 30.1] });
		else if (ask.ask === 'confirm') now = give(now, { keep: true });
		else if (ask.ask === 'decide') now = give(now, { do: 'accept' });
		else if (ask.ask === 'pull') now = give(now, { loaded: ask.stop });
		else throw new Error(`${ask.ask} at a dial that stands ${zero} high`);
	}
	return now;
}

describe('a dial that shows 1.5 with the tube snug', () => {
	const doubted = give(begin(JOB), { ready: true, pointer: 1.5 });
	const confirmed = give(doubted, { keep: true });

	it('is asked again once, and then is where this dial stands: stops lie as much higher', () => {
		expect(open(doubted, 'confirm')).toMatchObject({ of: 'pointer', reading: 1.5 });
		const plain = open(give(begin(JOB), { ready: true, pointer: 0 }), 'pull');
		expect(open(confirmed, 'pull').stop).toBeCloseTo(plain.stop + 1.5, 9);
		expect(open(confirmed, 'pull').expect.angle).toBeCloseTo(plain.expect.angle, 0);
	});

	it('is told beside the springback, which it is no part of', () => {
		const told = (run: Run) => open(run, 'pull').reason.find(({ code }) => code === 'springback-expected');
		const plain = told(give(begin(JOB), { ready: true, pointer: 0 }));
		expect(plain).not.toHaveProperty('zero');
		const { by, to, zero } = told(confirmed) as { by: number; to: number; zero: number };
		expect(zero).toBe(1.5);
		expect(by + to + zero).toBeCloseTo(open(confirmed, 'pull').stop, 9);
		expect(whyOf(open(confirmed, 'pull'))).toContain("The dial's zero, 1.5°, is in the stop.");
	});

	it('is what the next bend expects, and does not ask about', () => {
		const next = firstBend(confirmed, 1.5);
		expect(open(next, 'set')).toMatchObject({ bend: 2, pointer: 1.5 });
		expect(open(give(next, { ready: true, pointer: 1.5 }), 'pull').bend).toBe(2);
		expect(open(give(next, { ready: true, pointer: 0 }), 'confirm')).toMatchObject({
			of: 'pointer',
			expect: { value: 1.5 },
		});
	});

	it('is no wrong number and no error of the seat', () => {
		const plain = give(begin(JOB), { ready: true, pointer: 0 });
		expect(confirmed.state.filter.scatter.seat.sum).toBeCloseTo(plain.state.filter.scatter.seat.sum, 9);
		expect(confirmed.state.filter.scatter.wrong.sum).toBeLessThan(0.01);
	});

	it('opens the next session of that bender, on another die too, and no other bender', () => {
		const taught = firstBend(giveAll(learning(JOB, []), { ready: true, pointer: 1.5 }, { keep: true }), 1.5);
		const lesson = lessonOf(taught.state)!;
		expect(lesson.zero).toBe(1.5);
		const on = (tooling: Partial<Job['tooling']>) =>
			open(learning({ ...JOB, tooling: { ...JOB.tooling, ...tooling } }, [lesson]), 'set').pointer;
		expect(on({})).toBe(1.5);
		expect(on({ die: 'another' })).toBe(1.5);
		expect(on({ bender: 'another' })).toBe(0);
	});

	it('is given up where another number is confirmed later, and by taking it back', () => {
		const next = firstBend(confirmed, 1.5);
		const zeroed = giveAll(next, { ready: true, pointer: 0 }, { keep: true });
		expect(zeroed.state.filter.zero).toBe(0);
		expect(open(giveAll(confirmed, { undo: true }, { undo: true }), 'set').pointer).toBe(0);
	});
});
