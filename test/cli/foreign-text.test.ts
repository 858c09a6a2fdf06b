import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PassThrough } from 'node:stream';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { runBender } from '../../src/cli/bender.ts';
import { runCheck } from '../../src/cli/check.ts';
import { type Io, print, tellOn } from '../../src/cli/io.ts';
import { runLayout } from '../../src/cli/layout.ts';
import { layoutText } from '../../src/cli/layout-text.ts';
import { runLines } from '../../src/cli/lines.ts';
import { runLog } from '../../src/cli/log.ts';
import { reportError } from '../../src/cli/report.ts';
import { livePort } from '../../src/cli/session-on-screen.ts';
import { wallClock } from '../../src/cli/wall-clock.ts';
import type { Fault } from '../../src/job/facts/index.ts';
import { readSession } from '../../src/journal/catalogue.ts';
import { LiveSession } from '../../src/journal/live.ts';
import { storyOf } from '../../src/review/story.ts';
import { answered } from '../../src/session/log/answered.ts';
import { readThrough } from '../../src/session/log/read-back.ts';
import { coldPrior, growthOf } from '../../src/session/log/start.ts';
import { jobEnds } from '../../src/session/plan/ends.ts';
import { jobWarnings } from '../../src/session/plan/job-warnings.ts';
import type { Job } from '../../src/tube/job.ts';
import { layout } from '../../src/tube/layout.ts';
import { eventRows } from '../../src/words/record-log.ts';
import { reviewText } from '../../src/words/session-story.ts';
import { actsIn, FALSE_LINE, falseLines, hostileJob, hostileText } from '../helpers/cli/hostile.ts';
import { sample } from '../helpers/sample-size.ts';
import { FakeHome } from '../helpers/screen/fake-ports.ts';
import { frameText } from '../helpers/screen/page-frame.ts';
import { hatJob } from '../helpers/shop/hat.ts';
import { inMillimeters } from '../helpers/shop/twin.ts';

/** A fault with a text from elsewhere wherever one can have it. */
const faultOf = (note: string): Fault => ({
	at: note,
	found: { code: 'not-read', text: note },
	right: { code: 'radius-of-die', kept: { bender: note, die: note } },
});

const RUNS = { numRuns: sample(6, 25) };
const AS_DRAWN = { mirror: false, from: 'start' } as const;

