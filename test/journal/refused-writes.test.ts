import { describe, expect, it } from 'vitest';
import { logPlaces, readSession } from '../../src/journal/catalogue.ts';
import { LogLost, NotSaved } from '../../src/journal/errors.ts';
import { createLog, openLog } from '../../src/journal/open-log.ts';
import { readLog } from '../../src/journal/read-log.ts';
import type { LogRecord } from '../../src/journal/record.ts';
import type { LogWriter } from '../../src/journal/writer.ts';
import { errorWords } from '../../src/words/error.ts';
import { errno, type Fault, FaultFs } from '../helpers/disk/fault-fs.ts';
import { onlyProcess } from '../helpers/disk/only-process.ts';
import { expectFoundByHome, expectKept, ID, LOG, NOW, record } from './session-on-disk.ts';

function openNew(fs: FaultFs): LogWriter {
	return createLog(LOG, record(0, 'start'), { now: NOW, fs, self: onlyProcess(1) });
}

/** The error that this throws; null when it throws none. */
function thrownBy(run: () => unknown): unknown {
	try {
		run();
		return null;
	} catch (error) {
		return error;
	}
}

describe('what the operator is told when the disk fails under an append', () => {
	/** The calls of one append: stat and read of the lock, fstat, stat, write, fdatasync. */
	function appendWith(call: number, fault: (at: number) => Fault): { error: unknown; again: unknown; fs: FaultFs } {
		const fs = new FaultFs();
		const log = openNew(fs);
		fs.fault = fault(fs.calls + call);
		const error = thrownBy(() => log.append(record(1, 'a')));
		fs.fault = null;
		return { error, again: thrownBy(() => log.append(record(1, 'a'))), fs };
	}

	it('ENOSPC on the write: not saved, the log as before, and the same reading is taken once there is room', () => {
		const { error, again, fs } = appendWith(5, (at) => ({ kind: 'partial', at, code: 'ENOSPC', bytes: 20 }));
		expect(error).toBeInstanceOf(NotSaved);
		expect(error).toMatchObject({ code: 'ENOSPC', final: false, exitCode: 5 });
		expect(errorWords(error)).toMatch(/not saved in .*\.log: the disk is full \(ENOSPC\)\. Make room/);
		expect(again).toBeNull();
		const after = fs.trace.slice(fs.trace.lastIndexOf(`ftruncate ${LOG}`), -6);
		expect(after, 'the half line is taken back, and that made durable').toEqual([
			`ftruncate ${LOG}`,
			`fdatasync ${LOG}`,
		]);
	});

	it('a failed flush: the log is lost for good, although the disk is well again', () => {
		const { error, again, fs } = appendWith(6, (at) => ({ kind: 'errno', at, code: 'EIO' }));
		expect(error).toBeInstanceOf(LogLost);
		expect(again).toBe(error);
		expect(readLog(LOG, fs).records).toHaveLength(1);
	});

	it('a failed truncation after a failed write: lost, and the half line is set aside when the session is resumed', () => {
		const fs = new FaultFs();
		const log = openNew(fs);
		fs.fault = { kind: 'partial', at: fs.calls + 5, code: 'EIO', bytes: 20 };
		const truncate = fs.ftruncateSync.bind(fs);
		fs.ftruncateSync = () => {
			throw errno('EIO', 'ftruncate');
		};
		expect(thrownBy(() => log.append(record(1, 'a')))).toBeInstanceOf(LogLost);
		fs.ftruncateSync = truncate;
		const opened = openLog(LOG, { now: NOW, fs, self: onlyProcess(2) });
		const kept = `${LOG}.torn-20260101T080000Z`;
		expect(opened.notices).toEqual([{ code: 'tail-set-aside', bytes: 20, kept }]);
		expect(fs.files()).toContain(kept);
		expect(fs.trace.slice(-2), 'cut off, and that made durable').toEqual([`ftruncate ${LOG}`, `fsync ${LOG}`]);
	});

	it('a log changed by something else, replaced or gone is not written any more', () => {
		const changes: [RegExp, (fs: FaultFs) => void][] = [
			[
				/its size is \d+ bytes where \d+ were written/,
				(fs) => fs.writeSync(fs.openSync(LOG, 0), Buffer.from('x'), 0, 1),
			],
			[/another file has been put in its place/, (fs) => fs.place(LOG, Buffer.from('x'))],
			[/the file or its folder is gone/, (fs) => fs.vanish('/home')],
		];
		for (const [why, change] of changes) {
			const fs = new FaultFs();
			const log = openNew(fs);
			change(fs);
			const error = thrownBy(() => log.append(record(1, 'a')));
			expect(error).toBeInstanceOf(LogLost);
			expect(errorWords(error)).toMatch(why);
			log.rescue('/other');
			expect(log.path).toBe(`/other/${ID}.log`);
			for (const [seq, text] of [
				[1, 'a'],
				[2, 'b'],
			] as const)
				log.append(record(seq, text));
			expect(readLog(`/other/${ID}.log`, fs).records.map((r) => r.text)).toEqual(['start', 'a', 'b']);
		}
	});

	it('a rescue into a folder that fails too is final, and another folder may be tried', () => {
		const fs = new FaultFs();
		const log = openNew(fs);
		fs.vanish('/home');
		expect(thrownBy(() => log.append(record(1, 'a')))).toBeInstanceOf(LogLost);
		fs.fault = { kind: 'errno', at: 1, code: 'EROFS', forGood: true, under: '/stick' };
		const error = thrownBy(() => log.rescue('/stick'));
		expect(error).toMatchObject({ final: true, exitCode: 5 });
		expect(errorWords(error)).toMatch(/No new log could be written in \/stick: the disk is read-only \(EROFS\)/);
		log.rescue('/other');
		log.append(record(1, 'a'));
		expect(readLog(`/other/${ID}.log`, fs).records).toHaveLength(2);
	});

	it('a log on a read-only disk can be read and not resumed', () => {
		const fs = new FaultFs();
		openNew(fs).close();
		fs.fault = { kind: 'errno', at: fs.calls, code: 'EROFS', forGood: true };
		expect(thrownBy(() => openLog(LOG, { now: NOW, fs, self: onlyProcess(2) }))).toMatchObject({
			code: 'EROFS',
			exitCode: 5,
		});
		expect(readLog(LOG, fs).records).toHaveLength(1);
	});
});

