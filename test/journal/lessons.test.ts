import fs from 'node:fs';
import { basename, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { makeFolder } from '../../src/files/disk.ts';
import { realFs } from '../../src/files/fs-port.ts';
import { sessionFolder, sessionPath } from '../../src/journal/catalogue.ts';
import { cachePath, readCache, writeCache } from '../../src/journal/kept-cache.ts';
import { type KeptRow, summaryOf } from '../../src/journal/kept-row.ts';
import { SessionCache } from '../../src/journal/kept-sessions.ts';
import { LiveSession } from '../../src/journal/live.ts';
import { methodName } from '../../src/journal/method-name.ts';
import { openLog } from '../../src/journal/open-log.ts';
import { readLog } from '../../src/journal/read-log.ts';
import { encodeRecord } from '../../src/journal/record.ts';
import { lessonOf } from '../../src/session/estimate/lesson-of-session.ts';
import { readBack } from '../../src/session/log/read-back.ts';
import { errorWords } from '../../src/words/error.ts';
import { FaultFs } from '../helpers/disk/fault-fs.ts';
import { bendIn } from '../helpers/disk/kept-home.ts';
import { sample } from '../helpers/sample-size.ts';
import { lessonsKept } from '../helpers/session/lessons-kept.ts';
import { plainJob } from '../helpers/shop/plain-job.ts';
import { tempFolder } from './child.ts';

/** What the logs say, each folded here and now. */
function folded(home: string): unknown[] {
	return fs
		.readdirSync(sessionFolder(home))
		.filter((name) => name.endsWith('.log'))
		.sort()
		.reverse()
		.flatMap((name) => lessonOf(readBack(readLog(join(sessionFolder(home), name)).records)) ?? []);
}

/** Reads with a file system that notes which logs were read. */
function readNoting(home: string, apart: string | null = null) {
	const read: string[] = [];
	const noting = {
		...realFs,
		readFileSync: (path: string) => {
			if (path.endsWith('.log')) read.push(path);
			return realFs.readFileSync(path);
		},
	};
	const { rows, left } = new SessionCache(home, noting).read(() => true, apart);
	return { rows: rows.map(plain), left, read };
}

/** A row with its parts as they are, whether they were folded just now or come from the cache. */
function plain(row: KeptRow): KeptRow {
	const { id, path, job, at, startId, touched, status, listed, problem, isDamaged, kin, pulls, lesson } = row;
	const { besides, figures, isImported } = row;
	const names = { id, path, job, at, startId, touched, status, listed, problem, isDamaged, isImported };
	return { ...names, kin, pulls, lesson, besides, figures };
}

/** The logs of tubes that were bent once for all these tests, by their days. */
const LOGS = new Map<number, Buffer>();

/** A home in which a tube was bent on each of these days, with the cache that they left. */
function homeOf(...days: number[]): string {
	const home = tempFolder();
	makeFolder(realFs, sessionFolder(home));
	for (const day of days) {
		const log = LOGS.get(day);
		if (log === undefined) {
			bendIn(home, { day, seed: day });
			LOGS.set(day, fs.readFileSync(pathOf(home, day)));
		} else fs.writeFileSync(pathOf(home, day), log);
	}
	new SessionCache(home).read();
	return home;
}

const pathOf = (home: string, day: number) => sessionPath(home, `202601${String(day).padStart(2, '0')}-080000-ab12`);

describe('the lessons of the kept sessions', () => {
	it('of a home that is not there are none, and nothing is made', () => {
		const home = join(tempFolder(), 'none');
		expect(lessonsKept(home)).toEqual([]);
		expect(fs.existsSync(home)).toBe(false);
	});

	it('are the fold of the logs, and the same from the cache, to the last digit', () => {
		const home = homeOf(1, 2, 3);
		const truth = folded(home);
		expect(truth).toHaveLength(3);
		fs.rmSync(cachePath(home), { force: true });
		const first = readNoting(home);
		const second = readNoting(home);
		expect([first.read.length, second.read.length]).toEqual([3, 0]);
		expect(first.rows.map(({ lesson }) => lesson)).toEqual(truth);
		expect(second.rows).toEqual(first.rows);
		expect(JSON.stringify(second.rows.map(summaryOf))).toBe(JSON.stringify(first.rows.map(summaryOf)));
	});

	it('of a session just left need no folding, and are what its log says', () => {
		const home = homeOf(1);
		bendIn(home, { day: 2, answers: 4 });
		bendIn(home, { day: 3, learn: false });
		const { rows, read } = readNoting(home);
		expect(read).toEqual([]);
		fs.rmSync(cachePath(home));
		expect(readNoting(home).rows).toEqual(rows);
	});

	it('leave out sessions that are not to teach, and practice', () => {
		const home = homeOf(1);
		bendIn(home, { day: 2, learn: false });
		bendIn(join(home, 'practice'), { day: 3 });
		expect(lessonsKept(home).map(({ session }) => session)).toEqual(['20260101-080000-ab12']);
	});

	it('a newer reading counts and an undone one does not, in a session gone on with', () => {
		const home = homeOf(1);
		bendIn(home, { day: 2, answers: 3 });
		const [before] = lessonsKept(home);
		let minute = 0;
		const now = () => new Date(Date.UTC(2026, 1, 1, 8, minute++));
		const world = { home, program: 'test', now, random: () => 'zz' };
		const session = LiveSession.resume(world, '20260102-080000-ab12', {}, []);
		session.answerText('{"undo":true}');
		// As by kill -9: never closed, so that only the log says it.
		const [undone] = lessonsKept(home);
		expect(undone).not.toEqual(before);
		expect(lessonsKept(home)).toEqual(folded(home));
		session.close();
		expect(lessonsKept(home)).toEqual(folded(home));
	});

	it('follow a log that is new, gone, longer or back in time, and fold only that', () => {
		const home = homeOf(1, 2, 3);
		const now = Date.now() / 1000;
		lessonsKept(home);
		const log = fs.readFileSync(pathOf(home, 2));
		fs.rmSync(pathOf(home, 2));
		expect(readNoting(home)).toMatchObject({ read: [] });
		expect(lessonsKept(home)).toEqual(folded(home));
		fs.writeFileSync(pathOf(home, 2), log);
		expect(readNoting(home).read).toEqual([pathOf(home, 2)]);
		const third = fs.readFileSync(pathOf(home, 3));
		fs.writeFileSync(pathOf(home, 3), third.subarray(0, third.length - 20));
		fs.utimesSync(pathOf(home, 1), now, now - 5000);
		expect(readNoting(home).read.sort()).toEqual([pathOf(home, 1), pathOf(home, 3)]);
		expect(readNoting(home).read).toEqual([]);
		expect(lessonsKept(home)).toEqual(folded(home));
	});

	it('are the same in whatever order the cache has them, with one gone and one new besides', () => {
		const home = homeOf(1, 2, 3, 4);
		const { rows } = readNoting(home);
		const cached = readCache(home, realFs);
		expect(cached.map(({ row }) => row.id)).toEqual(rows.map(({ id }) => id));
		for (const order of [
			[3, 2, 1, 0],
			[1, 0, 3, 2],
			[2, 3, 0, 1],
		]) {
			writeCache(
				home,
				order.map((n) => cached[n]!),
				realFs,
			);
			expect(readNoting(home)).toEqual({ rows, left: 0, read: [] });
		}
		writeCache(
			home,
			[2, 0, 3].map((n) => cached[n]!),
			realFs,
		);
		fs.rmSync(pathOf(home, 2));
		expect(readNoting(home)).toEqual({ rows: rows.filter((_, n) => n !== 2), left: 0, read: [pathOf(home, 3)] });
		expect(readCache(home, realFs).map(({ row }) => row.id)).toEqual([rows[0]!.id, rows[1]!.id, rows[3]!.id]);
	});

	it('of a session that went on in another place are found there', () => {
		const home = homeOf(1);
		const { log, records } = openLog(pathOf(home, 1), { now: new Date() });
		log.rescue(join(home, 'stick'));
		const { path } = log;
		log.append({
			seq: records.length,
			v: 1,
			at: '2026-02-01T08:00:00.000Z',
			events: [{ type: 'note-written', text: 'moved' }],
		});
		log.close();
		const { rows } = readNoting(home);
		expect(rows).toMatchObject([{ id: '20260101-080000-ab12', path, touched: '2026-02-01T08:00:00.000Z' }]);
		expect(readNoting(home)).toMatchObject({ rows, read: [] });
		fs.rmSync(path);
		expect(lessonsKept(home)).toHaveLength(1);
		expect(readNoting(home).rows[0]?.problem).toMatchObject({ code: 'log-elsewhere', to: path });
	});
});

describe('a log that is not whole', () => {
	it('teaches what its whole records before the damage do', () => {
		const home = homeOf(1, 2);
		const path = pathOf(home, 2);
		const bytes = fs.readFileSync(path);
		bytes[bytes.lastIndexOf('\n', bytes.length - 2) + 30]! ^= 1;
		fs.writeFileSync(path, bytes);
		const { records, damage } = readLog(path);
		expect(damage).not.toBeNull();
		expect(lessonsKept(home)[0]).toEqual(lessonOf(readBack(records)));
		expect(lessonsKept(home)[0]).toEqual(lessonOf(readBack(records)));
		expect(readNoting(home).rows[0]).toMatchObject({ listed: null, isDamaged: true });
	});

	it.each([
		['empty', Buffer.alloc(0)],
		['nonsense', Buffer.from('nonsense\n')],
		['of another program', encodeRecord({ seq: 0, v: 1, at: 'x', start: { job: {}, prior: {} } })],
		['of a later version', encodeRecord({ seq: 0, v: 2, at: 'x' })],
		['without a start', encodeRecord({ seq: 0, v: 1, at: 'x' })],
	])('%s, teaches nothing and keeps nothing else from teaching', (_, bytes) => {
		const home = homeOf(1);
		const truth = folded(home);
		fs.writeFileSync(pathOf(home, 2), bytes);
		for (let time = 0; time < 2; time++) {
			expect(lessonsKept(home)).toEqual(truth);
			expect(readNoting(home).rows[0]).toMatchObject({ id: '20260102-080000-ab12', listed: null, lesson: null });
		}
	});

	it('with records that do not follow from each other is one problem among the sessions', () => {
		const home = homeOf(1);
		const [first] = readLog(pathOf(home, 1)).records;
		const undo = { seq: 1, v: 1, at: 'x', events: [{ type: 'record-voided', entry: 7 }] };
		fs.writeFileSync(pathOf(home, 2), Buffer.concat([encodeRecord(first), encodeRecord(undo)]));
		expect(lessonsKept(home)).toHaveLength(1);
		expect(readNoting(home).rows[0]?.problem).toMatchObject({
			code: 'does-not-follow',
			text: expect.stringMatching(/record 7 cannot be undone/),
		});
	});
});

describe('the cache', () => {
	const changes: [string, (bytes: Buffer) => Buffer][] = [
		['empty', () => Buffer.alloc(0)],
		['one line', (bytes) => bytes.subarray(0, bytes.indexOf('\n'))],
		['cut short', (bytes) => bytes.subarray(0, bytes.length - 8)],
		['longer', (bytes) => Buffer.concat([bytes, Buffer.alloc(8)])],
		['edited by hand', (bytes) => Buffer.from(bytes.toString('latin1').replace('"1020-dom"', '"1020-cds"'), 'latin1')],
		[
			'with one bit of a number flipped',
			(bytes) => Buffer.from(bytes.map((b, i) => (i === bytes.length - 3 ? b ^ 1 : b))),
		],
		[
			'of another method',
			(bytes) => Buffer.from(bytes.toString('latin1').replace(methodName(), 'f'.repeat(16)), 'latin1'),
		],
		[
			'bad JSON under a right checksum line',
			(bytes) => Buffer.concat([bytes.subarray(0, bytes.indexOf('\n') + 1), Buffer.from('{')]),
		],
	];
	it.each(changes)('%s, is not believed, and is made anew', (_, change) => {
		const home = homeOf(1, 2);
		const truth = folded(home);
		lessonsKept(home);
		const whole = fs.readFileSync(cachePath(home));
		const changed = change(whole);
		expect(changed.equals(whole)).toBe(false);
		fs.writeFileSync(cachePath(home), changed);
		const { rows, read } = readNoting(home);
		expect(rows.map(({ lesson }) => lesson)).toEqual(truth);
		expect(read).toHaveLength(2);
		expect(readNoting(home).read).toEqual([]);
	});

	it('that is a folder, or cannot be written, changes nothing but the time it takes', () => {
		const home = homeOf(1);
		const truth = folded(home);
		fs.rmSync(cachePath(home));
		fs.mkdirSync(cachePath(home));
		expect(lessonsKept(home)).toEqual(truth);
		fs.rmSync(join(home, 'cache'), { recursive: true });
		fs.writeFileSync(join(home, 'cache'), 'in the way');
		expect(lessonsKept(home)).toEqual(truth);
		expect(fs.readFileSync(join(home, 'cache'), 'utf8')).toBe('in the way');
	});

	it('left half made by another program is passed by, and removed when it is old', () => {
		const home = homeOf(1);
		fs.rmSync(cachePath(home));
		const half = `${cachePath(home)}.new`;
		fs.writeFileSync(half, 'half');
		expect(lessonsKept(home)).toHaveLength(1);
		expect(fs.existsSync(cachePath(home))).toBe(false);
		fs.utimesSync(half, 0, 0);
		expect(lessonsKept(home)).toHaveLength(1);
		expect([fs.existsSync(cachePath(home)), fs.existsSync(half)]).toEqual([true, false]);
	});

	it('is filled bit by bit where the time is short, the newest first, and tells what is left out', () => {
		const home = homeOf(1, 2, 3, 4);
		fs.rmSync(cachePath(home));
		const asked: number[] = [];
		const kept = new SessionCache(home).read((remaining) => asked.push(remaining) < 3);
		expect(kept.rows.map(({ id }) => id.slice(0, 8))).toEqual(['20260104', '20260103']);
		expect([kept.left, asked]).toEqual([2, [4, 3, 2, 2]]);
		expect(readNoting(home)).toMatchObject({ left: 0, read: [pathOf(home, 2), pathOf(home, 1)] });
	});

	it('one that is about to go on is not read for them and is not among them, nor is it forgotten', () => {
		const home = homeOf(1, 2, 3);
		const touch = (day: number) => fs.utimesSync(pathOf(home, day), 0, 1000 + day);
		const daysOf = (rows: readonly KeptRow[]) => rows.map(({ id }) => Number(id.slice(6, 8)));
		const apart = basename(pathOf(home, 2), '.log');
		expect(daysOf(readNoting(home, apart).rows)).toEqual([3, 1]);
		touch(2);
		const alone = readNoting(home, apart);
		expect([daysOf(alone.rows), alone.read]).toEqual([[3, 1], []]);
		touch(1);
		const beside = readNoting(home, apart);
		expect([daysOf(beside.rows), beside.read]).toEqual([[3, 1], [pathOf(home, 1)]]);
		const all = readNoting(home);
		expect([daysOf(all.rows), all.read]).toEqual([[3, 2, 1], [pathOf(home, 2)]]);
	});

	it('a log that grows after it was looked at is looked at again', () => {
		const home = homeOf(1);
		fs.rmSync(cachePath(home));
		const path = pathOf(home, 1);
		const note = {
			seq: readLog(path).records.length,
			v: 1,
			at: 'later',
			events: [{ type: 'note-written', text: 'x' }],
		};
		const growing = {
			...realFs,
			readFileSync: (asked: string) => {
				const bytes = realFs.readFileSync(asked);
				if (asked === path) fs.appendFileSync(path, encodeRecord(note));
				return bytes;
			},
		};
		expect(new SessionCache(home, growing).read().rows[0]?.touched).not.toBe('later');
		expect(readNoting(home).rows[0]?.touched).toBe('later');
	});
});

/** At each call one of them, the next at the next call; at full size all of them at each. */
const inTurn = <T>(kinds: readonly T[], at: number): T[] =>
	Array.from({ length: sample(1, kinds.length) }, (_, i) => kinds[(at + i) % kinds.length]!);

describe('a failing disk', () => {
	/** Two logs as they stand on a disk in memory. */
	function disk() {
		const home = homeOf(1, 2);
		const truth = folded(home);
		const made = () => {
			const fresh = new FaultFs();
			makeFolder(fresh, '/home/sessions');
			for (const day of [1, 2]) fresh.place(pathOf('/home', day), fs.readFileSync(pathOf(home, day)), day);
			return fresh.afterProcessEnd();
		};
		return { truth, made };
	}

	it('at any call, of any kind, never makes a number wrong nor stops anything but the listing itself', () => {
		const { truth, made } = disk();
		const calls = () => {
			const whole = made();
			lessonsKept('/home', whole);
			return whole.calls;
		};
		const most = calls();
		expect(most).toBeGreaterThan(10);
		for (let at = 1; at <= most; at++) {
			for (const code of inTurn(['EIO', 'ENOSPC', 'EACCES'], at)) {
				const failing = made();
				failing.fault = { kind: 'errno', at, code };
				const label = `${code} at call ${at}`;
				let lessons: unknown[] = [];
				try {
					lessons = lessonsKept('/home', failing);
				} catch (error) {
					expect(errorWords(error), label).toMatch(/The folder \/home\/sessions cannot be read/);
				}
				for (const lesson of lessons) expect(truth, label).toContainEqual(lesson);
				expect(lessonsKept('/home', failing.afterProcessEnd()), label).toEqual(truth);
			}
		}
	});

	it('cut off at any call leaves a cache that is whole, or one that is not believed', () => {
		const { truth, made } = disk();
		const whole = made();
		lessonsKept('/home', whole);
		for (let at = 1; at <= whole.calls; at++) {
			for (const fate of inTurn([0, 1, 2], at)) {
				const failing = made();
				failing.fault = { kind: 'cut', at };
				expect(() => lessonsKept('/home', failing)).toThrow();
				let n = fate;
				const after = failing.afterPowerCut((choices) => n++ % choices);
				expect(lessonsKept('/home', after), `cut at ${at}, fate ${fate}`).toEqual(truth);
			}
		}
	});
});

describe('a session that learns', () => {
	it('begins from what was kept, and goes on the same whatever becomes of that', () => {
		const home = homeOf(1, 2);
		const lessons = lessonsKept(home);
		const session = bendIn(home, { day: 5, answers: 1, lessons });
		expect(session.state.start.from?.exact).toMatchObject({ sessions: 2 });
		const asked = session.ask;
		for (const day of [1, 2]) fs.rmSync(pathOf(home, day));
		fs.rmSync(join(home, 'cache'), { recursive: true });
		const world = { home, program: 'test', now: () => new Date(), random: () => 'zz' };
		const resumed = LiveSession.resume(world, session.id, {}, []);
		// The resume is a record of its own.
		expect({ ...resumed.ask, entry: asked?.entry }).toEqual(asked);
		expect(resumed.state.start).toEqual(session.state.start);
		resumed.close();
	});

	it('expects other than mechanics alone, and with --no-learn nothing but mechanics', () => {
		const home = homeOf(1, 2, 3);
		const lessons = lessonsKept(home);
		const taught = bendIn(home, { day: 5, answers: 1, lessons });
		const untaught = bendIn(home, { day: 6, answers: 1, learn: false, lessons });
		const [a, b] = [taught, untaught].map(({ ask }) => (ask?.ask === 'pull' ? ask.expect.sd : Number.NaN));
		expect(a!).toBeLessThan(b! / 3);
		expect(untaught.state.start.from).toBeUndefined();
	});

	it('reads a log that is older than learning', () => {
		const home = homeOf(1);
		const [first, ...rest] = readLog(pathOf(home, 1)).records;
		const { from: _, prior, ...start } = first!.start as { from: unknown; prior: Record<string, unknown> };
		const { surprises: __, ...older } = prior;
		const lines = [{ ...first, start: { ...start, prior: older } }, ...rest].map(encodeRecord);
		fs.writeFileSync(pathOf(home, 1), Buffer.concat(lines));
		expect(lessonsKept(home)).toEqual(folded(home));
		expect(lessonsKept(home)).toHaveLength(1);
		expect(JSON.stringify(lessonsKept(home))).not.toContain('null');
	});

	it('is taught by a tube of another job on the same bender', () => {
		const home = homeOf(1);
		const other = plainJob({ name: 'Grab rail', tooling: { die: '4 in', clr: 4 } });
		const session = bendIn(home, { day: 2, job: other, answers: 1, lessons: lessonsKept(home) });
		expect(session.state.start.from).toMatchObject({
			exact: { sessions: 0 },
			near: [{ shares: 'bender', sessions: 1 }],
		});
	});
});
