/** A log that is written over some sittings on a disk that fails, and what must hold afterwards. */
import { readSession, sessionPath } from '../../src/journal/catalogue.ts';
import { JournalError, LogLost, NoLog, NotSaved } from '../../src/journal/errors.ts';
import { createLog, type OpenOptions, openLog } from '../../src/journal/open-log.ts';
import type { LogRecord } from '../../src/journal/record.ts';
import type { LogWriter } from '../../src/journal/writer.ts';
import { type FaultFs, PowerCut } from '../helpers/disk/fault-fs.ts';
import { onlyProcess } from '../helpers/disk/only-process.ts';
import { must, type Subject } from './subject.ts';

const HOME = '/home';
const ELSEWHERE = '/other';
const ID = '20260101-080000-test';
const LOG = sessionPath(HOME, ID);
const NOW = new Date('2026-01-01T08:00:00Z');

/** What a run has left: the records that were sent, how many of them were called saved, and the error that ended it. */
export interface Left {
	sent: LogRecord[];
	acked: number;
	error: unknown;
}

/**
 * A session's records over sittings of so many each; each but the last ends without closing, as by kill -9. `rescue`: the operator agreed
 * to another folder when the disk refused; without, what is refused twice ends the sitting.
 */
export function logSubject(
	name: string,
	records: readonly LogRecord[],
	sitting: number,
	rescue: boolean,
): Subject<Left> {
	const folder = rescue ? ELSEWHERE : null;
	const options = (fs: FaultFs, pid: number): OpenOptions => ({ now: NOW, fs, self: onlyProcess(pid), rescue: folder });
	return {
		name,
		run: (fs) => written(records, sitting, (pid) => options(fs, pid)),
		check: (fs, left) => check(fs, left, (pid) => options(fs, pid)),
	};
}

function written(records: readonly LogRecord[], sitting: number, options: (pid: number) => OpenOptions): Left {
	const left: Left = { sent: [], acked: 0, error: null };
	try {
		let log: LogWriter | null = null;
		for (const [n, record] of records.entries()) {
			left.sent.push(record);
			const pid = 100 + Math.floor(n / sitting);
			if (log === null) log = createLog(LOG, record, options(pid));
			else {
				if (n % sitting === 0) log = openLog(LOG, options(pid)).log;
				save(log, record, options(pid).rescue != null);
			}
			left.acked++;
		}
		log?.close();
	} catch (error) {
		left.error = error;
	}
	return left;
}

/** Saves one record as the program does: elsewhere where that was agreed on, else once more after a refusal. */
function save(log: LogWriter, record: LogRecord, rescue: boolean): void {
	try {
		log.append(record);
	} catch (error) {
		if (!(error instanceof NotSaved || error instanceof LogLost)) throw error;
		if (rescue) log.rescue(ELSEWHERE);
		else if (error instanceof LogLost || error.final) throw error;
		log.append(record);
	}
}

/** Acknowledged is within what is read back, that within what was sent, in order; one more line can be added, and is read back. */
function check(fs: FaultFs, left: Left, options: (pid: number) => OpenOptions): void {
	const isOurs = left.error === null || left.error instanceof JournalError || left.error instanceof PowerCut;
	must(isOurs, `ended by ${left.error}`);
	let opened: ReturnType<typeof openLog>;
	try {
		opened = openLog(LOG, options(900));
	} catch (error) {
		must(left.acked === 0 && error instanceof NoLog, `cannot be resumed: ${error}`);
		return;
	}
	const { log, records } = opened;
	must(records.length >= left.acked, `lost: ${records.length} lines are read, ${left.acked} were called saved`);
	must(records.length <= left.sent.length, 'more lines than were sent');
	const same = records.every((record, i) => JSON.stringify(record) === JSON.stringify(left.sent[i]));
	must(same, 'a line is not the one that was sent in its place');
	log.append({ seq: records.length, v: 1, at: NOW.toISOString(), further: true });
	log.close();
	const again = openLog(LOG, options(901));
	must(again.records.length === records.length + 1, 'one more line was not read back');
	must(again.records.at(-1)?.further === true, 'the further line is another one');
	again.log.close();
	must(readSession(HOME, ID, fs).problem === null, 'found by its home with a problem');
}
