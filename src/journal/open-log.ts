import { dirname, resolve } from 'node:path';
import { APPEND, closeQuietly, createFile, createFreeFile, makeFolder } from '../files/disk.ts';
import { causeOf, codeOf } from '../files/error-codes.ts';
import type { FsPort } from '../files/fs-port.ts';
import { awayOf, copyAway, isMarked, leaveMark, noteFolder } from './away.ts';
import { JournalError, NotSaved } from './errors.ts';
import type { JournalNotice } from './facts.ts';
import { acquireLock, type LockSelf, releaseLock } from './lock.ts';
import { longestOf, mergeBack } from './merge-back.ts';
import { faultOf, parseLog, readFile } from './read-log.ts';
import { encodeRecord, type LogRecord } from './record.ts';
import { LogWriter, type WentFrom } from './writer.ts';
import { type WriterParts, writerParts } from './writer-parts.ts';

/** `now` names a tail set aside and judges an empty lock's age; `fs` and `self` are for tests. */
export interface OpenOptions {
	now: Date;
	/** The folder in which a session goes on, or went on, that its own disk refuses; null: none is agreed on. */
	rescue?: string | null;
	fs?: FsPort;
	self?: LockSelf;
}

export interface OpenedLog {
	log: LogWriter;
	records: LogRecord[];
	/** What the operator should know: a cut last line set aside, lines brought back, another place. */
	notices: JournalNotice[];
}

/**
 * Starts a new log with its first record (`seq` 0) on disk, its folder made if missing; in `rescue`, where one is given, when that disk
 * refuses. Throws NotSaved when the disk refuses (nothing is left behind), Locked, or JournalError when there is a file of this name.
 */
export function createLog(path: string, first: LogRecord, options: OpenOptions): LogWriter {
	if (first.seq !== 0) throw new RangeError(`The first record of a log has seq 0, not ${first.seq}.`);
	const parts = writerParts(options);
	const line = encodeRecord(first);
	try {
		const log = created(path, line, parts);
		if (options.rescue != null) noteFolder(path, options.rescue, parts);
		return log;
	} catch (error) {
		if (!(error instanceof NotSaved) || options.rescue == null) throw error;
		return wentOn(options.rescue, path, [line], parts);
	}
}

function created(path: string, line: Buffer, parts: WriterParts): LogWriter {
	const { fs } = parts;
	try {
		makeFolder(fs, dirname(resolve(path)));
	} catch (error) {
		throw notCreated(path, error);
	}
	const lock = acquireLock(path, parts.now, fs, parts.self);
	try {
		return new LogWriter({ path, fd: createFile(fs, path, line), lock }, [line], parts);
	} catch (error) {
		releaseLock(lock, fs);
		throw notCreated(path, error);
	}
}

function notCreated(path: string, error: unknown): JournalError {
	if (codeOf(error) === 'EEXIST') return new JournalError({ code: 'log-exists', log: path }, 1, error);
	return new NotSaved({ code: 'log-not-created', log: path, cause: causeOf(error) }, error, true);
}

/** The session of a log that cannot be written, in a new log elsewhere. */
function wentOn(folder: string, log: string, lines: Buffer[], parts: WriterParts): LogWriter {
	const made = copyAway(folder, log, Buffer.concat(lines), parts);
	const mark = { log, to: made.path };
	return new LogWriter(made, lines, parts, { mark, why: leaveMark(mark, parts) });
}

/**
 * Opens a kept log to go on with it, under its lock. What went on in another place is brought back first; where the disk still refuses it
 * goes on there. An unfinished last line goes to `<log>.torn-<time>` and is then cut off.
 * Throws Locked, Damaged, NewerFormat, Parted, NoLog, or NotSaved when the tail cannot be set aside; the log is then as it was.
 */
export function openLog(path: string, options: OpenOptions): OpenedLog {
	const parts = writerParts(options);
	const rescue = options.rescue ?? null;
	const away = awayOf(path, rescue, parts.fs);
	const longest = longestOf(path, away, parts.fs);
	try {
		const notices = longest === path ? [] : [mergeBack(path, longest, parts)];
		const opened = openAt(path, parts);
		if (rescue !== null) noteFolder(path, rescue, parts);
		return { ...opened, notices: [...notices, ...opened.notices] };
	} catch (error) {
		if (!(error instanceof NotSaved)) throw error;
		if (longest !== path) return openAway(longest, path, parts);
		if (rescue === null) throw error;
		const file = readFile(path, parts.fs);
		const read = parseLog(file);
		const fault = faultOf(path, read);
		if (fault) throw fault;
		const log = wentOn(rescue, path, linesOf(file.subarray(0, read.size)), parts);
		return { log, records: read.records, notices: [log.wentOn] };
	}
}

/** What went on in another place goes on there once more. */
function openAway(away: string, log: string, parts: WriterParts): OpenedLog {
	const mark = { log, to: away };
	const opened = openAt(away, parts, { mark, why: isMarked(log, parts.fs) ? null : leaveMark(mark, parts) });
	return { ...opened, notices: [opened.log.wentOn, ...opened.notices] };
}

function openAt(path: string, parts: WriterParts, from: WentFrom | null = null): OpenedLog {
	const { fs } = parts;
	// Before the lock, so that none is left beside a log that is not there.
	readFile(path, fs);
	const lock = acquireLock(path, parts.now, fs, parts.self);
	let fd: number | null = null;
	try {
		const file = readFile(path, fs);
		const read = parseLog(file);
		const fault = faultOf(path, read);
		if (fault) throw fault;
		fd = openToAppend(fs, path);
		const notices = read.tail ? [setTailAside(parts, path, fd, file.subarray(read.size))] : [];
		const log = new LogWriter({ path, fd, lock }, linesOf(file.subarray(0, read.size)), parts, from);
		return { log, records: read.records, notices };
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
		throw new NotSaved({ code: 'log-not-writable', log: path, cause: causeOf(error) }, error, true);
	}
}

/** Keeps the bytes of a cut last line in a file beside the log, then cuts them off. */
function setTailAside({ fs, now }: WriterParts, path: string, fd: number, tail: Buffer): JournalNotice {
	const stamp = now.toISOString().replace(/[-:]|\.\d+/g, '');
	try {
		const { size } = fs.fstatSync(fd);
		const kept = createFreeFile(fs, `${path}.torn-${stamp}`, tail);
		closeQuietly(fs, kept.fd);
		fs.ftruncateSync(fd, size - tail.length);
		fs.fsyncSync(fd);
		return { code: 'tail-set-aside', bytes: tail.length, kept: kept.path };
	} catch (error) {
		throw new NotSaved({ code: 'tail-stays', log: path, cause: causeOf(error) }, error, true);
	}
}
