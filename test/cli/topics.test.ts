import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { readCommandLine } from '../../src/cli/args.ts';
import { EXIT } from '../../src/cli/exit.ts';
import { helpText } from '../../src/cli/help.ts';
import { SMALLEST } from '../../src/screen/shell/frame.ts';
import { SET_SD } from '../../src/session/estimate/hands.ts';
import { FITS_FROM, mayFit } from '../../src/session/report/verdict.ts';
import { foldedAt } from '../../src/terminal/folded.ts';
import { EXAMPLE_SESSION } from '../../src/words/topics/example-session.ts';
import { EXIT_CODES } from '../../src/words/topics/exit-codes.ts';
import { TOPICS } from '../../src/words/topics/index.ts';
import { ASK_FIELDS, NOTE_FIELDS } from '../../src/words/topics/line-fields.ts';
import {
	ADVICE,
	ANSWERS,
	ASKS,
	CHECKS,
	EVIDENCE_LINES,
	NOTES,
	READING_LINES,
	WARNINGS,
} from '../../src/words/topics/line-words.ts';
import { REASON_CODES } from '../../src/words/topics/reason-codes.ts';
import { topicLines } from '../../src/words/topics/topic-lines.ts';
import type { TopicName } from '../../src/words/topics/topic-names.ts';
import { runProgram } from '../helpers/disk/program.ts';

const home = mkdtempSync(join(tmpdir(), 'topics-'));
afterAll(() => rmSync(home, { recursive: true }));

const src = fileURLToPath(new URL('../../src', import.meta.url));
const sources = readdirSync(src, { recursive: true, encoding: 'utf8' })
	.filter((file) => /\.tsx?$/.test(file))
	.map((file) => ({ file, text: readFileSync(join(src, file), 'utf8') }));
const names = Object.keys(TOPICS) as TopicName[];

/** What begins a line of the topic: the names that its lists explain. */
const listed = (name: TopicName) => TOPICS[name].sections.flatMap(({ rows = [] }) => rows.map(([left]) => left));

describe('a topic of help', () => {
	it.each(names)('%s begins with examples, and those of the command line are understood', (name) => {
		const { examples } = TOPICS[name];
		expect(helpText(name).startsWith('Examples\n')).toBe(true);
		expect(examples.length).toBeGreaterThan(1);
		for (const [line] of examples) {
			const command = /pullbook ?([^;&]*)/.exec(line)?.[1]?.trim();
			if (command) expect(() => readCommandLine(command.split(' ')), line).not.toThrow();
		}
	});

	it.each(names)('%s fits every width from 60 columns up', (name) => {
		for (const width of [60, 80, 100]) {
			expect(topicLines(TOPICS[name], width, foldedAt).filter((line) => line.length > width)).toEqual([]);
		}
	});

	it.each(names)('%s has no sentence over 25 words', (name) => {
		const { sections } = TOPICS[name];
		const texts = sections.flatMap(({ text = [], rows = [] }) => [...text, ...rows.map(([, says]) => says)]);
		const sentences = texts.flatMap((text) => text.split(/(?<=[.?!:;]) /));
		expect(sentences.filter((sentence) => sentence.split(' ').length > 25)).toEqual([]);
	});

	it('is listed by pullbook help, beside the commands', () => {
		for (const name of names) expect(helpText(null)).toContain(`\n  pullbook help ${name} `);
	});
});

/** The answers of the example in `help line-mode`. */
const GIVEN = ['{"ready":true}', '{"loaded":54}', '{"angles":["48 1/2",48.3]}', '{"do":"pull"}', '{"quit":true}'];

/** What of a line the example shows. */
const SHOWN = ['note', 'ask', 'job', 'entry', 'bend', 'seat', 'mark', 'stop', 'readings', 'advice', 'made'];

/** The line with what is left out, or goes on, as `…`; of an object inside it the first key. */
function shortened(line: object): string {
	const parts = Object.entries(line).map(([key, value]) => {
		if (!SHOWN.includes(key)) return '…';
		if (typeof value !== 'object') return `"${key}":${brief(value)}`;
		const inner = Object.entries(value as object).map(([name, each]) => `"${name}":${brief(each)}`);
		return `"${key}":{${inner[0]}${inner.length > 1 ? ',…' : ''}}`;
	});
	return `{${parts.filter((part, at) => part !== '…' || parts[at - 1] !== '…').join(',')}}`;
}

function brief(value: unknown): string {
	const text = JSON.stringify(value);
	return typeof value === 'number' ? text.replace(/(\.\d)\d+$/, '$1…') : text;
}

