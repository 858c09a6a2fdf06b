import { crc32Hex } from './crc32.ts';

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

export type Decoded = { record: LogRecord } | { bad: string } | { newer: unknown };

function isObject(value: unknown): value is Record<string, unknown> {
	return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** Reads one line (without its newline) that must be record `seq`. */
export function decodeRecord(line: Buffer, seq: number): Decoded {
	const body = line.subarray(9);
	// latin1 keeps every byte apart, so that no flipped bit is smoothed over by UTF-8 decoding.
	if (line.subarray(0, 9).toString('latin1') !== `${crc32Hex(body)} `) return { bad: 'its checksum does not match' };
	let value: unknown;
	try {
		value = JSON.parse(body.toString('utf8'));
	} catch (error) {
		return { bad: `it is not JSON (${error instanceof Error ? error.message : error})` };
	}
	if (!isObject(value)) return { bad: 'it is not a JSON object' };
	if (typeof value.v === 'number' && value.v > FORMAT) return { newer: value.v };
	if (value.v !== FORMAT) return { bad: `its format "v" is ${JSON.stringify(value.v)}, where ${FORMAT} is right` };
	if (value.seq !== seq) return { bad: `its number is ${JSON.stringify(value.seq)}, where ${seq} should follow` };
	if (typeof value.at !== 'string') return { bad: 'it has no time "at"' };
	return { record: value as LogRecord };
}
