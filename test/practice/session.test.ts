import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { runLog } from '../../src/cli/log.ts';
import { runNotebook } from '../../src/cli/notebook.ts';
import { byHandLines, endLines, practicedLines } from '../../src/cli/practice-text.ts';
import { loadJob } from '../../src/job/load.ts';
import { listSessions, readSession } from '../../src/journal/catalogue.ts';
import { SessionCache } from '../../src/journal/kept-sessions.ts';
import { doneOf } from '../../src/practice/closing-note.ts';
import {
	beginPractice,
	type Practice,
	type PracticeStep,
	playedOut,
	practiceHome,
} from '../../src/practice/practice.ts';
import { draws } from '../../src/practice/random.ts';
import { Station } from '../../src/practice/station.ts';
import { trueCheck } from '../../src/practice/true-tube.ts';
import { USUAL_SHOP } from '../../src/practice/world.ts';
import type { PullAsk, SetAsk } from '../../src/session/protocol/asks.ts';
import { checkValue } from '../../src/tube/checks.ts';
import { marks } from '../../src/tube/marks.ts';
import { finishedShape } from '../../src/tube/resolve.ts';
import { gaveUpWords, sightInWords } from '../../src/words/practice.ts';
import { documentFaults } from '../helpers/cli/documents.ts';
import { written } from '../helpers/cli/written.ts';
import { SAMPLE_JOBS } from '../helpers/disk/program.ts';
import { sample } from '../helpers/sample-size.ts';

const home = mkdtempSync(join(tmpdir(), 'practice-'));
afterAll(() => rmSync(home, { recursive: true }));
let count = 0;

function begin(path: string, seed: number): Practice {
	const about = { home, program: 'test', now: () => new Date(), random: () => `t${count++}` };
	return beginPractice(loadJob(path), USUAL_SHOP, seed, about);
}

function play(path: string, seed: number) {
	const practice = begin(path, seed);
	try {
		const steps: PracticeStep[] = [...playedOut(practice, gaveUpWords)];
		return { practice, steps, done: doneOf(steps)! };
	} finally {
		practice.session.close();
	}
}

const [JOB = ''] = SAMPLE_JOBS;

const played = new Map<string, ReturnType<typeof play>>();

/** A whole session of a job and a seed, played once for all who look at it. */
function playedOnce(path: string, seed: number) {
	const key = `${path} ${seed}`;
	const known = played.get(key) ?? play(path, seed);
	played.set(key, known);
	return known;
}

describe('a session played on the simulated bender', () => {
	it('says so wherever it is looked at: in its log, its document, its list and its review', async () => {
		const knee = SAMPLE_JOBS.find((path) => path.includes('handrail-knee'))!;
		const { id, records } = readSession(practiceHome(home), playedOnce(knee, 3).practice.session.id);
		const at = practiceHome(home);
		const told = async (form: { id: string | null; json: boolean }) => {
			const { io, kept } = written();
			expect(await runLog({ ...form, home: at }, io)).toBe(0);
			return kept.out;
		};
		const document = JSON.parse(await told({ id, json: true }));
		expect(document).toMatchObject({ simulated: true });
		expect(documentFaults('log', document)).toEqual([]);
		expect(await told({ id, json: false })).toContain('No tube was bent.');
		expect((await told({ id: null, json: false })).split('\n').find((line) => line.includes(id))).toContain(
			'(simulated)',
		);
		expect(records[0]).toMatchObject({ start: { simulated: { seed: 3 }, learn: false } });
	});

	it('teaches the pieces after it, and no home that it is taken over to', () => {
		const file = loadJob(SAMPLE_JOBS.find((path) => path.includes('handrail-knee'))!);
		// Homes of their own, which the tests around this one do not look into.
		const apart = mkdtempSync(join(tmpdir(), 'pieces-'));
		const about = { home: join(apart, 'batch'), program: 'test', now: () => new Date(), random: () => `t${count++}` };
		const practice = beginPractice({ ...file, job: { ...file.job, quantity: 2 } }, USUAL_SHOP, 5, about);
		for (const _step of playedOut(practice, gaveUpWords));
		practice.session.close();
		const [shared, other] = [join(apart, 'shared'), join(apart, 'other')];
		const { io } = written();
		runNotebook('export', shared, { home: practiceHome(about.home), json: false }, io);
		runNotebook('import', shared, { home: other, json: false }, io);
		const lessons = [practiceHome(about.home), other].map((at) => new SessionCache(at).read().rows[0]!.lesson);
		expect(lessons.map((lesson) => lesson !== null)).toEqual([true, false]);
		rmSync(apart, { recursive: true });
	});

	it.each(SAMPLE_JOBS.map((path) => [basename(path), path]))('of %s comes to its end', (_, path) => {
		for (let seed = 0; seed < sample(1, 3); seed++) {
			const { steps, done, practice } = playedOnce(path, seed);
			const { job } = practice.session.state.start;
			expect(done.bends.every(({ pulls }) => done.scrapped || pulls > 0)).toBe(true);
			const text = [
				...steps.flatMap((step) => practicedLines(step, job)),
				...endLines(done, practice.station.trueAngles, job),
			];
			expect(text.filter((line) => line.length > 80)).toEqual([]);
			expect(text.join('\n')).not.toMatch(/undefined|NaN|null/);
		}
	});

	it('believes of the bends about what they truly are', () => {
		const misses: number[] = [];
		for (let seed = 0; seed < sample(5, 12); seed++) {
			const { done, practice } = playedOnce(JOB, seed);
			for (const [i, { made, sd }] of done.bends.entries()) {
				misses.push(((made ?? 0) - practice.station.trueAngles[i]!) / (sd ?? 1));
			}
		}
		const spread = Math.sqrt(misses.reduce((sum, miss) => sum + miss * miss, 0) / misses.length);
		expect(spread).toBeGreaterThan(0.85);
		expect(spread).toBeLessThan(1.3);
	});

	it('is the same from the same seed, and another from another', () => {
		const asks = ({ steps }: ReturnType<typeof play>) => steps.map(({ action }) => action);
		expect(asks(play(JOB, 4))).toEqual(asks(playedOnce(JOB, 4)));
		expect(asks(playedOnce(JOB, 4))).not.toEqual(asks(playedOnce(JOB, 5)));
	});

	it('keeps its logs out of the sessions that teach', () => {
		play(JOB, 1);
		expect(listSessions(home)).toEqual([]);
		expect(listSessions(practiceHome(home)).length).toBeGreaterThan(0);
		expect(readdirSync(home)).toEqual(['practice']);
	});
});

