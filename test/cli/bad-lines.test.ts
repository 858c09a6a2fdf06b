import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PassThrough, Readable, Writable } from 'node:stream';
import { setImmediate as turn } from 'node:timers/promises';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Io } from '../../src/cli/io.ts';
import { LineReader, linesIn } from '../../src/cli/line-reader.ts';
import { runLines } from '../../src/cli/lines.ts';
import { LiveSession } from '../../src/journal/live.ts';
import { collect } from '../helpers/collect.ts';
import { sample } from '../helpers/sample-size.ts';
import { hatJob } from '../helpers/shop/hat.ts';

/** More than is held on to by far. */
const MEGABYTES = sample(300, 700);

let home = '';
beforeEach(() => {
	home = mkdtempSync(join(tmpdir(), 'pullbook-lines-'));
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

function begin(): LiveSession {
	const world = { home, program: 'test', now: () => new Date(Date.UTC(2026, 0, 1)), random: () => 'ab12' };
	return LiveSession.begin(world, { job: hatJob(), path: '/hat.json', raw: {} }, false, []);
}

/** Runs the line mode over these pieces of input; the lines that it printed. */
async function printed(pieces: Iterable<string | Buffer>) {
	const session = begin();
	const stdout = new PassThrough();
	let out = '';
	stdout.on('data', (chunk: Buffer) => {
		out += chunk.toString();
	});
	const io = { stdin: Readable.from(pieces, { objectMode: false }), stdout, stderr: new PassThrough(), env: {} };
	const code = await runLines(session, io as unknown as Io);
	session.close();
	return {
		code,
		lines: out
			.trim()
			.split('\n')
			.map((line) => JSON.parse(line)),
		session,
	};
}

const GOOD = '{"ready":true}\n';

describe('a bad answer is refused with the limit named, and the next one is taken', () => {
	it.each([
		[
			'nested deeper than the stack is',
			`{"note":${'['.repeat(30_000)}${']'.repeat(30_000)}}`,
			'nested deeper than 8 levels',
		],
		['nested objects', `{"amend":${'{"of":'.repeat(9000)}1${'}'.repeat(9000)}}`, 'nested deeper than 8 levels'],
		['brackets that are never closed', '['.repeat(60_000), 'not JSON'],
		['200,000 angles', `{"angles":[${Array(200_000).fill(90).join(',')}]}`, 'longer than 64 kB'],
		['21 angles', `{"angles":[${Array(21).fill(90).join(',')}]}`, 'more than 20 numbers'],
		['a line of 64 kB and a byte, in letters of three', `{"note":"${'\u6f22'.repeat(21_842)}"}`, 'longer than 64 kB'],
		['a note over 4 kB', JSON.stringify({ note: 'n'.repeat(4097) }), 'longer than 4 kB'],
		['a note over 4 kB, in letters of three', JSON.stringify({ note: '\u6f22'.repeat(1366) }), 'longer than 4 kB'],
		['a reason over 4 kB', JSON.stringify({ scrap: 'n'.repeat(4097) }), 'longer than 4 kB'],
		['a number of 60,000 brackets', JSON.stringify({ loaded: '('.repeat(60_000) }), 'too long for a number'],
		[
			'a word for a number',
			'{"loaded":"abc"}',
			'a number is missing before "abc"; write an angle in degrees such as 45',
		],
		[
			'a unit that is not known',
			'{"ready":true,"mark":"3 1/2 foo"}',
			'the unit "foo" is not known here; write a length',
		],
		['one key twice', '{"loaded":19,"loaded":91}', '"loaded" stands twice'],
		['one key twice, once written otherwise', '{"loaded":19,"lo\\u0061ded":91}', '"loaded" stands twice'],
		['one key twice within', '{"amend":{"entry":1,"reading":2,"reading":3}}', '"reading" stands twice'],
		['a key that objects have', '{"__proto__":{"ready":true}}', 'No action is called "__proto__"'],
	])('%s', async (_, line, why) => {
		const { lines, code } = await printed([`${line}\n${GOOD}`]);
		const [refused] = lines.filter(({ note }) => note === 'refused');
		expect(refused.why).toContain(why);
		expect(refused.why.length).toBeLessThan(400);
		// A fault is told in words, not by its code.
		expect(refused.why).not.toMatch(/\b[a-z]+-[a-z]+(-[a-z]+)*$/);
		expect(lines.at(-1)).toMatchObject({ ask: 'pull', entry: 2 });
		expect(code).toBe(3);
	});

	it('the same key may stand in two objects, and a note may look like keys', async () => {
		const { lines } = await printed([
			'{"ready":true,"note":"{\\"ready\\":1, \\"ready\\":2}"}\n',
			'{"evidence":{"kind":"angle","bend":1,"reading":17}}\n',
		]);
		expect(lines.filter(({ note }) => note === 'refused').map(({ why }) => why)).toEqual([
			expect.stringContaining('was not pulled'),
		]);
	});

	it(`a stream of ${MEGABYTES} MB in one line, of which no piece is held on to`, async () => {
		let most = 0;
		const before = process.memoryUsage().arrayBuffers;
		async function* pieces() {
			for (let megabyte = 0; megabyte < MEGABYTES; megabyte++) {
				yield Buffer.alloc(1_000_000, 0x78);
				if (megabyte % 50 === 0) collect();
				most = Math.max(most, process.memoryUsage().arrayBuffers - before);
			}
			yield Buffer.from('\n{"undo":true}\n');
		}
		const lines: string[] = [];
		const input = Readable.from(pieces(), { objectMode: false });
		for await (const line of linesIn(input, 65_536, new AbortController().signal)) lines.push(line);
		expect(lines.map(({ length }) => length)).toEqual([65_537, '{"undo":true}'.length, 0]);
		expect(most).toBeLessThan(200_000_000);
	});

	it(`a line of ${MEGABYTES} MB, of which no more than its limit is kept`, async () => {
		const reader = new LineReader(65_536);
		const piece = Buffer.alloc(1_000_000, 0x78);
		const before = process.memoryUsage().arrayBuffers;
		for (let megabyte = 0; megabyte < MEGABYTES; megabyte++) expect(reader.push(piece)).toEqual([]);
		expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(20_000_000);
		const [long, next] = reader.push(Buffer.from('\n{"undo":true}\n'));
		expect([long?.length, next]).toEqual([65_537, '{"undo":true}']);
	});
});

describe('lines', () => {
	it('are the same however the stream is cut', () => {
		const text = fc
			.array(fc.constantFrom('a', '\n', '\r', '\r\n', '\u6f22', '{}'), { maxLength: 30 })
			.map((parts) => parts.join(''));
		fc.assert(
			fc.property(text, fc.array(fc.nat(5)), (whole, cuts) => {
				const bytes = Buffer.from(whole);
				const reader = new LineReader(100);
				const lines: string[] = [];
				let at = 0;
				for (const cut of [...cuts, bytes.length]) {
					lines.push(...reader.push(bytes.subarray(at, at + cut)));
					at += cut;
				}
				expect([...lines, reader.end()]).toEqual(whole.split(/[\r\n]/));
			}),
		);
	});

	const marked = Buffer.from(`\uFEFF${GOOD}`);
	it.each([
		['before the first is nothing', [marked], 'pull'],
		['before the first is nothing, in pieces too', [marked.subarray(0, 1), marked.subarray(1)], 'pull'],
		['before another is no answer', [Buffer.from('\n'), marked], 'set'],
	])('a byte order mark %s', async (_, pieces, ask) => {
		expect((await printed(pieces)).lines.at(-1)).toMatchObject({ ask });
	});

	it('without an end are an answer where they are whole', async () => {
		expect((await printed(['\r\n\n', GOOD.trim()])).lines.at(-1)).toMatchObject({ ask: 'pull' });
	});
});

describe('an output that nobody reads', () => {
	it('stops the reading of input, and reading it goes on', async () => {
		const session = begin();
		const held: (() => void)[] = [];
		let isReading = false;
		const stdout = new Writable({
			highWaterMark: 1000,
			write: (_chunk, _encoding, done) => {
				if (isReading) done();
				else held.push(done);
			},
		});
		let taken = 0;
		const input = Readable.from(
			(function* () {
				for (; taken < 120; taken++) yield `{"note":"${taken}"}\n`;
				yield '{"quit":true}\n';
			})(),
			{ objectMode: false, highWaterMark: 16 },
		);
		const ran = runLines(session, { stdin: input, stdout, stderr: new PassThrough(), env: {} } as unknown as Io);
		for (let i = 0; i < 500; i++) await turn();
		expect(taken).toBeLessThan(20);
		expect(stdout.writableLength).toBeLessThan(20_000);
		isReading = true;
		for (const done of held.splice(0)) done();
		expect(await ran).toBe(3);
		expect(taken).toBe(120);
		session.close();
	});

	it('that goes away leaves the session to be resumed', async () => {
		const session = begin();
		const stdout = new PassThrough();
		stdout.resume();
		const ran = runLines(session, {
			stdin: new PassThrough(),
			stdout,
			stderr: new PassThrough(),
			env: {},
		} as unknown as Io);
		await turn();
		stdout.emit('error', Object.assign(new Error('gone'), { code: 'EPIPE' }));
		expect(await ran).toBe(3);
		session.close();
	});
});
