import fs from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type FsPort, realFs } from '../../src/files/fs-port.ts';
import {
	listSessions,
	logPlaces,
	newSessionId,
	readSession,
	sessionFolder,
	sessionPath,
} from '../../src/journal/catalogue.ts';
import { Damaged, Locked, NoLog, Parted } from '../../src/journal/errors.ts';
import { acquireLock, releaseLock } from '../../src/journal/lock.ts';
import { createLog, openLog } from '../../src/journal/open-log.ts';
import { encodeRecord } from '../../src/journal/record.ts';
import { journalWords } from '../../src/words/journal.ts';
import { tempFolder } from './child.ts';
import { NOW, record } from './session-on-disk.ts';

function keep(home: string, id: string, texts: string[]): string {
	const log = createLog(sessionPath(home, id), record(0, 'start'), { now: NOW });
	for (const [n, text] of texts.entries()) log.append(record(n + 1, text));
	log.close();
	return log.path;
}

describe('session ids', () => {
	it('sort by their start, in UTC, and can be file names anywhere', () => {
		expect(newSessionId(new Date('2026-03-04T05:06:07.890Z'), 'k3x9')).toBe('20260304-050607-k3x9');
		const times = ['2025-12-31T23:59:59Z', '2026-01-01T00:00:00Z', '2026-01-01T00:00:01Z', '2026-01-01T10:00:00Z'];
		const ids = times.map((time, n) => newSessionId(new Date(time), `${9 - n}z`));
		expect([...ids].sort()).toEqual(ids);
	});

	it('that are none, or lead out of the folder, are refused', () => {
		expect(() => newSessionId(NOW, 'A/')).toThrow(/lower-case letters and digits/);
		for (const id of ['', '../secret', 'a/b', '-a', 'A', 'a.log'])
			expect(() => sessionPath('/home', id)).toThrow(NoLog);
		expect(() => readSession(tempFolder(), '20260101-080000-none')).toThrow(NoLog);
	});
});

describe('the sessions kept', () => {
	it('of a home that is not there yet are none', () => {
		expect(listSessions(join(tempFolder(), 'none'))).toEqual([]);
	});

	it('come newest first with their first and last record, other files left out', () => {
		const home = tempFolder();
		keep(home, '20260101-080000-aa', ['a', 'b']);
		keep(home, '20260102-080000-bb', []);
		fs.writeFileSync(join(sessionFolder(home), '20260101-080000-aa.log.torn-20260101T080000Z'), 'x');
		fs.writeFileSync(join(sessionFolder(home), 'notes.txt'), 'x');
		const list = listSessions(home);
		expect(list.map(({ id, first, last, problem }) => [id, first?.text, last?.text, problem])).toEqual([
			['20260102-080000-bb', 'start', 'start', null],
			['20260101-080000-aa', 'start', 'b', null],
		]);
		expect(list[1]!.records).toHaveLength(3);
	});

	it('are listed with what is wrong when damaged, empty, cut or no file at all; none is changed', () => {
		const home = tempFolder();
		const damaged = keep(home, '20260101-000000-aa', ['a', 'b', 'c']);
		const bytes = fs.readFileSync(damaged);
		bytes[bytes.indexOf('"b"') + 1] = 0x42;
		fs.writeFileSync(damaged, bytes);
		const empty = sessionPath(home, '20260102-000000-bb');
		fs.writeFileSync(empty, '');
		fs.appendFileSync(keep(home, '20260103-000000-cc', ['a']), '1234');
		fs.mkdirSync(sessionPath(home, '20260104-000000-dd'));
		const list = listSessions(home).reverse();
		expect(
			list.map(({ records, damage, tail }) => [records.length, damage?.line ?? null, tail?.bytes ?? null]),
		).toEqual([
			[2, 3, null],
			[0, null, null],
			[2, null, 4],
			[0, null, null],
		]);
		expect(journalWords(list[0]!.problem!)).toMatch(
			/is damaged in line 3: its checksum does not match\. Nothing was changed\. The 2 lines/,
		);
		expect(list[1]!.problem).toMatchObject({ code: 'log-empty' });
		expect(list[2]!.problem).toBeNull();
		expect(journalWords(list[3]!.problem!)).toMatch(/cannot be read: EISDIR/);
		expect(() => openLog(damaged, { now: NOW })).toThrow(Damaged);
		expect(() => openLog(empty, { now: NOW })).toThrow(NoLog);
		expect(fs.readFileSync(damaged)).toEqual(bytes);
		expect(fs.readdirSync(sessionFolder(home)).filter((name) => name.endsWith('.lock'))).toEqual([]);
	});

	it('five hundred of some twenty records are listed in no time worth waiting for', () => {
		const home = tempFolder();
		fs.mkdirSync(sessionFolder(home));
		const file = Buffer.concat(Array.from({ length: 20 }, (_, seq) => encodeRecord(record(seq, 'x'.repeat(400)))));
		for (let n = 0; n < 500; n++) fs.writeFileSync(sessionPath(home, `20260101-080000-${n}`), file);
		const from = performance.now();
		expect(listSessions(home)).toHaveLength(500);
		expect(performance.now() - from).toBeLessThan(3000);
	});
});

