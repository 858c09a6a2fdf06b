import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { loadJob } from '../../src/job/load.ts';
import { type ReadSession, readSession } from '../../src/journal/catalogue.ts';
import { rowOf } from '../../src/journal/kept-row.ts';
import { LiveSession } from '../../src/journal/live.ts';
import type { LogRecord } from '../../src/journal/record.ts';
import type { WrittenLesson } from '../../src/journal/written-lesson.ts';
import { bendIn } from '../helpers/disk/kept-home.ts';
import { SAMPLE_JOBS } from '../helpers/disk/program.ts';
import { plainJob } from '../helpers/shop/plain-job.ts';
import { twoDieJob } from '../helpers/shop/two-dies.ts';

const home = mkdtempSync(join(tmpdir(), 'came-to-'));
afterAll(() => rmSync(home, { recursive: true }));

let day = 0;

/** A tube bent by the simulated operator, and left after so many of its answers. */
function bent(answers: number, job = plainJob()): string {
	const session = bendIn(home, { day: ++day, seed: day, job, answers, stays: true });
	if (session.ended === null) session.leave();
	session.close();
	return session.id;
}

/** The log with this in its last line. */
function saying(read: ReadSession, change: (said: Record<string, unknown>) => Record<string, unknown>): ReadSession {
	const last = read.records.at(-1)!;
	const records = [...read.records.slice(0, -1), { ...last, cameTo: change(last.cameTo as Record<string, unknown>) }];
	return { ...read, last: records.at(-1)!, records };
}

const world = () => ({ home, program: 'test', now: () => new Date(Date.UTC(2026, 1, 1)), random: () => 'x' });
const keys = (row: object) => JSON.parse(JSON.stringify(row));

describe('what the last line says that a session came to', () => {
	let all: string[];
	beforeAll(() => {
		const sample = loadJob(SAMPLE_JOBS[0]!, () => undefined).job;
		const twoDies = [bent(200, twoDieJob()), bent(3, twoDieJob())];
		all = [bent(200), bent(200, sample), ...twoDies, ...[0, 1, 4, 9].map((answers) => bent(answers))];
		const scrapped = LiveSession.resume(world(), bent(6), undefined, []);
		scrapped.answerText('{"scrap":"cracked"}');
		scrapped.close();
		// A finished session that is opened again, and its last answer taken back.
		const again = LiveSession.resume(world(), bent(200), undefined, []);
		again.answerText('{"undo":true}');
		again.leave();
		again.close();
		all.push(scrapped.id, again.id);
	}, 60_000);

	it('is what the fold of its log gives, to the last digit', () => {
		for (const id of all) {
			const read = readSession(home, id);
			expect(read.records.at(-1)).toHaveProperty('cameTo');
			expect(keys(rowOf(read))).toEqual(keys(rowOf(read, 'fold')));
		}
		const rows = all.map((id) => rowOf(readSession(home, id)));
		expect(new Set(rows.map(({ status }) => status))).toEqual(new Set(['open', 'done', 'scrapped']));
		expect(rows.filter(({ lesson }) => lesson !== null).length).toBeGreaterThan(3);
	});

	it('does not count where another method said it, or where lines follow', () => {
		const read = readSession(home, all[0]!);
		const truth = keys(rowOf(read, 'fold'));
		expect(keys(rowOf(saying(read, (said) => ({ ...said, method: 'other', status: 'scrapped' }))))).toEqual(truth);
		const resumed: LogRecord = {
			seq: read.records.length,
			v: 1,
			at: read.touched,
			events: [{ type: 'session-resumed' }],
		};
		const longer = { ...read, last: resumed, records: [...read.records, resumed] };
		expect(keys(rowOf(longer))).toEqual(keys(rowOf(longer, 'fold')));
	});

	it('is as if it were not there where it has not the form', () => {
		const read = readSession(home, all[0]!);
		const truth = keys(rowOf(read, 'fold'));
		const { numbers } = (read.records.at(-1)!.cameTo as { lesson: { numbers: number[] } }).lesson;
		const wrong: Record<string, unknown>[] = [
			{ status: 'lost' },
			{ bendsDone: 1.5 },
			{ bends: -1 },
			{ fits: 'yes' },
			{ mayFit: null },
			{ figures: null },
			{ figures: { springback: '4', error: 0, miss: null, taken: 1, pulls: 4 } },
			{ lesson: 'all' },
			{ lesson: numbers },
			{ lesson: { numbers: numbers.slice(1) } },
			{ lesson: { numbers: numbers.map((number, n) => (n === 5 ? null : number)) } },
			{ lesson: { numbers: numbers.map((number) => -number) } },
			{ lesson: { numbers: numbers.map((number, n) => (n === 0 ? -1 : number)) } },
		];
		for (const change of wrong) expect(keys(rowOf(saying(read, (said) => ({ ...said, ...change }))))).toEqual(truth);
		expect(keys(rowOf(saying(read, () => [] as never)))).toEqual(truth);
	});

	it('is as if it were not there where what several dies taught has not the form', () => {
		const read = readSession(home, all[2]!);
		const truth = keys(rowOf(read, 'fold'));
		expect(rowOf(read).besides).toHaveLength(1);
		const { lesson } = read.records.at(-1)!.cameTo as { lesson: WrittenLesson };
		const [first, second] = lesson.dies!;
		const wrong: Partial<Record<keyof WrittenLesson, unknown>>[] = [
			{ dies: undefined },
			{ dies: [] },
			{ dies: [first] },
			{ dies: [first, first] },
			{ dies: [first, { ...second, die: 'unknown' }] },
			{ dies: [first, { ...second, pulls: -1 }] },
			{ dies: [first, null] },
			{ vector: lesson.vector!.slice(1) },
			{ information: lesson.information!.slice(1) },
			{ information: lesson.information!.map((line) => line.map((x) => -x)) },
			{ information: lesson.information!.map((line, i) => (i === 0 ? line.map(() => null) : line)) },
		];
		for (const change of wrong) {
			// Another status shows whether it was believed.
			const said = saying(read, (all) => ({ ...all, status: 'scrapped', lesson: { ...lesson, ...change } }));
			expect(keys(rowOf(said))).toEqual(truth);
		}
		expect(rowOf(saying(read, (said) => ({ ...said, status: 'scrapped' }))).status).toBe('scrapped');
	});

	it('is believed where it has a right form: the tests above can fail', () => {
		const read = readSession(home, all[0]!);
		expect(rowOf(saying(read, (said) => ({ ...said, status: 'scrapped' }))).status).toBe('scrapped');
	});
});
