import { codeOf, reasonOf } from '../files/error-codes.ts';
import { type FsPort, realFs } from '../files/fs-port.ts';
import { Damaged, JournalError, NewerFormat, NoLog } from './errors.ts';
import { decodeRecord, FORMAT, type LogRecord } from './record.ts';

export interface LogRead {
	records: LogRecord[];
	/** Bytes of the good records: a writer that goes on does so here. */
	size: number;
	/** An unfinished last line, as a crash leaves it: nothing in it was ever acknowledged. */
	tail: null | { kind: 'torn'; bytes: number };
	/** The first line (from 1) that is not what was written, or is of a later program version; `records` are those before it. */
	damage: null | { kind: 'damaged' | 'newer'; line: number; why: string };
}

const LF = 10;
const SECTOR = 512;

/** Does the part of the range that lies in one disk sector hold nothing but zeros? A lost sector does; a flipped bit never makes one. */
function hasLostSector(file: Buffer, from: number): boolean {
	for (let start = from; start < file.length; ) {
		const end = Math.min(file.length, (Math.floor(start / SECTOR) + 1) * SECTOR);
		if (file.subarray(start, end).every((byte) => byte === 0)) return true;
		start = end;
	}
	return false;
}

/** Is the last line, which has no newline, a whole record with one strange byte where its newline was? */
function hasSpoiltNewline(file: Buffer, from: number, seq: number): boolean {
	return file[file.length - 1] !== 0 && 'record' in decodeRecord(file.subarray(from, file.length - 1), seq);
}

function judgeTail(file: Buffer, from: number, records: LogRecord[], why: string): LogRead {
	const seq = records.length;
	const newline = file.indexOf(LF, from);
	const isLast = newline === -1 || newline === file.length - 1;
	const spoilt = newline === -1 && hasSpoiltNewline(file, from, seq);
	if (isLast && !spoilt && (newline === -1 || hasLostSector(file, from)))
		return { records, size: from, tail: { kind: 'torn', bytes: file.length - from }, damage: null };
	const reason = spoilt ? 'its newline has been changed' : why;
	return { records, size: from, tail: null, damage: { kind: 'damaged', line: seq + 1, why: reason } };
}

/** Reads a log's bytes: every whole record up to the first that is bad, and what is wrong from there. */
export function parseLog(file: Buffer): LogRead {
	const records: LogRecord[] = [];
	let from = 0;
	while (from < file.length) {
		const newline = file.indexOf(LF, from);
		if (newline === -1) return judgeTail(file, from, records, '');
		const read = decodeRecord(file.subarray(from, newline), records.length);
		if ('newer' in read) {
			const why = `it has format ${read.newer}, and this program reads up to ${FORMAT}`;
			return { records, size: from, tail: null, damage: { kind: 'newer', line: records.length + 1, why } };
		}
		if ('bad' in read) return judgeTail(file, from, records, read.bad);
		records.push(read.record);
		from = newline + 1;
	}
	return { records, size: from, tail: null, damage: null };
}

/** A log's bytes. Throws NoLog when there is no file, JournalError when it cannot be read. */
export function readFile(path: string, fs: FsPort = realFs): Buffer {
	try {
		return fs.readFileSync(path);
	} catch (error) {
		if (codeOf(error) === 'ENOENT')
			throw new NoLog(`There is no log ${path}: pullbook log lists those that are kept.`, path, error);
		throw new JournalError(`The log ${path} cannot be read: ${reasonOf(error)}.`, 1, error);
	}
}

/**
 * Reads a log without changing or locking it. A line in the making by another session is a torn tail.
 * Throws NoLog when there is no file, JournalError when it cannot be read.
 */
export function readLog(path: string, fs: FsPort = realFs): LogRead {
	return parseLog(readFile(path, fs));
}

/** What keeps a session from going on in this log, as an error to throw; null when nothing does. */
export function faultOf(path: string, read: LogRead): JournalError | null {
	const { damage, records } = read;
	if (damage?.kind === 'newer') {
		const what = `The log ${path} was written by a later version of the program: in line ${damage.line} ${damage.why}.`;
		return new NewerFormat(`${what} Open it with that version; nothing was changed.`, path);
	}
	if (damage) {
		const what = `The log ${path} is damaged in line ${damage.line}: ${damage.why}. Nothing was changed.`;
		const next = `The ${records.length} lines before it can still be read (pullbook log), but the session cannot go on.`;
		return new Damaged(`${what} ${next} If you have a copy of the file, put it back.`, path, damage.line);
	}
	if (records.length === 0)
		return new NoLog(
			`The log ${path} holds no line: its session ended before the first was saved. Start a new one.`,
			path,
		);
	return null;
}