describe('a session that went on in another file', () => {
	const ID = '20260101-080000-aa';

	function moved(home: string, folder: string): string {
		keep(home, ID, ['a']);
		const { log } = openLog(sessionPath(home, ID), { now: NOW });
		log.rescue(folder);
		log.append(record(2, 'b'));
		log.close();
		return log.path;
	}

	it('is found by its id; when it is gone on with, its lines are brought back', () => {
		const home = tempFolder();
		const path = moved(home, join(home, 'stick'));
		expect(readSession(home, ID)).toMatchObject({ path, problem: null, last: { text: 'b' } });
		const { log, records, notices } = openLog(sessionPath(home, ID), { now: NOW });
		log.close();
		expect(notices).toEqual([{ code: 'merged-back', from: path, lines: 1 }]);
		expect([log.path, records.length]).toEqual([sessionPath(home, ID), 3]);
		expect(fs.readdirSync(join(home, 'stick'))).toEqual([`${ID}.log.merged`]);
		expect(fs.readdirSync(sessionFolder(home))).toEqual([`${ID}.log`]);
		expect(readSession(home, ID)).toMatchObject({ path: sessionPath(home, ID), last: { text: 'b' } });
	});

	it('holds no whole path: a home that is copied is gone on with in the copy', () => {
		const folder = tempFolder();
		const [home, copy] = [join(folder, 'home'), join(folder, 'copy')];
		const path = moved(home, join(home, 'stick'));
		fs.cpSync(home, copy, { recursive: true });
		const mark = fs.readFileSync(`${sessionPath(copy, ID)}.moved`, 'utf8');
		expect(mark).toContain(`"../stick/${ID}.log"`);
		expect(mark).not.toContain(folder);
		const before = fs.readFileSync(path);
		const { log, records } = openLog(sessionPath(copy, ID), { now: NOW });
		expect([log.path, records.length]).toEqual([sessionPath(copy, ID), 3]);
		log.append(record(3, 'c'));
		log.close();
		expect(fs.readFileSync(path)).toEqual(before);
		expect(readSession(home, ID)).toMatchObject({ path, last: { text: 'b' } });
	});

	it('by a whole path, as earlier versions wrote it, is found; in a copied home the copy is', () => {
		const folder = tempFolder();
		const [home, copy] = [join(folder, 'home'), join(folder, 'copy')];
		const path = moved(home, join(sessionFolder(home), 'rescued'));
		const old = encodeRecord({ seq: 0, v: 1, at: NOW.toISOString(), movedTo: path });
		fs.writeFileSync(`${sessionPath(home, ID)}.moved`, old);
		fs.cpSync(home, copy, { recursive: true });
		expect(readSession(home, ID).path).toBe(path);
		expect(readSession(copy, ID).path).toBe(path.replace(home, copy));
	});

	it('and that was gone on with here as well is refused: which lines count only the operator knows', () => {
		const home = tempFolder();
		const path = moved(home, join(home, 'stick'));
		fs.appendFileSync(sessionPath(home, ID), encodeRecord(record(2, 'other')));
		expect(() => openLog(sessionPath(home, ID), { now: NOW })).toThrow(Parted);
		expect(listSessions(home)[0]!.problem).toMatchObject({ code: 'logs-parted', lines: 2 });
		fs.rmSync(`${sessionPath(home, ID)}.moved`);
		expect(readSession(home, ID).last?.text).toBe('other');
		expect(fs.existsSync(path)).toBe(true);
	});

	it('is gone on with there as long as its own disk refuses, or what went on is being written', () => {
		const home = tempFolder();
		const path = moved(home, join(home, 'stick'));
		const held = acquireLock(path, NOW);
		expect(() => openLog(sessionPath(home, ID), { now: NOW })).toThrow(Locked);
		releaseLock(held);
		const readOnly: FsPort = {
			...realFs,
			openSync(name, flags, mode) {
				if (name.startsWith(sessionFolder(home)) && flags !== fs.constants.O_RDONLY)
					throw Object.assign(new Error('made to fail'), { code: 'EROFS' });
				return realFs.openSync(name, flags, mode);
			},
		};
		const { log, notices } = openLog(sessionPath(home, ID), { now: NOW, fs: readOnly });
		log.close();
		expect([log.path, notices]).toEqual([path, [{ code: 'went-on-in', log: path, unmarked: null }]]);
	});

	it('brought back to a copy of its home is still brought back to its own', () => {
		const folder = tempFolder();
		const [home, copy] = [join(folder, 'home'), join(folder, 'copy')];
		moved(home, join(folder, 'stick'));
		fs.cpSync(home, copy, { recursive: true });
		for (const each of [copy, home]) {
			const { log, records } = openLog(sessionPath(each, ID), { now: NOW });
			log.close();
			expect([log.path, records.length]).toEqual([sessionPath(each, ID), 3]);
		}
	});

	it('in a folder that the home knows nothing of is found where that folder is named', () => {
		const home = tempFolder();
		const stick = join(home, 'stick');
		const path = moved(home, stick);
		fs.rmSync(`${sessionPath(home, ID)}.moved`);
		fs.rmSync(sessionPath(home, ID));
		expect(listSessions(home)).toEqual([]);
		expect(logPlaces(home, realFs, stick)).toEqual([{ id: ID, path }]);
		const { log, records } = openLog(sessionPath(home, ID), { now: NOW, rescue: stick });
		log.close();
		expect([log.path, records.length]).toEqual([sessionPath(home, ID), 3]);
	});

	it('within the same folder is one session, under its first id', () => {
		const home = tempFolder();
		const path = moved(home, sessionFolder(home));
		expect(path).toBe(sessionPath(home, `${ID}-2`));
		expect(listSessions(home)).toMatchObject([{ id: ID, path, problem: null }]);
	});

	it('that is away with its disk is listed with what is left here, and not gone on with here', () => {
		const home = tempFolder();
		const path = moved(home, join(home, 'stick'));
		fs.rmSync(dirname(path), { recursive: true });
		expect(listSessions(home)).toMatchObject([{ id: ID, last: { text: 'a' } }]);
		expect(journalWords(listSessions(home)[0]!.problem!)).toMatch(
			/went on in .*stick.*, which cannot be read.*Put that disk back/,
		);
		expect(() => openLog(sessionPath(home, ID), { now: NOW })).toThrow(NoLog);
	});

	it('with a note that was cut short goes on in the old one; with a damaged note it is refused', () => {
		const home = tempFolder();
		moved(home, join(home, 'stick'));
		const note = `${sessionPath(home, ID)}.moved`;
		const whole = fs.readFileSync(note);
		fs.writeFileSync(note, whole.subarray(0, 40));
		expect(readSession(home, ID).last?.text).toBe('a');
		fs.writeFileSync(note, whole.toString().replace('stick', 'stock'));
		expect(() => openLog(sessionPath(home, ID), { now: NOW })).toThrow(Damaged);
	});

	it('and back again is found, even when its first file has been taken away', () => {
		const home = tempFolder();
		const stick = moved(home, join(home, 'stick'));
		fs.rmSync(sessionPath(home, ID));
		const { log } = openLog(stick, { now: NOW });
		log.rescue(sessionFolder(home));
		log.close();
		expect(log.path).toBe(sessionPath(home, ID));
		expect(readSession(home, ID)).toMatchObject({ path: log.path, last: { text: 'b' }, problem: null });
	});
});
