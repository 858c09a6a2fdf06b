/** Sessions copied out of a home into a folder, and out of a folder into a home: each log whole, as it stands. */
import { basename, join, resolve } from 'node:path';
import { causeOf, codeOf } from '../../files/error-codes.ts';
import type { FsPort } from '../../files/fs-port.ts';
import { awayOf, LOG_ENDING, movedMarkOf } from '../away.ts';
import { type LogPlace, logPlaces, namesIn, sessionFolder, sessionPath } from '../catalogue.ts';
import { JournalError } from '../errors.ts';
import type { LockSelf } from '../lock.ts';
import { longestOf } from '../merge-back.ts';
import { writerParts } from '../writer-parts.ts';
import { copySession } from './copy-session.ts';
import type { Exchanged, LeftOut } from './facts.ts';
import { Shelf } from './shelf.ts';
import { type Source, sourceAt } from './source.ts';

/** `fs` and `self` are for tests; `onEach` hears before each log how many there are to come, with this one. */
export interface ExchangeOptions {
	now: Date;
	fs?: FsPort;
	self?: LockSelf;
	onEach?: (remaining: number) => void;
}

/** A log that is to be copied, when its turn has come. */
interface LogToCopy {
	name: string;
	read(): Source | LeftOut;
}

/** Copies every session of a home into a folder (made if missing). Done again, or cut short and done again, it comes to the same. Throws JournalError where the home cannot be read. */
export function exportSessions(home: string, folder: string, options: ExchangeOptions): Exchanged {
	const parts = writerParts(options);
	const candidates = logPlaces(home, parts.fs).map((place) => ofHome(home, place, parts.fs));
	return copyEach(candidates.reverse(), folder, () => Shelf.shared(folder, parts), options);
}

/** Copies every session that lies in a folder, or in the sessions of a home that lies there, into a home. Throws JournalError where the folder cannot be read. */
export function importSessions(home: string, folder: string, options: ExchangeOptions): Exchanged {
	const parts = writerParts(options);
	const candidates = [folder, sessionFolder(folder)].flatMap((each) => inFolder(resolve(each), parts.fs));
	return copyEach(candidates, sessionFolder(home), () => Shelf.ofHome(home, folder, parts), options);
}

function ofHome(home: string, { id }: LogPlace, fs: FsPort): LogToCopy {
	const read = () => {
		try {
			const log = sessionPath(home, id);
			return sourceAt(longestOf(log, awayOf(log, null, fs), fs), fs);
		} catch (error) {
			if (error instanceof JournalError) return error.fact;
			throw error;
		}
	};
	return { name: id, read };
}

/** A home's marks are not followed here: they may lead anywhere. */
function inFolder(folder: string, fs: FsPort): LogToCopy[] {
	const names = namesIn(folder, fs);
	const marks = new Set(names.filter((name) => name.endsWith(movedMarkOf(LOG_ENDING))));
	return names
		.filter((name) => name.endsWith(LOG_ENDING))
		.sort()
		.map((name) => {
			const path = join(folder, name);
			return { name, read: () => (marks.has(movedMarkOf(name)) ? { code: 'away', log: path } : sourceAt(path, fs)) };
		});
}

function copyEach(
	candidates: readonly LogToCopy[],
	folder: string,
	open: () => Shelf,
	{ onEach = () => {} }: ExchangeOptions,
): Exchanged {
	const result: Exchanged = { copied: [], left: [], stopped: null };
	let shelf: Shelf;
	try {
		shelf = open();
	} catch (error) {
		if (codeOf(error) === '') throw error;
		return { ...result, stopped: { log: folder, cause: causeOf(error) } };
	}
	for (const [n, { name, read }] of candidates.entries()) {
		onEach(candidates.length - n);
		const source = read();
		const outcome = 'code' in source ? { left: source } : copySession(source, shelf);
		if ('copied' in outcome) result.copied.push(outcome.copied);
		else if ('left' in outcome) result.left.push({ name: basename(name), why: outcome.left });
		else return { ...result, stopped: outcome.stopped };
	}
	return result;
}
