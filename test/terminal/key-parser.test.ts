import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { KeyParser } from '../../src/terminal/key-parser.ts';

const RETURN = '\r';
const BACKSPACE = '\b';
const ESCAPE = '\x1b';

/** Keys that are not the character they stand for. */
const NAMED = new Set([
	'\r',
	'\b',
	'\t',
	'\x03',
	'\x1a',
	'\x1b',
	...['A', 'B', 'C', 'D', 'F', 'H', '5~', '6~'].map((end) => `\x1b[${end}`),
]);

/** The keys in text that comes as one chunk. */
function keysOf(text: string): string[] {
	return new KeyParser().push(text, 0);
}

describe('keys of the numeric pad', () => {
	test.each([
		['Enter, numeric mode', '\n', [RETURN]],
		['Enter, application mode', '\x1bOM', [RETURN]],
		// Source: DEC VT100 user guide, table 3-8 (keypad codes in application mode).
		['0 to 9, application mode', '\x1bOp\x1bOq\x1bOr\x1bOs\x1bOt\x1bOu\x1bOv\x1bOw\x1bOx\x1bOy', [...'0123456789']],
		['signs, application mode', '\x1bOj\x1bOk\x1bOl\x1bOm\x1bOn\x1bOo', [...'*+,-./']],
		// Source: kitty keyboard protocol, "Functional key definitions".
		['0, 1 and 9, kitty', '\x1b[57399u\x1b[57400u\x1b[57408u', [...'019']],
		['signs, kitty', '\x1b[57409u\x1b[57410u\x1b[57411u\x1b[57412u\x1b[57413u', [...'./*-+']],
		['Enter, kitty, num lock on', '\x1b[57414;129u', [RETURN]],
		['1 let go, kitty', '\x1b[57400;1:3u', []],
	])('%s', (_, bytes, keys) => {
		expect(keysOf(bytes)).toEqual(keys);
	});
});

describe('other keys', () => {
	test.each([
		['digits and Enter in one chunk', '12.5\r', ['1', '2', '.', '5', RETURN]],
		['0x7f twice in one chunk', '\x7f\x7f', [BACKSPACE, BACKSPACE]],
		['Delete', '\x1b[3~', [BACKSPACE]],
		['arrows in both modes', '\x1b[A\x1bOB', ['\x1b[A', '\x1b[B']],
		['arrow with num lock on', '\x1b[1;129A', ['\x1b[A']],
		['page keys', '\x1b[5~\x1b[6~', ['\x1b[5~', '\x1b[6~']],
		[
			'Home and End in three ways',
			'\x1b[H\x1b[1~\x1b[7~\x1b[F\x1b[4~\x1b[8~',
			['\x1b[H', '\x1b[H', '\x1b[H', '\x1b[F', '\x1b[F', '\x1b[F'],
		],
		['pasted text', '\x1b[200~9 3/8\x1b[201~', [...'9 3/8']],
		['letters of any script, one key each', 'é½𝟙', ['é', '½', '𝟙']],
		['Ctrl-C and Ctrl-Z', '\x03\x1a', ['\x03', '\x1a']],
		['Ctrl-C and Ctrl-Z, kitty', '\x1b[99;5u\x1b[122;5u', ['\x03', '\x1a']],
		['a letter with shift, kitty', '\x1b[97:65;2u', ['A']],
		['Esc twice and a digit with Alt', '\x1b\x1b1', [ESCAPE]],
	])('%s', (_, bytes, keys) => {
		expect(keysOf(bytes)).toEqual(keys);
	});

	test('an instrument that ends its reading with CR LF presses Enter once, in one chunk or in two', () => {
		expect(keysOf('12.5\r\n')).toEqual(['1', '2', '.', '5', RETURN]);
		const parser = new KeyParser();
		expect(parser.push('5\r', 100)).toEqual(['5', RETURN]);
		expect(parser.push('\n', 105)).toEqual([]);
	});

	test('Enter and then Enter of the numeric pad, by hand, are two', () => {
		const parser = new KeyParser();
		expect(parser.push('\r', 100)).toEqual([RETURN]);
		expect(parser.push('\n', 300)).toEqual([RETURN]);
	});
});

