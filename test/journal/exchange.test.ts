import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { readSession, sessionFolder, sessionPath } from '../../src/journal/catalogue.ts';
import { exportSessions, importSessions } from '../../src/journal/exchange/exchange.ts';
import type { Exchanged } from '../../src/journal/exchange/facts.ts';
import { verifySessions } from '../../src/journal/exchange/verify.ts';
import { rowOf, summaryOf } from '../../src/journal/kept-row.ts';
import { SessionCache } from '../../src/journal/kept-sessions.ts';
import { LiveSession } from '../../src/journal/live.ts';
import { acquireLock, releaseLock } from '../../src/journal/lock.ts';
import { decodeRecord, encodeRecord } from '../../src/journal/record.ts';
import { exchangedText, verifiedText } from '../../src/words/notebook.ts';
import { bendIn } from '../helpers/disk/kept-home.ts';
import { lessonsKept } from '../helpers/session/lessons-kept.ts';
import { tempFolder } from './child.ts';

const NOW = new Date('2026-03-01T08:00:00Z');
const DAMAGED = 'log-damaged';

let here = '';
let there = '';
let stick = '';
beforeEach(() => {
	const folder = tempFolder();
	[here, there, stick] = ['here', 'there', 'stick'].map((name) => join(folder, name)) as [string, string, string];
});

const out = (home = here) => exportSessions(home, stick, { now: NOW });
const into = (home = there) => importSessions(home, stick, { now: NOW });
const hows = ({ copied }: Exchanged) => copied.map(({ how }) => how);
const rowsOf = (home: string) => new SessionCache(home).read().rows;
const bytesOf = (folder: string) =>
	Object.fromEntries(
		fs
			.readdirSync(folder)
			.sort()
			.map((name) => [name, fs.readFileSync(join(folder, name), 'latin1')]),
	);

/** One more line in the log of a session, which is left again. */
function noted(home: string, id: string, text: string): void {
	const world = { home, program: 'test', now: () => NOW, random: () => 'ab12' };
	const session = LiveSession.resume(world, id, {}, []);
	session.answerText(JSON.stringify({ note: text }));
	session.close();
}

