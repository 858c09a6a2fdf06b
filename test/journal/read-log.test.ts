import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crc32Hex } from '../../src/journal/crc32.ts';
import { Damaged, NewerFormat, NoLog } from '../../src/journal/errors.ts';
import { faultOf, parseLog, readLog } from '../../src/journal/read-log.ts';
import { encodeRecord, type LogRecord } from '../../src/journal/record.ts';
import { errorWords } from '../../src/words/error.ts';
import { record } from './session-on-disk.ts';

const TEXTS = ['start', 'ready', '88 1/2', 'é ü ✓', 'x'.repeat(700), '', '"quoted" \\ and\nlines', 'last one'];
const RECORDS = TEXTS.map((text, seq) => record(seq, text));
const LINES = RECORDS.map(encodeRecord);
const FILE = Buffer.concat(LINES);
const ENDS = LINES.map((_, i) => Buffer.concat(LINES.slice(0, i + 1)).length);
const LAST = FILE.length - LINES.at(-1)!.length;

function line(text: string): Buffer {
	return Buffer.from(`${crc32Hex(Buffer.from(text))} ${text}\n`);
}

describe('a record as a line', () => {
	it('is the checksum of its JSON, a space, the JSON and a newline', () => {
		const text = '{"seq":0,"v":1,"at":"2026-01-01T08:00:00.000Z","text":"a"}';
		expect(encodeRecord(record(0, 'a'))).toEqual(line(text));
	});

	it('any text comes back, and holds one newline only', () => {
		fc.assert(
			fc.property(fc.string({ unit: 'binary' }), fc.json(), (text, json) => {
				const kept = { ...record(0, text), json: JSON.parse(json) } as LogRecord;
				const bytes = encodeRecord(kept);
				expect(bytes.indexOf(10)).toBe(bytes.length - 1);
				expect(parseLog(bytes).records).toEqual([JSON.parse(JSON.stringify(kept))]);
			}),
		);
	});

	it('a number that JSON cannot hold is refused, not turned into null', () => {
		expect(() => encodeRecord({ seq: 0, ask: { stop: Number.NaN } })).toThrow(/cannot keep "stop": NaN/);
	});
});

describe('a whole log', () => {
	it('reads back what was written', () => {
		expect(parseLog(FILE)).toEqual({ records: RECORDS, size: FILE.length, tail: null, damage: null });
	});

	it('of no bytes has no records and nothing to repair', () => {
		expect(parseLog(Buffer.alloc(0))).toEqual({ records: [], size: 0, tail: null, damage: null });
		expect(faultOf('a.log', parseLog(Buffer.alloc(0)))).toBeInstanceOf(NoLog);
	});

	it('that is not there is said so', () => {
		expect(() => readLog('/nowhere/a.log')).toThrow(NoLog);
	});
});

describe('a torn tail', () => {
	it('every prefix reads exactly its whole records', () => {
		for (let size = 0; size <= FILE.length; size++) {
			const whole = ENDS.filter((end) => end <= size).length;
			const good = whole === 0 ? 0 : ENDS[whole - 1]!;
			const tail = size === good ? null : { kind: 'torn', bytes: size - good };
			expect(parseLog(FILE.subarray(0, size))).toEqual({
				records: RECORDS.slice(0, whole),
				size: good,
				tail,
				damage: null,
			});
		}
	});

	it('is none where it does not begin as its record does: that is damage', () => {
		const first = LINES[0]!;
		const others = [
			'something else',
			'{"seq":0,',
			first.toString('latin1', 9),
			`${first.toString('latin1', 0, 9)}{"seq":1,`,
		];
		for (const text of others) {
			const damaged = (file: Buffer) => parseLog(file).damage;
			expect(damaged(Buffer.from(text))).toMatchObject({ kind: 'damaged', line: 1 });
			expect(damaged(Buffer.concat([first, LINES[1]!, Buffer.from(text)]))).toMatchObject({ line: 3 });
		}
	});

	it('the last record zeroed from any byte to its end', () => {
		for (let from = LAST; from < FILE.length; from++) {
			const zeroed = Buffer.from(FILE).fill(0, from);
			expect(parseLog(zeroed)).toMatchObject({ size: LAST, tail: { bytes: FILE.length - LAST }, damage: null });
			expect(parseLog(zeroed).records).toEqual(RECORDS.slice(0, -1));
		}
	});

	it('zeros of any length after the last record', () => {
		for (let count = 1; count < 1100; count++) {
			const read = parseLog(Buffer.concat([FILE, Buffer.alloc(count)]));
			expect(read).toEqual({ records: RECORDS, size: FILE.length, tail: { kind: 'torn', bytes: count }, damage: null });
		}
	});

	it('a last record over many sectors, any of which is lost, its newline there or not', () => {
		const long = encodeRecord(record(RECORDS.length, 'y'.repeat(2600)));
		const file = Buffer.concat([FILE, long]);
		for (let sector = Math.floor(FILE.length / 512); sector * 512 < file.length; sector++) {
			const lost = Buffer.from(file).fill(
				0,
				Math.max(FILE.length, sector * 512),
				Math.min(file.length, (sector + 1) * 512),
			);
			expect(parseLog(lost)).toMatchObject({ size: FILE.length, tail: { bytes: long.length }, damage: null });
		}
	});
});

