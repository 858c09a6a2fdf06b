import { join, resolve, sep } from 'node:path';
import { causeOf, codeOf } from '../files/error-codes.ts';
import { type FsPort, realFs } from '../files/fs-port.ts';
import { awayOf, folderNoteOf, LOG_ENDING, movedMarkOf } from './away.ts';
import { JournalError, NoLog } from './errors.ts';
import type { JournalFault } from './facts.ts';
import { type Imported, importedFrom, importMarkOf } from './import-mark.ts';
import { largestOf, readLongest } from './merge-back.ts';
import { faultOf, type LogRead, lastTimeIn, readFile, readLog } from './read-log.ts';
import type { LogRecord } from './record.ts';

export interface ReadSession {
	id: string;
	/** Where its log lies now. */
	path: string;
	first: LogRecord | null;
	last: LogRecord | null;
	/** When its newest line was written, behind damage too; at least when its id says that it began, '' where that says nothing. */
	touched: string;
	/** All whole records, in order. */
	records: LogRecord[];
	tail: LogRead['tail'];
	damage: LogRead['damage'];
	/** Why the session cannot go on; null when it can. */
	problem: JournalFault | null;
	/** Where it was taken over from, and when; null where it was bent here. */
	imported: Imported | null;
}

/** No longer than any disk takes for a name. */
const ID = /^[0-9a-z][0-9a-z-]{0,99}$/;
const LOG = /^[0-9a-z][0-9a-z-]*\.log$/;

/** The folder of the logs under the program's home. */
export function sessionFolder(home: string): string {
	return join(home, 'sessions');
}

/**
 * A new session's id: time in UTC and then `random`, so that ids sort by their start. `random`: lower-case letters and digits.
 */
export function newSessionId(now: Date, random: string): string {
	if (!/^[0-9a-z]+$/.test(random))
		throw new RangeError(`"${random}" cannot end an id: lower-case letters and digits only.`);
	const [day, time] = now.toISOString().split('T') as [string, string];
	return `${day.replaceAll('-', '')}-${time.slice(0, 8).replaceAll(':', '')}-${random}`;
}

/** The log of a session as it is named at its start. Throws NoLog for what cannot be an id. */
export function sessionPath(home: string, id: string): string {
	return join(sessionFolder(home), logName(id));
}

/** The name of a session's log. Throws NoLog for what cannot be an id: one from elsewhere may lead out of the folder. */
export function logName(id: string): string {
	if (!ID.test(id)) throw new NoLog({ code: 'not-an-id', id }, id);
	return `${id}${LOG_ENDING}`;
}

function keptSession(id: string, path: string, read: LogRead, problem: JournalFault | null, fs: FsPort): ReadSession {
	const { records, tail, damage } = read;
	const last = records.at(-1) ?? null;
	const touched = damage === null ? (last?.at ?? '') : lastTouched(id, path, fs);
	const imported = importedFrom(path, fs);
	return { id, path, first: records[0] ?? null, last, touched, records, tail, damage, problem, imported };
}

function lastTouched(id: string, path: string, fs: FsPort): string {
	const begun = id.replace(/^(\d{4})(\d\d)(\d\d)-(\d\d)(\d\d)(\d\d)-.*$/, '$1-$2-$3T$4:$5:$6.000Z');
	const read = lastTimeIn(readFile(path, fs));
	return begun !== id && begun > read ? begun : read;
}

/** One kept session, damaged or not. Throws NoLog when there is none that can be read. */
export function readSession(home: string, id: string, fs: FsPort = realFs, rescue: string | null = null): ReadSession {
	const log = sessionPath(home, id);
	const { path, read } = readLongest(log, awayOf(log, rescue, fs), fs);
	return keptSession(id, path, read, faultOf(path, read)?.fact ?? null, fs);
}

/** As readSession, but one that cannot be gone on with is given with the reason and what can be read of it. Throws NoLog for no id. */
export function readAnyway(home: string, id: string, fs: FsPort = realFs, rescue: string | null = null): ReadSession {
	try {
		return readSession(home, id, fs, rescue);
	} catch (error) {
		if (!(error instanceof JournalError)) throw error;
		const path = sessionPath(home, id);
		return keptSession(id, path, readOrNothing(path, fs), error.fact, fs);
	}
}

