/** Lines that were written in another place while a log's own disk refused, brought back into it. */
import { dirname } from 'node:path';
import {
	APPEND,
	closeQuietly,
	createFile,
	exists,
	makeFolder,
	removeQuietly,
	syncFolder,
	writeAll,
} from '../files/disk.ts';
import { causeOf } from '../files/error-codes.ts';
import type { FsPort } from '../files/fs-port.ts';
import { mergedName, movedMarkOf } from './away.ts';
import { JournalError, NoLog, NotSaved, Parted } from './errors.ts';
import type { JournalNotice } from './facts.ts';
import { acquireLock, type Lock, releaseLock } from './lock.ts';
import { faultOf, type LogRead, parseLog, readFile, readLog } from './read-log.ts';
import type { WriterParts } from './writer-parts.ts';

/** A log's bytes and what they hold; a log that is not there holds nothing. */
export interface HeldLog {
	file: Buffer;
	read: LogRead;
}

/** Throws JournalError where it cannot be read. */
export function held(path: string, fs: FsPort): HeldLog {
	try {
		const file = readFile(path, fs);
		return { file, read: parseLog(file) };
	} catch (error) {
		if (error instanceof NoLog) return { file: Buffer.alloc(0), read: parseLog(Buffer.alloc(0)) };
		throw error;
	}
}

/**
 * Of a session's logs the one with the most whole lines; of equals its own. Throws Parted where another one has lines that this one has
 * not: which of them count only the operator knows.
 */
export function longestOf(log: string, away: readonly string[], fs: FsPort): string {
	if (away.length === 0) return log;
	const all = [log, ...away].map((path) => ({ path, ...held(path, fs) }));
	const longest = all.reduce((most, each) => (each.read.records.length > most.read.records.length ? each : most));
	for (const each of all) if (!isBeginning(each, longest)) throw parted(each, longest);
	return longest.path;
}

/** Whether all whole lines of one log stand at the beginning of another. */
export function isBeginning(a: HeldLog, b: HeldLog): boolean {
	return b.file.subarray(0, a.read.size).equals(a.file.subarray(0, a.read.size));
}

function parted(a: HeldLog & { path: string }, b: HeldLog & { path: string }): Parted {
	return new Parted({ code: 'logs-parted', log: a.path, other: b.path, lines: sharedLines(a, b) });
}

/** How many lines two logs share that are no beginning of one another. */
export function sharedLines(a: HeldLog, b: HeldLog): number {
	const text = (each: HeldLog, i: number) => JSON.stringify(each.read.records[i]);
	return a.read.records.findIndex((_, i) => text(a, i) !== text(b, i));
}

/**
 * Adds to a log the lines that its session wrote in `from`. The mark goes, and `from` is kept under another name. Done again after it was
 * cut short it comes to the same. Throws NotSaved where the log's disk still refuses, Locked where either is being written, Parted where
 * the log has lines of its own that `from` has not, Damaged where either is damaged.
 */
export function mergeBack(log: string, from: string, parts: WriterParts): JournalNotice {
	const { fs, now, self } = parts;
	makeFolderOf(log, fs);
	const locks = [acquireLock(log, now, fs, self)];
	try {
		locks.push(...lockUnlessReadOnly(from, parts));
		const lines = added(log, from, fs);
		setApart(log, from, fs);
		return { code: 'merged-back', from, lines };
	} finally {
		for (const lock of locks) releaseLock(lock, fs);
	}
}

function makeFolderOf(log: string, fs: FsPort): void {
	try {
		makeFolder(fs, dirname(log));
	} catch (error) {
		throw notWritable(log, error);
	}
}

/** How many lines were added. */
function added(log: string, from: string, fs: FsPort): number {
	const own = held(log, fs);
	const there = held(from, fs);
	for (const [path, { read }] of [
		[log, own],
		[from, there],
	] as const) {
		const fault = read.damage === null ? null : faultOf(path, read);
		if (fault) throw fault;
	}
	const mine = own.file.subarray(0, own.read.size);
	const all = there.file.subarray(0, there.read.size);
	if (!isBeginning(own, there)) throw parted({ path: log, ...own }, { path: from, ...there });
	try {
		append(log, all, mine.length, own.file.length, fs);
	} catch (error) {
		throw notWritable(log, error);
	}
	return there.read.records.length - own.read.records.length;
}

/** Writes what is missing after the whole lines: a cut last line is the beginning of what is written there now, or was never acknowledged. */
function append(log: string, all: Buffer, from: number, length: number, fs: FsPort): void {
	if (length === 0) {
		removeQuietly(fs, log);
		closeQuietly(fs, createFile(fs, log, all));
		return;
	}
	const fd = fs.openSync(log, APPEND);
	try {
		if (length > from) fs.ftruncateSync(fd, from);
		writeAll(fs, fd, all.subarray(from));
		fs.fsyncSync(fd);
	} catch (error) {
		takeBack(fd, from, fs);
		throw error;
	} finally {
		closeQuietly(fs, fd);
	}
}

/** What was half written is a cut last line, which the next opening sets aside; it goes now if the disk lets it. */
function takeBack(fd: number, size: number, fs: FsPort): void {
	try {
		fs.ftruncateSync(fd, size);
	} catch {
		// See above.
	}
}

/** Where no lock can be written nobody writes a log either. */
function lockUnlessReadOnly(log: string, { fs, now, self }: WriterParts): Lock[] {
	try {
		return [acquireLock(log, now, fs, self)];
	} catch (error) {
		if (error instanceof NotSaved) return [];
		throw error;
	}
}

/** The mark goes, for good, and only then the log that it led to gets another name: a mark that leads nowhere would be in the way. */
function setApart(log: string, from: string, fs: FsPort): void {
	try {
		if (exists(fs, movedMarkOf(log))) fs.unlinkSync(movedMarkOf(log));
		syncFolder(fs, dirname(log));
		if (mergedName(from) !== from) fs.renameSync(from, mergedName(from));
		syncFolder(fs, dirname(from));
	} catch {
		// Whatever of this is not done: `from` has no line that the log has not, and that is seen the next time.
	}
}

function notWritable(log: string, error: unknown): JournalError {
	if (error instanceof JournalError) return error;
	return new NotSaved({ code: 'log-not-writable', log, cause: causeOf(error) }, error, true);
}

/** As longestOf by size alone, for lists: what is in them is looked at when one is read. */
export function largestOf(log: string, away: readonly string[], fs: FsPort): string {
	const size = (path: string) => (exists(fs, path) ? fs.statSync(path).size : 0);
	return away.reduce((largest, path) => (size(path) > size(largest) ? path : largest), log);
}

/** As longestOf, with what is in it. Throws NoLog where none of them is there. */
export function readLongest(log: string, away: readonly string[], fs: FsPort): { path: string; read: LogRead } {
	const path = longestOf(log, away, fs);
	return { path, read: readLog(path, fs) };
}
