/** Logs that are not as they were written: cut at every byte, each bit flipped, of a later version, of another program. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import { Damaged, NewerFormat } from '../../src/journal/errors.ts';
import { openLog } from '../../src/journal/open-log.ts';
import { parseLog } from '../../src/journal/read-log.ts';
import { encodeRecord, type LogRecord } from '../../src/journal/record.ts';
import { must } from './subject.ts';

const TEXTS = ['start', '88 1/2', 'é ✓', 'x'.repeat(700), 'last one'];
const RECORDS = TEXTS.map((text, seq): LogRecord => ({ seq, v: 1, at: '2026-01-01T08:00:00.000Z', text }));
const FILE = Buffer.concat(RECORDS.map(encodeRecord));

const isBeginning = (records: readonly LogRecord[]) => isDeepStrictEqual(records, RECORDS.slice(0, records.length));

/** Gives how many cuts there were. */
export function cutAnywhere(): number {
	for (let size = 0; size < FILE.length; size++) {
		const { records, damage } = parseLog(FILE.subarray(0, size));
		must(damage === null && isBeginning(records), `cut after ${size} bytes, other lines are read than were written`);
		const whole = FILE.subarray(0, size).filter((byte) => byte === 10).length;
		must(records.length === whole, `cut after ${size} bytes, ${records.length} lines are read of ${whole}`);
	}
	return FILE.length;
}

/** Gives how many bits were flipped, one at a time. */
export function flippedAnywhere(): number {
	const file = Buffer.from(FILE);
	for (let bit = 0; bit < 8 * file.length; bit++) {
		const mask = 1 << (bit & 7);
		file[bit >> 3]! ^= mask;
		const { records, damage, tail } = parseLog(file);
		file[bit >> 3]! ^= mask;
		must(isBeginning(records), `with bit ${bit} flipped, other lines are read than were written`);
		must(damage !== null || tail !== null, `bit ${bit} was flipped, and nobody noticed`);
	}
	return 8 * file.length;
}

/** A later version's log and another program's file are refused as what they are, and left as they are. */
export function strange(folder: string): number {
	const later = Buffer.concat([FILE, encodeRecord({ ...RECORDS[0], seq: TEXTS.length, v: 2 })]);
	const cases = [
		['later.log', later, NewerFormat],
		['foreign.log', Buffer.from('%PDF-1.7\nof another program\n'), Damaged],
		['foreign-line.log', Buffer.from('of another program'), Damaged],
	] as const;
	for (const [name, bytes, refused] of cases) {
		const log = join(folder, name);
		writeFileSync(log, bytes);
		must(refusal(() => openLog(log, { now: new Date() })) instanceof refused, `${name} was opened`);
		must(readFileSync(log).equals(bytes), `${name} was changed`);
	}
	return cases.length;
}

/** What it threw; null where it did not. */
export function refusal(run: () => unknown): unknown {
	try {
		run();
		return null;
	} catch (error) {
		return error;
	}
}