describe('what is not known gives no key', () => {
	test.each([
		['Ctrl+F1', '\x1b[1;5P'],
		['F1, F5, F12', '\x1bOP\x1b[15~\x1b[24~'],
		['F1 of the Linux console', '\x1b[[A'],
		['an arrow with shift', '\x1b[1;2A'],
		['Insert', '\x1b[2~'],
		['Alt and a letter', '\x1ba'],
		['Alt and an arrow', '\x1b\x1b[A'],
		['a mouse press, old form', '\x1b[M !!'],
		['a mouse press, new form', '\x1b[<0;10;12M'],
		["the terminal's answer about its color", '\x1b]11;rgb:ffff/ffff/ffff\x1b\\'],
		['the same, ended by BEL', '\x1b]11;rgb:ffff/ffff/ffff\x07'],
		['a device report', '\x1b[?62;22c'],
		['a key that kitty numbers and nobody uses', '\x1b[57428u'],
		// Source: kitty keyboard protocol, "Detection of support".
		["the terminal's answer about its keys", '\x1b[?5u'],
		['numbers that are none', '\x1b[1.5u\x1b[!u\x1b[97;1;1.5u'],
		['control characters', '\x00\x01\x13\x11\x1c'],
		['a sequence in one-byte form', '\x9b15~'],
		['focus came and went', '\x1b[I\x1b[O'],
	])('%s', (_, bytes) => {
		expect(keysOf(`1${bytes}2`)).toEqual(['1', '2']);
	});
});

describe('sequences cut in two', () => {
	test.each(['\x1bOM', '\x1b[3~', '\x1b[57400u', '\x1b[1;5P', '\x1b]11;x\x07', '\x1b[M !!'])(
		'%j at any place',
		(bytes) => {
			for (let at = 1; at < bytes.length; at++) {
				const parser = new KeyParser();
				const keys = [...parser.push(bytes.slice(0, at), 0), ...parser.push(`${bytes.slice(at)}7`, 1)];
				expect(keys).toEqual([...keysOf(bytes), '7']);
				expect(parser.waiting).toBe(false);
			}
		},
	);

	test('ESC with nothing behind it is the Esc key once its time is over', () => {
		const parser = new KeyParser();
		expect(parser.push('\x1b', 0)).toEqual([]);
		expect(parser.waiting).toBe(true);
		expect(parser.expire()).toEqual([ESCAPE]);
		expect(parser.waiting).toBe(false);
	});

	test('ESC and a digit in two chunks are two keys', () => {
		const parser = new KeyParser();
		expect([...parser.push('\x1b', 0), ...parser.push('4', 5)]).toEqual([ESCAPE, '4']);
	});

	test('a sequence that is never finished is no key', () => {
		const parser = new KeyParser();
		expect(parser.push('1\x1b[12;', 0)).toEqual(['1']);
		expect(parser.expire()).toEqual([]);
		expect(parser.push('2', 100)).toEqual(['2']);
	});
});

test('any bytes at all, however they are cut, give keys that Ink can take', () => {
	const piece = fc.oneof(
		fc.string(),
		fc.constantFrom('\x1b', '\x1b[', '\x1bO', '1', ';', '?', '.', '!', 'P', 'M', 'u', '~', '\r', '\n', '\x9b'),
	);
	fc.assert(
		fc.property(fc.array(piece), (chunks) => {
			const parser = new KeyParser();
			const keys = [...chunks.flatMap((chunk, at) => parser.push(chunk, at)), ...parser.expire()];
			for (const key of keys) expect(NAMED.has(key) || /^\P{C}$/u.test(key), JSON.stringify(key)).toBe(true);
		}),
	);
});