describe('pullbook help line-mode', () => {
	it('shows a session as the program holds it', async () => {
		const input = `${GIVEN.join('\n')}\n`;
		const { code, out } = await runProgram(['bend', 'jobs/handrail-knee.json', '--lines'], { input, home });
		expect(code).toBe(3);
		const answers = [...GIVEN];
		const session = out.split('\n').flatMap((line) => {
			if (line === '') return [];
			const said = JSON.parse(line);
			return 'ask' in said ? [shortened(said), answers.shift() ?? ''] : [shortened(said)];
		});
		expect(answers).toEqual([]);
		const file = new URL('../../src/words/topics/example-session.ts', import.meta.url);
		if (process.env.PULLBOOK_GUIDES === 'write') {
			const [head] = readFileSync(file, 'utf8').split('[\n');
			writeFileSync(file, `${head}[\n${session.map((line) => `\t'${line}',\n`).join('')}];\n`);
		} else expect(EXAMPLE_SESSION).toEqual(session);
		expect(session.filter((line) => line.length > 78)).toEqual([]);
	});

	it('names every ask, note, answer, kind and code that the types have', () => {
		const page = helpText('line-mode');
		const tables = [ASKS, NOTES, ANSWERS, EVIDENCE_LINES, READING_LINES, CHECKS, ADVICE, WARNINGS, REASON_CODES];
		const all = tables.flatMap((table) => Object.keys(table));
		expect(all.length).toBeGreaterThan(130);
		for (const name of all) expect(page).toMatch(new RegExp(`^  ${name} `, 'm'));
		for (const [kind, fields] of [...Object.entries(ASK_FIELDS), ...Object.entries(NOTE_FIELDS)]) {
			const section = page.slice(page.search(new RegExp(`^Fields of (ask|note) ${kind}$`, 'm'))).split('\n\n')[0]!;
			for (const field of Object.keys(fields)) expect(section).toMatch(new RegExp(`^  ${field} `, 'm'));
		}
	});

	it('names every key that begins an answer', async () => {
		const input = '{"unheard":true}\n';
		const { out } = await runProgram(['bend', 'jobs/handrail-knee.json', '--lines'], { input, home });
		const [, actions = ''] = /the actions are ([\w, ]+)/.exec(out) ?? [];
		expect(actions.split(', ').length).toBeGreaterThan(10);
		for (const action of actions.split(', ')) expect(helpText('line-mode')).toContain(`{"${action}":`);
	});
});

describe('the numbers in a topic', () => {
	const source = (constant: RegExp) => sources.flatMap(({ text }) => constant.exec(text)?.[1] ?? []);

	it('are those that the program goes by', () => {
		const method = helpText('method').replace(/\s+/g, ' ');
		expect(method).toContain(`${10 * FITS_FROM} in 10 or more`);
		expect(method).toContain(`5 to ${10 * FITS_FROM} in 10`);
		expect([mayFit(false, 0.5), mayFit(false, 0.499)]).toEqual([true, false]);
		expect(method).toContain('a turn within a third of a degree');
		expect(SET_SD).toBeCloseTo(1 / 3, 2);
		expect(method).toContain('a mark within half a millimeter');
		expect(source(/handsMm: (0\.\d+)/)).toEqual(['0.44']);
		expect(method).toContain('more than five degrees short');
		expect(source(/const FAR_SHORT = (\d+);/)).toEqual(['5']);
		expect(method).toContain('below three diameters');
		expect(source(/const LEAST_RADIUS = (\d+);/)).toEqual(['3']);
		expect(helpText('learning').replace(/\s+/g, ' ')).toContain('reads logs for two seconds');
		expect(source(/const START_MS = (\d+);/)).toEqual(['2000']);
		expect(helpText('display').replace(/\s+/g, ' ')).toContain(`${SMALLEST.columns} columns by ${SMALLEST.rows} rows`);
	});
});

describe('pullbook help exit-codes', () => {
	it('names every code that the program ends with', () => {
		const thrown = sources.flatMap(({ text }) =>
			[...text.matchAll(/(?:exitCode = |super\((?:fact|\{[^}]*\}), )([1-9])\b/g)].map(([, code]) => code!),
		);
		const codes = [...Object.values(EXIT).map(String), ...thrown];
		expect([...new Set(codes)].sort()).toEqual(['1', '2', '3', '4', '5', '6']);
		expect(EXIT_CODES.map(([code]) => code)).toEqual(['0', ...new Set(codes.sort()), '128 + n']);
	});
});

describe('pullbook help keys', () => {
	const source = (name: string) => sources.find(({ file }) => file.endsWith(name))!.text;

	it('names every letter that is a shortcut', () => {
		const letters = [...source('shortcuts.ts').matchAll(/key: '(\w)'/g)].map(([, key]) => key!);
		expect(letters).toEqual(expect.arrayContaining(['h', 'u', 'm', 'c']));
		const words = listed('keys').flatMap((left) => left.split(/ or |, /));
		for (const letter of letters) expect(words).toContain(letter);
	});

	it('names every key that has a name, and every key of the reader', () => {
		const words = listed('keys').join(' ').toLowerCase();
		const known = [...source('screen/shell/keys.ts').matchAll(/\[codes\.(\w+)\]/g)].map(([, key]) => key!);
		expect(known.length).toBeGreaterThan(8);
		for (const key of known)
			expect(words).toContain(key.replace('_', ' ').replace('RETURN', 'ENTER').replace('ESCAPE', 'ESC').toLowerCase());
		const reader = /const PAD[^{]*\{([^}]*)\}/.exec(source('reader-state.ts'))?.[1] ?? '';
		const pad = [...reader.matchAll(/'(.)':/g)].map(([, key]) => key!);
		expect(pad.length).toBeGreaterThan(5);
		const reading = TOPICS.keys.sections.find(({ heading }) => heading === 'Reading a long page')!;
		const keys = reading.rows!.flatMap(([left]) => left.split(' '));
		for (const key of pad) expect(keys).toContain(key);
	});
});