describe('sessions copied out of one home and into another', () => {
	it('arrive byte by byte, marked as imported; done again nothing changes', () => {
		const ids = [1, 2].map((day) => bendIn(here, { day, answers: 6 }).id);
		expect(hows(out())).toEqual(['added', 'added']);
		expect(hows(into())).toEqual(['added', 'added']);
		for (const id of ids)
			expect(fs.readFileSync(sessionPath(there, id))).toEqual(fs.readFileSync(sessionPath(here, id)));
		expect(rowsOf(there).map(({ id, isImported }) => [id, isImported])).toEqual(
			ids.toReversed().map((id) => [id, true]),
		);
		expect(rowsOf(here).map(({ isImported }) => isImported)).toEqual([false, false]);
		expect(readSession(there, ids[0]!).imported).toEqual({ from: stick, at: NOW.toISOString() });
		const before = [bytesOf(stick), bytesOf(sessionFolder(there))];
		expect([hows(out()), hows(into()), hows(out(there)), hows(into(here))].flat()).toEqual(Array(8).fill('there'));
		expect([bytesOf(stick), bytesOf(sessionFolder(there))]).toEqual(before);
		expect(rowsOf(here).map(({ isImported }) => isImported)).toEqual([false, false]);
	});

	it('teach the other bench what they taught their own, and the other way round', () => {
		bendIn(here, { day: 1, answers: 12 });
		bendIn(there, { day: 2, answers: 12, seed: 2 });
		for (const home of [here, there]) out(home);
		for (const home of [here, there]) into(home);
		expect(lessonsKept(there)).toEqual(lessonsKept(here));
		expect(lessonsKept(here)).toHaveLength(2);
		expect(rowsOf(here).map(({ isImported }) => isImported)).toEqual([true, false]);
		expect(rowsOf(there).map(({ isImported }) => isImported)).toEqual([false, true]);
	});

	it('that had gone on get the lines that are missing, and lose none to a shorter copy', () => {
		const { id } = bendIn(here, { day: 1, answers: 5 });
		out();
		into();
		noted(here, id, 'gone on');
		const short = fs.readFileSync(join(stick, `${id}.log`));
		expect(out().copied).toMatchObject([{ how: 'longer', id, lines: 2 }]);
		expect(into().copied).toMatchObject([{ how: 'longer', id, lines: 2 }]);
		expect(fs.readFileSync(sessionPath(there, id))).toEqual(fs.readFileSync(sessionPath(here, id)));
		fs.writeFileSync(join(stick, `${id}.log`), short);
		expect(hows(into())).toEqual(['there']);
		expect(readSession(there, id).last).toMatchObject({ answer: { note: 'gone on' } });
	});

	it('that went on in two places are both kept, listed apart, and teach once', () => {
		const { id } = bendIn(here, { day: 1, answers: 12 });
		out();
		into();
		noted(here, id, 'here');
		noted(there, id, 'there');
		out();
		// Both were resumed in the same minute: those lines are equal.
		const lines = readSession(here, id).records.length - 1;
		const apart = into();
		expect(apart.copied).toMatchObject([{ how: 'apart', id, other: sessionPath(there, id), lines }]);
		expect(exchangedText('import', stick, apart)).toContain('went on in two places');
		expect(readSession(there, id).last).toMatchObject({ answer: { note: 'there' } });
		expect(readSession(there, `${id}-2`).last).toMatchObject({ answer: { note: 'here' } });
		expect(hows(into())).toEqual(['there']);
		const rows = rowsOf(there);
		expect(rows.map((row) => [row.id, summaryOf(row)?.id])).toEqual([
			[id, id],
			[`${id}-2`, `${id}-2`],
		]);
		expect(rowsOf(there).map((row) => summaryOf(row)?.id)).toEqual([id, `${id}-2`]);
		expect(lessonsKept(there)).toHaveLength(1);
		// And back: the folder, and then the first home, have both.
		expect(hows(out(there)).sort()).toEqual(['apart', 'there']);
		expect(hows(into(here)).sort()).toEqual(['apart', 'there']);
		expect(fs.readdirSync(stick).sort()).toEqual([`${id}-2.log`, `${id}.log`]);
		expect([out(here), into(here), out(there), into(there)].flatMap(hows)).toEqual(Array(8).fill('there'));
	});

	it('from a home that lies in the folder are taken as well', () => {
		const { id } = bendIn(here, { day: 1, answers: 3 });
		expect(importSessions(there, here, { now: NOW }).copied).toMatchObject([{ how: 'added', id }]);
	});
});

describe('an imported session that is open', () => {
	it('is gone on with only by its id, and is one of this home from then on', () => {
		const { id } = bendIn(here, { day: 1, answers: 3 });
		out();
		into();
		expect(rowsOf(there)).toMatchObject([{ status: 'open', isImported: true }]);
		noted(there, id, 'taken over');
		expect(rowsOf(there)).toMatchObject([{ status: 'open', isImported: false }]);
		expect(fs.readdirSync(sessionFolder(there))).toEqual([`${id}.log`]);
	});
});

