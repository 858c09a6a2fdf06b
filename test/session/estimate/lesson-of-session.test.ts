import { describe, expect, it } from 'vitest';
import { kinOf } from '../../../src/session/estimate/kin-of-job.ts';
import { lessonOf } from '../../../src/session/estimate/lesson-of-session.ts';
import { initial } from '../../../src/session/log/fold.ts';
import { standing } from '../../../src/session/outputs.ts';
import { learned } from '../../../src/springback/history.ts';
import { MACHINE } from '../../../src/springback/kin.ts';
import type { Job } from '../../../src/tube/job.ts';
import { give, giveAll, open, type Run, startOf } from '../../helpers/session/session-run.ts';
import { hatJob } from '../../helpers/shop/hat.ts';
import { plainJob } from '../../helpers/shop/plain-job.ts';

function begin(job: Job, learn = true): Run {
	const state = initial({ ...startOf(job), id: 'hoop-1', learn });
	return { state, outputs: [standing(state, 'log')] };
}

/** The first bend pulled once and measured twice, 3 degrees short. */
function measured(run: Run): Run {
	const pull = give(run, { ready: true });
	const { stop, target } = open(pull, 'pull');
	return giveAll(pull, { loaded: stop }, { angles: [target - 3, target - 3] });
}

describe('the combination a job is learned under', () => {
	it('has lengths in mm, and what mechanics gives', () => {
		const kin = kinOf(plainJob());
		expect(kin).toMatchObject({ bender: 'shop', die: '6 in', material: '1020-dom', od: 38.1, clr: 152.4 });
		expect(kin.wall).toBeCloseTo(2.413, 9);
		// Source: the formula in mechanics.ts; .01682 on a 4.5 in die grows with the radius
		expect(kin.k).toBeCloseTo((0.01682 * 6) / 4.5, 4);
	});

	it('is the same for the same tube in a job in mm', () => {
		const inches = plainJob();
		const metric = plainJob({
			units: 'mm',
			tube: { ...inches.tube, material: { name: '1020-dom', yield: 413.7, modulus: 199_900 }, od: 38.1, wall: 2.413 },
			tooling: { clr: 152.4 },
		});
		expect({ ...kinOf(metric), k: 0, wall: 0 }).toEqual({ ...kinOf(inches), k: 0, wall: 0 });
		const lesson = lessonOf(measured(begin(metric)).state)!;
		expect(learned(kinOf(inches), startOf(inches).prior, [lesson]).from.exact.sessions).toBe(1);
	});
});

describe('what a session leaves', () => {
	it('names itself and counts', () => {
		const lesson = lessonOf(measured(begin(hatJob())).state)!;
		expect(lesson).toMatchObject({ session: 'hoop-1', at: '2026-01-01T00:00:00.000Z', pulls: 1, readings: 2 });
		expect(lesson.kin).toEqual(kinOf(hatJob()));
	});

	it('is nothing before a reading, and where the session is not to teach; of a pull alone it is how near the stop was', () => {
		const seated = give(begin(hatJob()), { ready: true });
		expect(lessonOf(seated.state)).toBeNull();
		const stopped = lessonOf(give(seated, { loaded: open(seated, 'pull').stop + 0.5 }).state)!;
		expect(stopped.information.flat()).toEqual(Array(MACHINE.length ** 2).fill(0));
		expect(stopped.scatter.stop.count).toBeGreaterThan(0);
		expect(stopped.scatter).toMatchObject({ seat: { count: 0 }, dial: { count: 0 }, finder: { count: 0 } });
		expect(lessonOf(measured(begin(hatJob(), false)).state)).toBeNull();
	});

	it('makes the next session surer, and expect what was measured', () => {
		const job = hatJob();
		const lesson = lessonOf(measured(begin(job)).state)!;
		const { prior } = startOf(job);
		const { prior: next } = learned(kinOf(job), prior, [lesson]);
		for (const i of [0, 1]) expect(next.cov[i]![i]).toBeLessThan(prior.cov[i]![i]!);
	});

	it('is as before once all that was read since is undone', () => {
		const before = measured(begin(hatJob()));
		const again = giveAll(before, { do: 'pull' }, { ready: true });
		const { stop, target } = open(again, 'pull');
		const more = giveAll(again, { loaded: stop }, { angle: target });
		expect(lessonOf(more.state)).not.toEqual(lessonOf(before.state));
		const undone = giveAll(more, ...Array(4).fill({ undo: true }));
		expect(undone.state.phase).toEqual(before.state.phase);
		expect(lessonOf(undone.state)).toEqual(lessonOf(before.state));
	});

	it('is of the reading as corrected', () => {
		const run = giveAll(measured(begin(hatJob())), { do: 'pull' }, { ready: true });
		const { stop } = open(run, 'pull');
		const [wrong, right] = [16.4, 16].map((angle) => giveAll(run, { loaded: stop }, { angle }));
		const entry = wrong!.state.entries.length;
		const amended = give(wrong!, { amend: { entry, reading: 16 } });
		expect(lessonOf(wrong!.state)).not.toEqual(lessonOf(right!.state));
		expect(lessonOf(amended.state)).toEqual(lessonOf(right!.state));
	});

	it('has what was read of a tube up to its scrap', () => {
		const run = measured(begin(hatJob()));
		const scrapped = give(run, { scrap: 'kinked' });
		expect(scrapped.state.phase).toMatchObject({ at: 'done', scrapped: 'kinked' });
		expect(lessonOf(scrapped.state)).toEqual(lessonOf(run.state));
	});

	it('is no other for a bend that was opened: only readings teach', () => {
		const before = measured(begin(hatJob()));
		const opened = give(before, { do: 'relieve' });
		expect(opened.state.bends[0]!.relievedFrom).not.toBeNull();
		expect(lessonOf(opened.state)).toEqual(lessonOf(before.state));
	});
});
