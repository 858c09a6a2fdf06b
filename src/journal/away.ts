/**
 * Logs that went on in another place when their own disk refused. The log they left says where, as a path from its own folder: so a home
 * that is copied never leads into the one that it was copied from.
 */
import { basename, dirname, isAbsolute, join, relative, resolve } from 'node:path';
import { closeQuietly, createFreeFile, makeFolder, removeQuietly } from '../files/disk.ts';
import { causeOf, codeOf } from '../files/error-codes.ts';
import { type FsPort, realFs } from '../files/fs-port.ts';
import type { Cause } from '../session/protocol/facts/not-saved.ts';
import { NoLog, NotSaved } from './errors.ts';
import { acquireLock, type Lock } from './lock.ts';
import { createOneRecord } from './one-record.ts';
import { faultOf, type LogRead, readLog } from './read-log.ts';
import type { LogRecord } from './record.ts';
import type { WriterParts } from './writer-parts.ts';

/** What the names of logs end in. */
export const LOG_ENDING = '.log';

/** Which log went on where. */
export interface AwayMark {
	log: string;
	to: string;
}

/** The file beside a log that says where its session goes on: itself a log, of one record. */
export function movedMarkOf(log: string): string {
	return `${log}.moved`;
}

/** The file beside a log that says in which folder its session may have gone on. */
export function folderNoteOf(log: string): string {
	return `${log}.rescue`;
}

/** The name of a log whose lines were brought back. */
export function mergedName(log: string): string {
	return log.endsWith('.merged') ? log : `${log}.merged`;
}

/**
 * A new log in `folder` (made if missing) with these bytes, under the log's own name or with a number after it; no link is followed and
 * nothing written over. Throws NotSaved (`final`).
 */
export function copyAway(
	folder: string,
	log: string,
	bytes: Buffer,
	{ fs, self, now }: WriterParts,
): { fd: number; path: string; lock: Lock } {
	try {
		makeFolder(fs, resolve(folder));
		const made = createFreeFile(fs, join(resolve(folder), basename(log)), bytes, { extension: LOG_ENDING });
		try {
			return { ...made, lock: acquireLock(made.path, now, fs, self) };
		} catch (error) {
			closeQuietly(fs, made.fd);
			removeQuietly(fs, made.path);
			throw error;
		}
	} catch (error) {
		throw new NotSaved({ code: 'not-rescued', folder, cause: causeOf(error) }, error, true);
	}
}

/** Says beside the old log where its session went; why not, when even that cannot be written. */
export function leaveMark({ log, to }: AwayMark, { fs, now }: WriterParts): Cause | null {
	// The old name is free when its folder has vanished and the new log is there, and then it needs no mark.
	if (resolve(log) === to) return null;
	const way = relative(dirname(resolve(log)), to);
	// From one drive to another there is no way but the whole path.
	const rescued = isAbsolute(way) ? basename(to) : way;
	try {
		makeFolder(fs, dirname(resolve(log)));
		// One that was cut short would not have been followed, and so may go.
		removeQuietly(fs, movedMarkOf(log));
		createOneRecord(fs, movedMarkOf(log), now.toISOString(), { rescued });
		return null;
	} catch (error) {
		return causeOf(error);
	}
}

/**
 * Says beside a log, while its disk is well, in which folder its session may go on: one that turns read-only takes no mark any more. Where it
 * cannot be said the session goes on all the same.
 */
export function noteFolder(log: string, folder: string, { fs, now }: WriterParts): void {
	const way = relative(dirname(resolve(log)), resolve(folder));
	if (isAbsolute(way)) return;
	try {
		removeQuietly(fs, folderNoteOf(log));
		createOneRecord(fs, folderNoteOf(log), now.toISOString(), { folder: way });
	} catch (error) {
		if (codeOf(error) === '') throw error;
	}
}

/** The folder that was agreed on when its session was last begun or gone on with; null where none was. */
function notedFolder(log: string, fs: FsPort): string | null {
	const way = saidIn(folderNoteOf(log), fs)?.folder;
	return typeof way === 'string' ? resolve(dirname(log), way) : null;
}

/** Whether a log says that its session went on elsewhere. */
export function isMarked(log: string, fs: FsPort): boolean {
	return whyNotThere(movedMarkOf(log), fs) === null;
}

/** What a file beside a log says; null without one, or with one that was cut short in the writing. Throws JournalError where it is damaged. */
function saidIn(name: string, fs: FsPort): LogRecord | null {
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
	return read.records[0] ?? null;
}

/** Where the mark beside this log leads; null without one. */
function markedWay(log: string, fs: FsPort): string | null {
	const said = saidIn(movedMarkOf(log), fs);
	if (said === null) return null;
	const { rescued, movedTo } = said;
	if (typeof rescued === 'string') return resolve(dirname(log), rescued);
	// As earlier versions wrote it, beside the log or anywhere: a copied home has its own copy of the first.
	const beside = join(dirname(log), 'rescued', basename(String(movedTo)));
	return whyNotThere(beside, fs) === null ? beside : String(movedTo);
}

/** Why there is nothing at this path that could be read; null where there is. */
function whyNotThere(path: string, fs: FsPort): unknown {
	try {
		fs.statSync(path);
		return null;
	} catch (error) {
		if (codeOf(error) === '') throw error;
		return error;
	}
}

/** The logs of that name, with a number or without, in a folder that a session may have gone on in. */
function copiesIn(folder: string, log: string, fs: FsPort): string[] {
	const stem = basename(log, LOG_ENDING);
	const isCopy = (name: string) =>
		name.startsWith(stem) && name.endsWith(LOG_ENDING) && /^(-\d+)?$/.test(name.slice(stem.length, -LOG_ENDING.length));
	try {
		return fs
			.readdirSync(folder)
			.filter(isCopy)
			.map((name) => join(resolve(folder), name));
	} catch (error) {
		// Nothing went on in a folder that is not there.
		if (codeOf(error) === '') throw error;
		return [];
	}
}

/**
 * Every log that a session's log went on in: by its mark, in the folder that was agreed on, and in `folder`. Throws NoLog when one
 * that is marked is nowhere, since going on in the old one would leave its last readings out.
 */
export function awayOf(log: string, folder: string | null = null, fs: FsPort = realFs): string[] {
	const found = new Set(folder === null ? [] : copiesIn(folder, log, fs));
	const noted = notedFolder(log, fs);
	if (noted !== null) for (const copy of copiesIn(noted, log, fs)) found.add(copy);
	found.delete(resolve(log));
	for (const from of [log, ...found]) followMoved(from, found, fs);
	// A session may have come back to where it was.
	found.delete(resolve(log));
	return [...found];
}

function followMoved(from: string, found: Set<string>, fs: FsPort): void {
	const marked = markedWay(from, fs);
	if (marked === null || found.has(marked)) return;
	const why = whyNotThere(marked, fs);
	// Brought back to another home, which was copied from this one.
	const to = why !== null && whyNotThere(mergedName(marked), fs) === null ? mergedName(marked) : marked;
	if (why !== null && to === marked) {
		// The same log in the folder that was given is what the mark means.
		if ([...found].some((path) => basename(path) === basename(to))) return;
		throw new NoLog({ code: 'log-elsewhere', log: from, to, cause: causeOf(why) }, from, why);
	}
	found.add(to);
	followMoved(to, found, fs);
}