describe('a disk that refuses from the first', () => {
	const inHome = (fs: FaultFs): Fault => ({
		kind: 'errno',
		at: fs.calls + 1,
		code: 'EROFS',
		forGood: true,
		under: '/home',
	});
	const options = (fs: FaultFs, pid: number) => ({ now: NOW, fs, self: onlyProcess(pid), rescue: '/stick' });

	it('a new session begins in the folder that was agreed on, and its lines come home when the disk is well', () => {
		const fs = new FaultFs();
		fs.mkdirSync('/home');
		fs.fault = inHome(fs);
		const log = createLog(LOG, record(0, 'start'), options(fs, 1));
		log.append(record(1, 'a'));
		expect(log.wentOn).toMatchObject({ log: `/stick/${ID}.log`, unmarked: { errno: 'EROFS' } });
		log.close();
		fs.fault = null;
		const { log: again, records, notices } = openLog(LOG, options(fs, 2));
		expect(records).toHaveLength(2);
		expect(notices).toEqual([{ code: 'merged-back', from: `/stick/${ID}.log`, lines: 2 }]);
		again.close();
		expect(readLog(LOG, fs).records).toHaveLength(2);
	});

	it('a kept session goes on there with all its lines; once the disk is well its log is told so', () => {
		const fs = new FaultFs();
		const first = openNew(fs);
		first.append(record(1, 'a'));
		first.close();
		fs.fault = inHome(fs);
		const { log, records } = openLog(LOG, options(fs, 2));
		expect([log.path, records.length]).toEqual([`/stick/${ID}.log`, 2]);
		log.append(record(2, 'b'));
		fs.fault = null;
		log.append(record(3, 'c'));
		log.close();
		expect(fs.files()).toContain(`${LOG}.moved`);
		// Nobody has to name the folder any more.
		expect(openLog(LOG, { now: NOW, fs, self: onlyProcess(3) }).records).toHaveLength(4);
	});
});

