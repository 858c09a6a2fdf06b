import { causeOf, codeOf } from '../files/error-codes.ts';
import { type FsPort, realFs } from '../files/fs-port.ts';
import { Damaged, JournalError, NewerFormat, NoLog } from './errors.ts';
import type { LineFault } from './facts.ts';
import { decodeRecord, type LogRecord, timeOf } from './record.ts';

export interface LogRead {
	records: LogRecord[];
	/** Bytes of the good records: a writer that goes on does so here. */
	size: number;
	/** An unfinished last line, as a crash leaves it: nothing in it was ever acknowledged. */
	tail: null | { kind: 'torn'; bytes: number };
	/** The first line (from 1) that is not what was written, or is of a later program version; `records` are those before it. */
	damage: null | { kind: 'damaged' | 'newer'; line: number; why: LineFault };
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

/** Does it begin as this record's line does, as far as it goes? What a cut leaves does, with zeros after it at most. */
function beginsAsRecord(line: Buffer, seq: number): boolean {
	const text = line.toString('latin1', 0, 64).replace(/\0+$/, '');
	const [checksum, rest] = [text.slice(0, 8), text.slice(8)];
	const head = ` {"seq":${seq},`;
	return /^[0-9a-f]*$/.test(checksum) && (rest.startsWith(head) || head.startsWith(rest));
}

function judgeTail(file: Buffer, from: number, records: LogRecord[], why: LineFault): LogRead {
	const seq = records.length;
	const newline = file.indexOf(LF, from);
	const isLast = newline === -1 || newline === file.length - 1;
	const spoilt = newline === -1 && hasSpoiltNewline(file, from, seq);
	const isCut = newline === -1 && !spoilt && beginsAsRecord(file.subarray(from), seq);
	if (isLast && !spoilt && (isCut || hasLostSector(file, from)))
		return { records, size: from, tail: { kind: 'torn', bytes: file.length - from }, damage: null };
	const reason: LineFault = spoilt ? { code: 'newline' } : why;
	return { records, size: from, tail: null, damage: { kind: 'damaged', line: seq + 1, why: reason } };
}

/** Reads a log's bytes: every whole record up to the first that is bad, and what is wrong from there. */
export function parseLog(file: Buffer): LogRead {
	const records: LogRecord[] = [];
	let from = 0;
	while (from < file.length) {
		const newline = file.indexOf(LF, from);
		if (newline === -1) return judgeTail(file, from, records, { code: 'newline' });
		const read = decodeRecord(file.subarray(from, newline), records.length);
		if ('bad' in read && read.bad.code === 'newer') {
			const damage = { kind: 'newer' as const, line: records.length + 1, why: read.bad };
			return { records, size: from, tail: null, damage };
		}
		if ('bad' in read) return judgeTail(file, from, records, read.bad);
		records.push(read.record);
		from = newline + 1;
	}
	return { records, size: from, tail: null, damage: null };
}

/** When the last line of a log was written that can be read at all, also behind damage; '' without any. */
export function lastTimeIn(file: Buffer): string {
	for (let end = file.lastIndexOf(LF); end >= 0; ) {
		const before = end === 0 ? -1 : file.lastIndexOf(LF, end - 1);
		const time = timeOf(file.subarray(before + 1, end));
		if (time !== null) return time;
		end = before;
	}
	return '';
}

/** A log's bytes. Throws NoLog when there is no file, JournalError when it cannot be read. */
export function readFile(path: string, fs: FsPort = realFs): Buffer {
	try {
		return fs.readFileSync(path);
	} catch (error) {
		if (codeOf(error) === 'ENOENT') throw new NoLog({ code: 'log-absent', log: path }, path, error);
		throw new JournalError({ code: 'log-unreadable', log: path, cause: causeOf(error) }, 1, error);
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
	if (damage?.kind === 'newer')
		return new NewerFormat({ code: 'log-newer', log: path, line: damage.line, why: damage.why });
	if (damage) {
		const { line, why } = damage;
		return new Damaged({ code: 'log-damaged', log: path, line, lines: records.length, why });
	}
	return records.length === 0 ? new NoLog({ code: 'log-empty', log: path }, path) : null;
}