describe('what is left out', () => {
	const leftOf = ({ left }: Exchanged) => Object.fromEntries(left.map(({ name, why }) => [name, why.code]));

	/** The bytes of a session's log with its first line changed. */
	function withStart(id: string, change: (start: Record<string, unknown>) => object, v = 1): Buffer {
		const file = fs.readFileSync(sessionPath(here, id));
		const end = file.indexOf('\n');
		const first = decodeRecord(file.subarray(0, end), 0);
		if (!('record' in first)) throw new Error('A log that was just written cannot be read.');
		const start = change(first.record.start as Record<string, unknown>);
		const line = encodeRecord({ ...first.record, v, start });
		return Buffer.concat([line, file.subarray(end + 1)]);
	}

	it('is named, and the rest is taken: damaged, newer, foreign, a pipe, an id that leads elsewhere', () => {
		const { id } = bendIn(here, { day: 1, answers: 4 });
		out();
		const whole = fs.readFileSync(join(stick, `${id}.log`));
		const bad = Buffer.from(whole);
		bad[whole.length - 40]! ^= 1;
		const event = encodeRecord({ seq: 1, v: 1, at: NOW.toISOString(), events: [{ type: 'tube-welded' }] });
		const first = whole.subarray(0, whole.indexOf('\n') + 1);
		const files: Record<string, Buffer> = {
			'damaged.log': bad,
			'newer.log': withStart(id, (start) => start, 2),
			'later-event.log': Buffer.concat([first, event]),
			'notes.log': Buffer.from('The dial sticks at 40.\n'),
			'empty.log': Buffer.alloc(0),
			'out.log': withStart(id, (start) => ({ ...start, id: '../../out' })),
			'long.log': withStart(id, (start) => ({ ...start, id: 'a'.repeat(300) })),
			'readme.txt': Buffer.from('no log'),
		};
		for (const [name, bytes] of Object.entries(files)) fs.writeFileSync(join(stick, name), bytes);
		spawnSync('mkfifo', [join(stick, 'pipe.log')]);
		fs.mkdirSync(join(stick, 'folder.log'));
		const result = into();
		expect(result.copied).toMatchObject([{ how: 'added', id }]);
		expect(leftOf(result)).toEqual({
			'damaged.log': DAMAGED,
			'empty.log': 'log-empty',
			'folder.log': 'no-file',
			'later-event.log': 'unknown-line',
			'long.log': 'not-an-id',
			'newer.log': 'log-newer',
			'notes.log': DAMAGED,
			'out.log': 'not-an-id',
			...(fs.existsSync(join(stick, 'pipe.log')) && { 'pipe.log': 'no-file' }),
		});
		const told = exchangedText('import', stick, result);
		for (const { name } of result.left) expect(told).toContain(`  ${name}: `);
		expect(fs.readdirSync(there)).toEqual(['sessions']);
		expect(fs.readdirSync(sessionFolder(there)).sort()).toEqual([`${id}.log`, `${id}.log.imported`]);
	});

	it('a last line that was cut off was never acknowledged; the lines before it are taken', () => {
		const { id } = bendIn(here, { day: 1, answers: 4 });
		out();
		const file = join(stick, `${id}.log`);
		fs.truncateSync(file, fs.statSync(file).size - 5);
		expect(hows(into())).toEqual(['added']);
		expect(readSession(there, id)).toMatchObject({ problem: null, tail: null });
		expect(readSession(there, id).records).toHaveLength(readSession(here, id).records.length - 1);
		// Whole again it is the same session, gone on.
		expect(hows(out())).toEqual(['longer']);
		expect(hows(into())).toEqual(['longer']);
	});

	it('what is damaged here is not written over, and a session at work is not touched', () => {
		const [first, second] = [1, 2].map((day) => bendIn(here, { day, answers: 4 }).id) as [string, string];
		out();
		into();
		noted(here, first, 'more');
		noted(here, second, 'more');
		out();
		const damaged = fs.readFileSync(sessionPath(there, first));
		damaged[60]! ^= 1;
		fs.writeFileSync(sessionPath(there, first), damaged);
		const lock = acquireLock(sessionPath(there, second), NOW);
		expect(leftOf(into())).toEqual({ [`${first}.log`]: 'damaged-there', [`${second}.log`]: 'locked' });
		expect(fs.readFileSync(sessionPath(there, first))).toEqual(damaged);
		releaseLock(lock);
		fs.rmSync(sessionPath(there, first));
		expect(hows(into()).sort()).toEqual(['added', 'longer']);
	});

	it('of a session that went on elsewhere nothing is written here, and its lines are exported from there', () => {
		const { id } = bendIn(here, { day: 1, answers: 4 });
		out();
		into();
		const world = { home: there, program: 'test', now: () => NOW, random: () => 'ab12' };
		const session = LiveSession.resume(world, id, {}, []);
		session.rescue(join(there, 'rescued'));
		session.answerText('{"note":"away"}');
		session.close();
		expect(hows(into())).toEqual(['there']);
		expect(hows(out(there))).toEqual(['longer']);
		expect(hows(into(here))).toEqual(['longer']);
		expect(readSession(here, id).last).toMatchObject({ answer: { note: 'away' } });
		noted(here, id, 'and home');
		out();
		expect(leftOf(into())).toEqual({ [`${id}.log`]: 'away' });
	});
});

