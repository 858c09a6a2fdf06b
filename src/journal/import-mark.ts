/** The file beside a log that was taken over from elsewhere: where from, and when. It stands there before the log does. */
import { codeOf } from '../files/error-codes.ts';
import type { FsPort } from '../files/fs-port.ts';
import { JournalError } from './errors.ts';
import { createOneRecord } from './one-record.ts';
import { readLog } from './read-log.ts';

/** The folder that a session came from, and when (ISO time); both '' where the mark was cut short in the writing. */
export interface Imported {
	from: string;
	at: string;
}

/** Itself a log, of one record. */
export function importMarkOf(log: string): string {
	return `${log}.imported`;
}

/** Marks a log that is about to be written. One that an import cut short has left will do. Throws what the disk threw. */
export function leaveImportMark(log: string, { from, at }: Imported, fs: FsPort): void {
	try {
		createOneRecord(fs, importMarkOf(log), at, { imported: from });
	} catch (error) {
		if (codeOf(error) !== 'EEXIST') throw error;
	}
}

/** Null without a mark. */
export function importedFrom(log: string, fs: FsPort): Imported | null {
	try {
		fs.statSync(importMarkOf(log));
	} catch (error) {
		if (codeOf(error) === '') throw error;
		return null;
	}
	try {
		const [mark] = readLog(importMarkOf(log), fs).records;
		return { from: typeof mark?.imported === 'string' ? mark.imported : '', at: mark?.at ?? '' };
	} catch (error) {
		if (!(error instanceof JournalError)) throw error;
		return { from: '', at: '' };
	}
}