describe('a disk that turns read-only under a session that has another folder, and is well again', () => {
	const RESCUE = '/stick';
	const options = (fs: FaultFs, pid: number) => ({ now: NOW, fs, self: onlyProcess(pid) });

	/** A session of three lines, the third of them in the other folder; its own disk took nothing more, no mark either. */
	function wentAway(): FaultFs {
		const fs = new FaultFs();
		const log = createLog(LOG, record(0, 'start'), { ...options(fs, 1), rescue: RESCUE });
		log.append(record(1, 'a'));
		fs.fault = { kind: 'errno', at: fs.calls + 5, code: 'EROFS', forGood: true, under: '/home' };
		expect(thrownBy(() => log.append(record(2, 'b')))).toBeInstanceOf(NotSaved);
		log.rescue(RESCUE);
		log.append(record(2, 'b'));
		expect(log.untoldFolder).toBe(RESCUE);
		log.close();
		fs.fault = null;
		expect(fs.files()).not.toContain(`${LOG}.moved`);
		return fs;
	}

	it('lists and resumes the session with all its lines, though nobody names the folder', () => {
		const fs = wentAway();
		expect(logPlaces('/home', fs)).toEqual([{ id: ID, path: `${RESCUE}/${ID}.log` }]);
		expect(readSession('/home', ID, fs).records).toHaveLength(3);
		const opened = openLog(LOG, options(fs, 2));
		expect(opened.records).toHaveLength(3);
		expect(opened.notices).toEqual([{ code: 'merged-back', from: `${RESCUE}/${ID}.log`, lines: 1 }]);
		opened.log.close();
		expect(fs.files()).toEqual([LOG, `${RESCUE}/${ID}.log.merged`]);
	});

	it('leaves nothing beside a log that stayed where it was', () => {
		const fs = new FaultFs();
		createLog(LOG, record(0, 'start'), { ...options(fs, 1), rescue: RESCUE }).close();
		expect(fs.files()).toEqual([LOG]);
	});
});

describe('a rescue that fails at any of its calls', () => {
	/** A log of two saved records whose flush failed for the third, and the calls that the rescue then makes. */
	function lostLog(): { fs: FaultFs; log: LogWriter; sent: LogRecord[] } {
		const fs = new FaultFs();
		const log = openNew(fs);
		const sent = [record(0, 'start'), record(1, 'a'), record(2, 'b')];
		log.append(sent[1]!);
		fs.fault = { kind: 'errno', at: fs.calls + 6, code: 'EIO' };
		expect(thrownBy(() => log.append(sent[2]!))).toBeInstanceOf(LogLost);
		fs.fault = null;
		return { fs, log, sent };
	}

	const healthy = lostLog();
	const before = healthy.fs.calls;
	healthy.log.rescue('/other');
	const steps = Array.from({ length: healthy.fs.calls - before }, (_, i) => i + 1);

	it('an error: tried again, all readings are in the new log', () => {
		for (const step of steps)
			for (const code of ['ENOSPC', 'EIO', 'EROFS', 'ENOENT']) {
				const { fs, log, sent } = lostLog();
				fs.fault = { kind: 'errno', at: fs.calls + step, code };
				const error = thrownBy(() => log.rescue('/other'));
				fs.fault = null;
				if (error) expect(error).toMatchObject({ name: 'NotSaved', final: true });
				if (error) log.rescue('/other');
				log.append(sent[2]!);
				log.close();
				expectKept(fs, { sent, acked: 3, path: log.path, error }, `${code} at ${step}`);
			}
	});

	it('a power cut: what was acknowledged is where the home folder says', () => {
		for (const step of [...steps, steps.length + 1])
			for (const fate of [0, 1]) {
				const { fs, log, sent } = lostLog();
				fs.fault = { kind: 'cut', at: fs.calls + step };
				const error = thrownBy(() => log.rescue('/other'));
				const after = fs.afterPowerCut(() => fate);
				// With the power gone within it, nothing was acknowledged, whatever the call would have said.
				const left = { sent, acked: 2, path: LOG, error };
				expectFoundByHome(after, left, `cut at ${step}`);
				expectKept(after, left, `cut at ${step}`);
			}
	});
});