function readOrNothing(path: string, fs: FsPort): LogRead {
	try {
		return readLog(path, fs);
	} catch (error) {
		// The caller has the reason in hand already.
		if (error instanceof JournalError) return { records: [], size: 0, tail: null, damage: null };
		throw error;
	}
}

/** Where the log of a session lies, by the folder's listing alone. */
export interface LogPlace {
	id: string;
	/** The log it goes on in; null when that is not where the note says. */
	path: string | null;
	/** The log that it goes on in is the one named after it in its home. */
	isOwn?: boolean;
	/** It was taken over from elsewhere. */
	imported?: boolean;
}

/** The places of all logs kept under `home`, newest session first. Throws JournalError when the folder cannot be read. */
export function logPlaces(home: string, fs: FsPort = realFs, rescue: string | null = null): LogPlace[] {
	const prefix = `${sessionFolder(home)}${sep}`;
	const names = namesIn(sessionFolder(home), fs).sort().reverse();
	const logs = names.filter((name) => LOG.test(name));
	const others = logs.length === names.length ? [] : names.filter((name) => !LOG.test(name));
	// Asking the disk for a note beside every log would double the time that a start takes.
	const marks = new Set(others.filter((name) => name.endsWith(movedMarkOf(LOG_ENDING))));
	const noted = new Set(others.filter((name) => name.endsWith(folderNoteOf(LOG_ENDING))));
	const imported = new Set(others.filter((name) => name.endsWith(importMarkOf(LOG_ENDING))));
	const away = rescue === null ? new Set<string>() : new Set(namesIn(rescue, fs).filter((name) => LOG.test(name)));
	const idOf = (name: string) => name.slice(0, -LOG_ENDING.length);
	if (others.length + away.size === 0) {
		return logs.map((name) => ({ id: idOf(name), path: `${prefix}${name}`, isOwn: true }));
	}
	const all = marks.size + away.size === 0 ? logs : withThoseAway(logs, marks, away);
	const places = all.map((name): LogPlace => {
		const own = `${prefix}${name}`;
		const mayBeAway = marks.has(movedMarkOf(name)) || noted.has(folderNoteOf(name)) || away.size > 0;
		const path = mayBeAway ? placeAfter(own, fs, rescue) : own;
		const isImported = imported.has(importMarkOf(name));
		return { id: idOf(name), path, ...(path === own && { isOwn: true }), ...(isImported && { imported: true }) };
	});
	if (marks.size + noted.size + away.size === 0) return places;
	// A session that went on in a new file of the same folder is one session, under its first id.
	const goneOn = new Set(places.flatMap(({ isOwn, path }) => (isOwn ? [] : [resolve(path ?? '')])));
	return places.filter(({ isOwn, path }) => !isOwn || !goneOn.has(resolve(path ?? '')));
}

/** The names in a folder; none where it is not there. Throws JournalError where it cannot be read. */
export function namesIn(folder: string, fs: FsPort): string[] {
	try {
		return fs.readdirSync(folder);
	} catch (error) {
		if (codeOf(error) === 'ENOENT') return [];
		throw new JournalError({ code: 'folder-unreadable', folder, cause: causeOf(error) }, 1, error);
	}
}

/** With the logs that were begun in another place: their home has a mark at most. A number after a name is no other session. */
function withThoseAway(logs: readonly string[], marks: ReadonlySet<string>, away: ReadonlySet<string>): string[] {
	const marked = [...marks].map((mark) => mark.slice(0, -movedMarkOf('').length)).filter((name) => LOG.test(name));
	const known = new Set([...logs, ...marked]);
	const others = [...away].filter((name) => !known.has(name.replace(/-\d+\.log$/, LOG_ENDING)));
	return [...new Set([...known, ...others])].sort().reverse();
}

function placeAfter(path: string, fs: FsPort, rescue: string | null): string | null {
	try {
		return largestOf(path, awayOf(path, rescue, fs), fs);
	} catch (error) {
		if (error instanceof JournalError) return null;
		throw error;
	}
}

/** Every session kept under `home`, newest first; those with a damaged or unreadable log are listed with what is wrong. */
export function listSessions(home: string, fs: FsPort = realFs): ReadSession[] {
	return logPlaces(home, fs).map(({ id }) => readAnyway(home, id, fs));
}
