import { dirname, resolve } from 'node:path';
import { APPEND, closeQuietly, createFile, createFreeFile, makeFolder } from '../files/disk.ts';
import { codeOf, reasonOf } from '../files/error-codes.ts';
import { type FsPort, realFs } from '../files/fs-port.ts';
import { JournalError, NoLog, NotSaved } from './errors.ts';
import { acquireLock, type LockSelf, releaseLock, thisProcess } from './lock.ts';
import { faultOf, type LogRead, parseLog, readFile, readLog } from './read-log.ts';
import { encodeRecord, type LogRecord } from './record.ts';
import { LogWriter, movedNote, type WriterParts } from './writer.ts';

/** `now` names a tail set aside and judges an empty lock's age; `fs` and `self` are for tests. */
export interface OpenOptions {
	now: Date;
	fs?: FsPort;
	self?: LockSelf;
}

export interface OpenedLog {
	log: LogWriter;
	records: LogRecord[];
	/** A sentence for the operator when an unfinished last line was set aside. */
	message: string | null;
}

function partsOf({ now, fs = realFs, self = thisProcess() }: OpenOptions): WriterParts {
	return { now, fs, self };
}

/**
 * Starts a new log with its first record (`seq` 0) on disk, its folder made if missing. Throws NotSaved when the disk refuses (nothing is
 * left behind), Locked, or JournalError when there is a file of this name already.
 */
export function createLog(path: string, first: LogRecord, options: OpenOptions): LogWriter {
	if (first.seq !== 0) throw new RangeError(`The first record of a log has seq 0, not ${first.seq}.`);
	const parts = partsOf(options);
	const { fs } = parts;
	const line = encodeRecord(first);
	try {
		makeFolder(fs, dirname(resolve(path)));
	} catch (error) {
		throw notCreated(path, error);
	}
	const lock = acquireLock(path, parts.now, fs, parts.self);
	try {
		return new LogWriter(path, createFile(fs, path, line), lock, [line], parts);
	} catch (error) {
		releaseLock(lock, fs);
		throw notCreated(path, error);
	}
}

function notCreated(path: string, error: unknown): JournalError {
	if (codeOf(error) === 'EEXIST')
		return new JournalError(`There is a log ${path} already; it was left as it is.`, 1, error);
	const next = 'Nothing was started. Make room or choose another place with --home DIR.';
	return new NotSaved(`The log ${path} cannot be written: ${reasonOf(error)}. ${next}`, error, true);
}

/** Where the note beside this log says that its session went on; null without one, or with one that was cut short in the writing. */
function movedTo(path: string, fs: FsPort): string | null {
	const name = movedNote(path);
	let read: LogRead;
	try {
		read = readLog(name, fs);
	} catch (error) {
		if (error instanceof NoLog) return null;
		throw error;
	}
	// Cut short, the program ended before it told anyone of the new file: the old one holds all that was acknowledged.
	if (read.size === 0 && !read.damage) return null;
	const fault = faultOf(name, read);
	if (fault) throw fault;
	return String(read.records[0]?.movedTo);
}

/**
 * Where the session of this log goes on: the log itself, or the one it was taken to when its disk failed. Throws NoLog when that one is
 * not there, since going on in the old one would leave its last readings out.
 */
export function followMoved(path: string, fs: FsPort = realFs): string {
	const to = movedTo(path, fs);
	if (to === null) return path;
	try {
		fs.statSync(to);
	} catch (error) {
		const what = `The session of ${path} went on in ${to}, which cannot be read: ${reasonOf(error)}.`;
		throw new NoLog(`${what} Put that disk back and try again.`, path, error);
	}
	return followMoved(to, fs);
}

/**
 * Opens a kept log to go on with it, under its lock. An unfinished last line goes to `<log>.torn-<time>` first and is then cut off.
 * Throws Locked, Damaged, NewerFormat, NoLog, or NotSaved when the tail cannot be set aside; the log is then as it was.
 */
export function openLog(path: string, options: OpenOptions): OpenedLog {
	const parts = partsOf(options);
	const { fs } = parts;
	const at = followMoved(path, fs);
	// Before the lock, so that none is left beside a log that is not there.
	readFile(at, fs);
	const lock = acquireLock(at, parts.now, fs, parts.self);
	let fd: number | null = null;
	try {
		const file = readFile(at, fs);
		const read = parseLog(file);
		const fault = faultOf(at, read);
		if (fault) throw fault;
		fd = openToAppend(fs, at);
		const message = read.tail ? setAside(parts, at, fd, file.subarray(read.size)) : null;
		const log = new LogWriter(at, fd, lock, linesOf(file.subarray(0, read.size)), parts);
		return { log, records: read.records, message };
	} catch (error) {
		if (fd !== null) closeQuietly(fs, fd);
		releaseLock(lock, fs);
		throw error;
	}
}

/** The lines of whole records, each with its newline. */
function linesOf(good: Buffer): Buffer[] {
	const lines: Buffer[] = [];
	for (let from = 0; from < good.length; ) {
		const end = good.indexOf('\n', from) + 1;
		lines.push(good.subarray(from, end));
		from = end;
	}
	return lines;
}

function openToAppend(fs: FsPort, path: string): number {
	try {
		return fs.openSync(path, APPEND);
	} catch (error) {
		throw new NotSaved(`The log ${path} cannot be written: ${reasonOf(error)}. It can still be read.`, error, true);
	}
}

function setAside({ fs, now }: WriterParts, path: string, fd: number, tail: Buffer): string {
	const stamp = now.toISOString().replace(/[-:]|\.\d+/g, '');
	try {
		const { size } = fs.fstatSync(fd);
		const kept = createFreeFile(fs, `${path}.torn-${stamp}`, tail);
		closeQuietly(fs, kept.fd);
		fs.ftruncateSync(fd, size - tail.length);
		fs.fsyncSync(fd);
		return `The last line of the log was cut off in the middle (${tail.length} bytes, never acknowledged); they are now in ${kept.path}.`;
	} catch (error) {
		const what = `The log ${path} ends in a cut line that cannot be set aside: ${reasonOf(error)}.`;
		throw new NotSaved(`${what} No line was lost; resume when the disk can be written.`, error, true);
	}
}
