import { join, resolve, sep } from 'node:path';
import { codeOf, reasonOf } from '../files/error-codes.ts';
import { type FsPort, realFs } from '../files/fs-port.ts';
import { JournalError, NoLog } from './errors.ts';
import { followMoved } from './open-log.ts';
import { faultOf, type LogRead, readLog } from './read-log.ts';
import type { LogRecord } from './record.ts';
import { movedNote } from './writer.ts';

export interface ReadSession {
	id: string;
	/** Where its log lies now. */
	path: string;
	first: LogRecord | null;
	last: LogRecord | null;
	/** All whole records, in order. */
	records: LogRecord[];
	tail: LogRead['tail'];
	damage: LogRead['damage'];
	/** Why the session cannot go on, as a sentence; null when it can. */
	problem: string | null;
}

const ID = /^[0-9a-z][0-9a-z-]*$/;
const LOG = /^[0-9a-z][0-9a-z-]*\.log$/;
const EXTENSION = '.log';

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
	if (!ID.test(id)) throw new NoLog(`"${id}" is not a session's id; pullbook log lists them.`, id);
	return join(sessionFolder(home), `${id}${EXTENSION}`);
}

function kept(id: string, path: string, read: LogRead, problem: string | null): ReadSession {
	const { records, tail, damage } = read;
	return { id, path, first: records[0] ?? null, last: records.at(-1) ?? null, records, tail, damage, problem };
}

/** One kept session, damaged or not. Throws NoLog when there is none that can be read. */
export function readSession(home: string, id: string, fs: FsPort = realFs): ReadSession {
	const path = followMoved(sessionPath(home, id), fs);
	const read = readLog(path, fs);
	return kept(id, path, read, faultOf(path, read)?.message ?? null);
}

/** As readSession, but one that cannot be gone on with is given with the reason and what can be read of it. Throws NoLog for no id. */
export function readAnyway(home: string, id: string, fs: FsPort = realFs): ReadSession {
	try {
		return readSession(home, id, fs);
	} catch (error) {
		if (!(error instanceof JournalError)) throw error;
		const path = sessionPath(home, id);
		return kept(id, path, readOrNothing(path, fs), error.message);
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
}

/** The places of all logs kept under `home`, newest session first. Throws JournalError when the folder cannot be read. */
export function logPlaces(home: string, fs: FsPort = realFs): LogPlace[] {
	const prefix = `${sessionFolder(home)}${sep}`;
	const names = namesIn(sessionFolder(home), fs).sort().reverse();
	// Asking the disk for a note beside every log would double the time that a start takes.
	const notes = new Set(names.filter((name) => name.endsWith(movedNote(EXTENSION))));
	const places = names.flatMap((name): LogPlace[] => {
		if (!LOG.test(name)) return [];
		const path = `${prefix}${name}`;
		const id = name.slice(0, -EXTENSION.length);
		return [{ id, path: notes.has(movedNote(name)) ? placeAfter(path, fs) : path }];
	});
	if (notes.size === 0) return places;
	// A session that went on in a new file of the same folder is one session, under its first id.
	const isOwn = ({ id, path }: LogPlace) => path === `${prefix}${id}${EXTENSION}`;
	const goneOn = new Set(places.flatMap((place) => (isOwn(place) ? [] : [resolve(place.path ?? '')])));
	return places.filter((place) => !isOwn(place) || !goneOn.has(resolve(place.path ?? '')));
}

function namesIn(folder: string, fs: FsPort): string[] {
	try {
		return fs.readdirSync(folder);
	} catch (error) {
		if (codeOf(error) === 'ENOENT') return [];
		throw new JournalError(`The folder ${folder} cannot be read: ${reasonOf(error)}.`, 1, error);
	}
}

function placeAfter(path: string, fs: FsPort): string | null {
	try {
		return followMoved(path, fs);
	} catch (error) {
		if (error instanceof JournalError) return null;
		throw error;
	}
}

/** Every session kept under `home`, newest first; those with a damaged or unreadable log are listed with what is wrong. */
export function listSessions(home: string, fs: FsPort = realFs): ReadSession[] {
	return logPlaces(home, fs).map(({ id }) => readAnyway(home, id, fs));
}
