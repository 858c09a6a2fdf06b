import { expect } from 'vitest';
import { readSession, sessionPath } from '../../src/journal/catalogue.ts';
import { JournalError, LogLost, NoLog, NotSaved } from '../../src/journal/errors.ts';
import { createLog, openLog } from '../../src/journal/open-log.ts';
import type { LogRecord } from '../../src/journal/record.ts';
import type { LogWriter } from '../../src/journal/writer.ts';
import { type FaultFs, PowerCut } from '../helpers/disk/fault-fs.ts';
import { onlyProcess } from '../helpers/disk/only-process.ts';

export const HOME = '/home';
export const ID = '20260101-080000-test';
export const LOG = sessionPath(HOME, ID);
export const NOW = new Date('2026-01-01T08:00:00Z');

/** What a run of one session left behind. */
export interface Left {
	sent: LogRecord[];
	/** How many of them, from the first, the program called saved. */
	acked: number;
	/** Where the log was last said to be. */
	path: string;
	/** What ended it early; null when it came to its end. */
	error: unknown;
}

export function record(seq: number, text: string): LogRecord {
	return { seq, v: 1, at: NOW.toISOString(), text };
}

/** Saves one record as the program does: once more after a refusal, and elsewhere when the log is lost. */
function save(log: LogWriter, next: LogRecord, isAgain = false): void {
	try {
		log.append(next);
	} catch (error) {
		if (error instanceof LogLost) {
			log.rescue('/other');
			log.append(next);
		} else if (error instanceof NotSaved && !error.final && !isAgain) save(log, next, true);
		else throw error;
	}
}

/** Runs one session over some sittings, the texts of each given. Each sitting but the last ends without closing, as by kill -9. */
export function runSession(fs: FaultFs, sittings: string[][]): Left {
	const left: Left = { sent: [], acked: 0, path: LOG, error: null };
	const send = (text: string): LogRecord => {
		const next = record(left.sent.length, text);
		left.sent.push(next);
		return next;
	};
	let log: LogWriter | null = null;
	try {
		for (const [n, texts] of sittings.entries()) {
			const options = { now: NOW, fs, self: onlyProcess(100 + n) };
			if (n === 0) {
				log = createLog(LOG, send('start'), options);
				left.acked++;
			} else log = openLog(left.path, options).log;
			for (const text of texts) {
				save(log, send(text));
				left.acked++;
				left.path = log.path;
			}
		}
		log?.close();
	} catch (error) {
		left.error = error;
	}
	return left;
}

/**
 * What must hold on the disk afterwards: all that was acknowledged is read, nothing that was not sent, in order; and the session goes on,
 * with a further record read back. The error that ended it, if any, is one of ours.
 */
export function expectKept(fs: FaultFs, left: Left, label: string): void {
	const isOurs = left.error === null || left.error instanceof JournalError || left.error instanceof PowerCut;
	expect(isOurs, `${label}: ended by ${left.error}`).toBe(true);
	let opened: ReturnType<typeof openLog>;
	try {
		opened = openLog(left.path, { now: NOW, fs, self: onlyProcess(900) });
	} catch (error) {
		expect(left.acked === 0 && error instanceof NoLog, `${label}: cannot be resumed: ${error}`).toBe(true);
		return;
	}
	const { log, records } = opened;
	expect(records.length, `${label}: lost a record`).toBeGreaterThanOrEqual(left.acked);
	expect(records, label).toEqual(left.sent.slice(0, records.length));
	const further = record(records.length, 'further');
	log.append(further);
	log.close();
	const again = openLog(left.path, { now: NOW, fs, self: onlyProcess(901) });
	expect(again.records, label).toEqual([...records, further]);
	expect(again.notices, label).toEqual([]);
	again.log.close();
}

/** The same session found by its id under the home folder. */
export function expectFoundByHome(fs: FaultFs, left: Left, label: string): void {
	if (left.acked === 0) return;
	const kept = readSession(HOME, ID, fs);
	expect(kept.problem, label).toBeNull();
	expect(kept.records.length, `${label}: lost a record`).toBeGreaterThanOrEqual(left.acked);
}
