import { isObject } from '../tube/as-json.ts';
import { crc32Hex } from './crc32.ts';
import type { LineFault } from './facts.ts';

/** The format that this program writes; a log with a higher one is refused. */
export const FORMAT = 1;

/**
 * One line of a log. `seq` counts from 0 without a gap, `at` is the time of writing (ISO 8601). The rest is the session's: the first
 * record holds all that the session starts from, each later one an ask, its answer and their events.
 */
export interface LogRecord {
	seq: number;
	v: 1;
	at: string;
	[key: string]: unknown;
}

function refuseNotFinite(key: string, value: unknown): unknown {
	if (typeof value === 'number' && !Number.isFinite(value))
		throw new RangeError(
			`A record cannot keep "${key}": ${value}. JSON has no such number; give a finite one or null.`,
		);
	return value;
}

/**
 * A record as its line: CRC-32 of the JSON as 8 hex digits, a space, the JSON in UTF-8, a newline.
 * Throws RangeError on a number that JSON would quietly turn into null.
 */
export function encodeRecord(json: unknown): Buffer {
	const body = Buffer.from(JSON.stringify(json, refuseNotFinite));
	return Buffer.concat([Buffer.from(`${crc32Hex(body)} `), body, Buffer.from('\n')]);
}

export type Decoded = { record: LogRecord } | { bad: LineFault };

/** When a line was written, whatever its number: read where lines before it are damaged. Null where the line itself is. */
export function timeOf(line: Buffer): string | null {
	const read = decodeRecord(line, null);
	return 'record' in read ? read.record.at : null;
}

/** Reads one line (without its newline) that must be record `seq`; null: any. */
export function decodeRecord(line: Buffer, seq: number | null): Decoded {
	const body = line.subarray(9);
	// latin1 keeps every byte apart, so that no flipped bit is smoothed over by UTF-8 decoding.
	if (line.subarray(0, 9).toString('latin1') !== `${crc32Hex(body)} `) return { bad: { code: 'checksum' } };
	let value: unknown;
	try {
		value = JSON.parse(body.toString('utf8'));
	} catch (error) {
		return { bad: { code: 'not-json', text: error instanceof Error ? error.message : String(error) } };
	}
	if (!isObject(value)) return { bad: { code: 'no-object' } };
	if (typeof value.v === 'number' && value.v > FORMAT) return { bad: { code: 'newer', found: value.v, right: FORMAT } };
	if (value.v !== FORMAT) return { bad: { code: 'format', found: value.v, right: FORMAT } };
	if (seq !== null && value.seq !== seq) return { bad: { code: 'number', found: value.seq, right: seq } };
	if (typeof value.at !== 'string') return { bad: { code: 'no-time' } };
	return { record: value as LogRecord };
}