describe('looking through every log', () => {
	const verified = () => verifySessions(here, rowsOf(here));

	it('finds a flipped bit although nothing about the file has changed, a cut line, and what is no log', () => {
		const ids = [1, 2, 3].map((day) => bendIn(here, { day, answers: 4 }).id) as [string, string, string];
		const lines = ids.reduce((sum, id) => sum + readSession(here, id).records.length, 0);
		expect(verified()).toEqual({ sessions: 3, lines, faults: [], noticed: [] });
		expect(verifiedText(verified())).toBe(`All 3 sessions are whole: ${lines} lines, each as it was written.`);
		const [flipped, cut] = ids.map((id) => sessionPath(here, id)) as [string, string];
		const { atime, mtime } = fs.statSync(flipped);
		const bytes = fs.readFileSync(flipped);
		bytes[bytes.length - 40]! ^= 4;
		fs.writeFileSync(flipped, bytes);
		fs.utimesSync(flipped, atime, mtime);
		fs.truncateSync(cut, fs.statSync(cut).size - 3);
		fs.writeFileSync(join(sessionFolder(here), 'notes.txt'), 'x');
		const found = verified();
		expect(found.faults).toMatchObject([{ name: ids[0], why: { code: DAMAGED } }]);
		expect(found.noticed).toMatchObject([
			{ name: ids[1], code: 'cut-line' },
			{ name: 'notes.txt', code: 'no-log' },
		]);
		expect(verifiedText(found)).toMatch(/^2 of 3 sessions are whole\. These are not:\n {2}\S+: The log .* is damaged/);
	});

	it('folds every line, and finds a last line that says something else; resuming and leaving mends it', () => {
		const { id } = bendIn(here, { day: 1 });
		const log = sessionPath(here, id);
		const records = readSession(here, id).records;
		const last = records.at(-1)!;
		const lesson = last.cameTo as { lesson: { numbers: number[] } };
		const lied = lesson.lesson.numbers.map((number, n) => (n === 2 ? number + 0.01 : number));
		const cameTo = { ...lesson, lesson: { numbers: lied } };
		fs.writeFileSync(log, Buffer.concat([...records.slice(0, -1), { ...last, cameTo }].map(encodeRecord)));
		expect(verified().faults).toMatchObject([{ name: id, why: { code: 'comes-to-other', by: 'last-line' } }]);
		const world = { home: here, program: 'test', now: () => NOW, random: () => 'ab12' };
		const session = LiveSession.resume(world, id, {}, []);
		session.leave();
		session.close();
		expect(verified().faults).toEqual([]);
		expect(rowsOf(here)).toMatchObject([{ status: 'done' }]);
	});

	it('finds a list that tells something else than the logs', () => {
		const { id } = bendIn(here, { day: 1, answers: 4 });
		const wrong = rowsOf(here).map((row) => ({ ...rowOf(readSession(here, row.id)), status: 'done' as const }));
		const { faults } = verifySessions(here, wrong);
		expect(faults).toMatchObject([{ name: id, why: { code: 'comes-to-other', by: 'list' } }]);
		expect(verifiedText(verifySessions(here, wrong))).toContain('Remove the folder cache');
	});
});