describe('damage', () => {
	it('every flipped bit is found, called damage, and placed in its line', () => {
		for (let bit = 0; bit < FILE.length * 8; bit++) {
			const at = bit >> 3;
			const flipped = Buffer.from(FILE);
			flipped[at] = flipped[at]! ^ (1 << (bit & 7));
			const read = parseLog(flipped);
			const hit = ENDS.findIndex((end) => at < end);
			if (read.damage?.line !== hit + 1 || read.tail !== null)
				expect.fail(`bit ${bit}: ${JSON.stringify(read.damage)}`);
			if (read.records.length !== hit || read.size !== (ENDS[hit - 1] ?? 0)) expect.fail(`bit ${bit}: wrong records`);
		}
	});

	it('a bad line before the last, even one that is cut or zeroed', () => {
		const spoilt = [
			Buffer.concat([FILE.subarray(0, ENDS[2]! - 5), FILE.subarray(ENDS[2]!)]),
			Buffer.from(FILE).fill(0, ENDS[1]!, ENDS[2]! - 1),
			Buffer.concat([FILE.subarray(0, ENDS[1]!), Buffer.from('\n'), FILE.subarray(ENDS[1]!)]),
		];
		for (const file of spoilt) {
			expect(parseLog(file).tail).toBeNull();
			expect(parseLog(file).damage).toMatchObject({ kind: 'damaged', line: 3 });
		}
	});

	it.each([
		['a record left out', [LINES[0]!, LINES[2]!], 2, /its number is 2, where 1 should follow/],
		['a record twice', [LINES[0]!, LINES[0]!], 2, /its number is 0, where 1 should follow/],
		['a first record that is not 0', [LINES[1]!], 1, /its number is 1, where 0 should follow/],
		['no JSON', [line('{nonsense')], 1, /it is not JSON/],
		['no object', [line('[1]')], 1, /it is not a JSON object/],
		['no format', [line('{"seq":0,"at":""}')], 1, /"v" is undefined, where 1 is right/],
		['no time', [line('{"seq":0,"v":1}')], 1, /it has no time "at"/],
	])('%s', (_, lines, at, why) => {
		const read = parseLog(Buffer.concat(lines));
		expect(read.damage).toMatchObject({ kind: 'damaged', line: at });
		const fault = faultOf('a.log', read);
		expect(errorWords(fault)).toMatch(why);
		expect(fault).toBeInstanceOf(Damaged);
		expect(fault).toMatchObject({ exitCode: 6, path: 'a.log', line: at });
		expect(errorWords(fault)).toMatch(`The log a.log is damaged in line ${at}`);
	});

	it('a record of a later program version is refused as such, and what is before it can be read', () => {
		const read = parseLog(Buffer.concat([LINES[0]!, line('{"seq":1,"v":2,"when":"later"}'), LINES[2]!]));
		expect(read.records).toEqual([RECORDS[0]]);
		expect(read.damage).toEqual({ kind: 'newer', line: 2, why: { code: 'newer', found: 2, right: 1 } });
		expect(faultOf('a.log', read)).toBeInstanceOf(NewerFormat);
	});
});