describe('a practice by hand', () => {
	it('tells the true tube at its end, and not before', () => {
		const left = begin(JOB, 6);
		left.session.close();
		expect(byHandLines(left).join(' ')).toMatch(/^Left before its end\. .* you cannot go on with this session\.$/);
		const { practice, done } = playedOnce(JOB, 6);
		expect(byHandLines(practice)).toEqual(
			endLines(done, practice.station.trueAngles, practice.session.state.start.job),
		);
	});
});

describe('the simulated bender at an ask', () => {
	it('shows the same again until something is done, and says it in words', () => {
		const { session, station } = begin(JOB, 6);
		const set = session.ask as SetAsk;
		const first = station.see(set);
		expect(station.see(set)).toBe(first);
		expect(sightInWords(set, first, session.state.start.job)).toContain('the dial shows');
		session.answer({ action: { do: 'ready' } });
		const pulled = station.see(session.ask!);
		const angle = station.trueAngles[0];
		session.answer({ action: { do: 'loaded', loaded: pulled.loaded! } });
		station.see(session.ask!);
		session.answer({ action: { do: 'undo' } });
		// The number was taken back, not the stroke.
		expect(station.see(session.ask!)).toEqual(pulled);
		const { job } = session.state.start;
		const pull = session.ask as PullAsk;
		expect(sightInWords(pull, pulled, job)).toContain(
			`Simulated stroke to the stop: held, the dial shows ${pulled.loaded}°`,
		);
		expect(sightInWords({ ...pull, stop: pull.stop + 3 }, pulled, job)).toContain(
			`Simulated stroke, made when the stop was ${pull.stop}°: held`,
		);
		expect(station.trueAngles[0]).toBe(angle);
		session.close();
	});

	it('opens the bend where that is decided', () => {
		const { session, station } = begin(JOB, 7);
		station.see(session.ask!);
		session.answer({ action: { do: 'ready' } });
		station.see(session.ask!);
		const before = station.trueAngles[0]!;
		const decide = { ask: 'decide', bend: 1, open: 1.5 } as Parameters<Station['did']>[0];
		station.did(decide, { do: 'relieve' });
		expect(before - station.trueAngles[0]!).toBeGreaterThan(0.4);
		expect(before - station.trueAngles[0]!).toBeLessThan(2.6);
		session.close();
	});

	it('refuses a bend that has never been in the die', () => {
		const station = new Station(loadJob(JOB).job, USUAL_SHOP, draws(1));
		expect(() => station.see({ ask: 'measure', bend: 2 } as Parameters<Station['see']>[0])).toThrow('bend 2');
	});
});

describe('the true tube', () => {
	it.each(SAMPLE_JOBS.map((path) => [basename(path), path]))('of %s, made as drawn, measures as drawn', (_, path) => {
		const { job } = loadJob(path);
		const shape = finishedShape(job, { value: 1 });
		const placed = marks(job, shape, 1e4);
		const bends = shape.bends.map(({ angle, rotation, radius }, i) => {
			return { mark: placed[i]!.fromStart, rotation, angle, wrapped: angle, radius };
		});
		const checks = job.checks.filter((check) => !['span', 'overall', 'ovality'].includes(check.kind));
		for (const check of checks) {
			expect(trueCheck(check, bends, 1e4, job)).toBeCloseTo(checkValue(check, shape, job.tube), 6);
		}
		expect(shape.bends.length).toBeGreaterThan(0);
	});
});