let home = '';
beforeEach(() => {
	home = mkdtempSync(join(tmpdir(), 'pullbook-foreign-'));
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

/** Streams that keep what is written. */
function streams(input = '') {
	const written = { out: '', err: '' };
	const stream = (to: 'out' | 'err') =>
		new PassThrough().on('data', (chunk: Buffer) => {
			written[to] += chunk.toString();
		});
	const stdin = new PassThrough();
	stdin.end(input);
	return { io: { stdin, stdout: stream('out'), stderr: stream('err'), env: {} } as unknown as Io, written };
}

function expectHarmless({ out, err }: { out: string; err: string }): void {
	expect({ out: actsIn(out), err: actsIn(err) }).toEqual({ out: [], err: [] });
	expect([...falseLines(out), ...falseLines(err)]).toEqual([]);
}

let day = 0;

/** A session as an older version may have begun it: its names were never looked at. */
function begin(job: Job): LiveSession {
	const now = () => new Date(Date.UTC(2026, 0, 1, 0, 0, day++));
	return LiveSession.begin(
		{ home, program: 'test', now, random: () => 'ab12' },
		{ job, path: `/${job.name}.json`, raw: {} },
		true,
		[],
	);
}

/** Answers the open asks as expected, with a note at each. */
function bend(session: LiveSession, note: string, answers: number): void {
	for (let n = 0; n < answers && session.ask; n++) {
		const { ask } = session;
		const given = {
			set: { ready: true },
			pull: { loaded: 'stop' in ask ? ask.stop : 0 },
			measure: { angle: 'expect' in ask && 'angle' in ask.expect ? ask.expect.angle : 0 },
			confirm: { keep: true },
			check: { reading: ask.ask === 'check' ? ask.expect.value + 1 : 0 },
			decide: { do: 'accept' },
		}[ask.ask];
		session.answerText(JSON.stringify({ ...given, note }));
	}
}

describe('whatever a foreign text holds, nothing of it acts on a terminal or begins a line', () => {
	it('in a layout', () => {
		fc.assert(
			fc.property(hostileJob, (job) => {
				const { io, written } = streams();
				const growth = growthOf(coldPrior(job));
				const document = layout(job, growth, jobWarnings(job, growth), jobEnds(job, growth));
				print(io, layoutText(job, document, []));
				expectHarmless(written);
			}),
			RUNS,
		);
	});

	it('in job files, whatever is wrong with them, and in their names', async () => {
		await fc.assert(
			fc.asyncProperty(hostileJob, hostileText, fc.boolean(), async (job, key, json) => {
				const file = join(home, 'job.json');
				const { tube, shape, ...rest } = job;
				const raw = {
					pullbook: 'job/1',
					...rest,
					tube: { ...tube, material: tube.material.name },
					shape,
					[key]: { [key]: key },
				};
				writeFileSync(file, JSON.stringify(raw));
				const { io, written } = streams();
				await runCheck({ files: [file, join(home, key.replaceAll('/', '').replaceAll('\0', ''))], json, home }, io);
				await runLayout({ file, json, home, as: AS_DRAWN, learn: true }, io).catch((error) =>
					reportError(error, io.stderr, false),
				);
				expectHarmless(written);
			}),
			RUNS,
		);
	});

	it('in a kept session: its list, its story, its document, the page of benders and the line mode', async () => {
		await fc.assert(
			fc.asyncProperty(hostileJob, hostileText, fc.nat(30), async (job, note, answers) => {
				rmSync(home, { recursive: true, force: true });
				const session = begin(job);
				bend(session, note, answers);
				if (session.ask) session.answerText(JSON.stringify({ scrap: note }));
				session.close();
				for (const json of [false, true]) {
					const { io, written } = streams();
					await runLog({ id: null, json, home }, io);
					await runLog({ id: session.id, json, home }, io);
					await runBender({ name: null, json, home, options: {} }, io);
					await runBender({ name: note, json, home, options: {} }, io).catch((error) =>
						reportError(error, io.stderr, false),
					);
					expectHarmless(written);
				}
			}),
			RUNS,
		);
	});

	it('in the line mode', async () => {
		await fc.assert(
			fc.asyncProperty(hostileJob, hostileText, async (job, text) => {
				const lines = [
					{ ready: true, note: text },
					{ [text]: text },
					{ loaded: text },
					{ amend: { entry: 1, reading: 1, of: text } },
					{ evidence: { kind: text, bend: 1, reading: text } },
					{ scrap: text },
				];
				const { io, written } = streams(`${lines.map((line) => JSON.stringify(line)).join('\n')}\n${text}\n`);
				const session = begin(job);
				session.notices.push({ code: 'in-memory', folder: text });
				await runLines(session, io);
				session.close();
				expectHarmless(written);
				const told = written.out
					.trim()
					.split('\n')
					.map((line) => JSON.parse(line));
				for (const { why, warnings } of told) expect(actsIn(JSON.stringify([why, warnings]))).toEqual([]);
				for (const { why } of told) expect(why ?? '').not.toContain(`\n${FALSE_LINE}`);
			}),
			RUNS,
		);
	});

	it('in what is said on standard error', () => {
		fc.assert(
			fc.property(hostileText, fc.boolean(), (text, ours) => {
				const { io, written } = streams();
				tellOn(io)(text);
				reportError(Object.assign(new Error(text), ours ? { exitCode: 2 } : {}), io.stderr, !ours);
				expect(actsIn(written.err)).toEqual([]);
				if (ours) expect(falseLines(written.err)).toEqual([]);
			}),
			RUNS,
		);
	});

	it('on the screen: each page of a session, its log, and the home page', async () => {
		await fc.assert(
			fc.asyncProperty(
				hostileJob,
				hostileText,
				fc.nat(14),
				fc.constantFrom('', '*', 'h', '*1\r', '\x1b[A', '*2\r'),
				fc.boolean(),
				async (job, note, answers, keys, ascii) => {
					rmSync(home, { recursive: true, force: true });
					const session = begin(job);
					bend(session, note, answers);
					const row = {
						id: note,
						job: job.name,
						status: 'done',
						started: note,
						bendsDone: 1,
						bends: 3,
						fits: false,
					} as const;
					const jobs = [
						{ path: note, name: job.name, summary: note },
						{ path: `${note}2`, name: note, summary: '', faults: [faultOf(note)] },
					];
					const rows = {
						jobs,
						sessions: [row],
						review: reviewText(readSession(home, session.id), wallClock).split('\n'),
					};
					const live = { ...livePort(session), logPath: note, messages: [note] };
					const port = new FakeHome(live, { ...rows, another: live });
					const size = { columns: 80, rows: 24 };
					expect(actsIn(await frameText(port, size, { keys, ascii }))).toEqual([]);
					// Leaving the screen closes the session.
					expect(actsIn(await frameText(port, size, { jobPath: note, keys: `+++${keys}`, ascii }))).toEqual([]);
				},
			),
			RUNS,
		);
	});
});

describe('a foreign text is still read as what it is', () => {
	it.each([
		['\x1b[2J', '\\u001b[2J'],
		['a\nb', 'a\\nb'],
		['\u202eabc', '\\u202eabc'],
		['Rail für 漢 🚤', 'Rail für 漢 🚤'],
	])('%j stands in the log as %s', async (note, shown) => {
		const session = begin(hatJob());
		session.answerText(JSON.stringify({ note }));
		session.close();
		const { io, written } = streams();
		await runLog({ id: session.id, json: false, home }, io);
		expect(written.out).toContain(`note: ${shown}`);
		const { io: json, written: document } = streams();
		await runLog({ id: session.id, json: true, home }, json);
		expect(JSON.stringify(JSON.parse(document.out).notes)).toContain(JSON.stringify(note));
	});
});

describe('what an operator typed stays as it was typed', () => {
	/** With lengths and a chance in it, in a job of the other unit. */
	const NOTE = 'sawed 2 in, only 3 in 100';

	it('on the screen, in the log, its document, its review and its record', async () => {
		const session = begin(inMillimeters(hatJob()));
		const said = await frameText(
			new FakeHome(livePort(session), { jobs: [], sessions: [] }),
			{ columns: 100, rows: 30 },
			{
				jobPath: '/hat.json',
				keys: `+*1\r${NOTE}\r`,
			},
		);
		expect(said).toContain(NOTE);
		const { io, written } = streams();
		await runLog({ id: session.id, json: false, home }, io);
		expect(written.out).toContain(`note: ${NOTE}`);
		const { io: json, written: document } = streams();
		await runLog({ id: session.id, json: true, home }, json);
		expect(JSON.parse(document.out).notes).toEqual([NOTE]);
		const kept = readSession(home, session.id);
		expect(reviewText(kept, wallClock)).toContain(NOTE);
		const { state } = storyOf(readThrough(kept.records));
		expect(eventRows(answered(state), state.start.job, wallClock).flat().join(' ')).toContain(NOTE);
		expect(readFileSync(kept.path, 'utf8')).toContain(NOTE);
	});
});
