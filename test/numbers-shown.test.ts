import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { COMMANDS } from '../src/cli/commands.ts';
import { TOPIC_NAMES } from '../src/words/topics/topic-names.ts';
import { SAMPLE_JOBS } from './helpers/disk/program.ts';
import { runHere } from './helpers/disk/run-here.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const screens = join(root, 'test/fixtures/screens');
const home = mkdtempSync(join(tmpdir(), 'shown-'));
afterAll(() => rmSync(home, { recursive: true }));

/** What no page for people has. A tolerance of the drawing, ±0.5°, stands right at its sign. */
const FAULTS: readonly [what: string, pattern: RegExp][] = [
	['how far off an estimate may be, in a sign', /\d\S*( in| mm)? ± /],
	['a deviation by its name', /standard deviation/],
	['an angle finer than a dial', /\d\.\d{3,} ?°/],
	['a length finer than a thousandth of an inch', /\d\.\d{4,} ?in\b/],
	['a length finer than a hundredth of a millimeter', /\d\.\d{3,} ?mm\b/],
	['a raw number', /\d\.\d{5,}/],
];

function expectPlain(text: string): void {
	// Lines of JSON are for programs, and what was typed stands as it was typed.
	const lines = text.split('\n').filter((line) => !/[{[]"|":|^> |^(start|far) leg /.test(line));
	for (const [what, pattern] of FAULTS)
		expect(
			lines.filter((line) => pattern.test(line)),
			what,
		).toEqual([]);
}

describe('numbers are written as instruments read, and how far off they may be in words', () => {
	it.each(readdirSync(screens))('on the screen %s', (name) => expectPlain(readFileSync(join(screens, name), 'utf8')));

	it.each(['README.md', 'DEVELOPERS.md', 'jobs/README.md'])('in %s', (name) =>
		expectPlain(readFileSync(join(root, name), 'utf8')),
	);

	// The pages on the method and for whoever writes a program say what a give or take is.
	const pages = [...Object.keys(COMMANDS), ...Object.keys(TOPIC_NAMES)].filter(
		(name) => !['method', 'line-mode'].includes(name),
	);
	it.each(pages)('in help %s', async (name) => expectPlain((await runHere(['help', name], { home })).out));

	it.each(SAMPLE_JOBS)('in the layout of %s', async (file) => {
		for (const more of [[], ['--chalk']]) expectPlain((await runHere(['layout', file, ...more], { home })).out);
	});

	it('in a practice, its review, and what it taught', async () => {
		const played = (await runHere(['practice', SAMPLE_JOBS[0]!, '--auto', '--seed', '7'], { home })).out;
		const practice = join(home, 'practice');
		const story = (await runHere(['log', 'last'], { home: practice })).out;
		for (const text of [played, story]) {
			expectPlain(text);
			// Its dial has halves of a degree, its angle finder tenths.
			expect(text.split('\n').filter((line) => /\d\.\d{2,} ?°/.test(line))).toEqual([]);
		}
		expectPlain((await runHere(['log'], { home: practice })).out);
		expectPlain((await runHere(['bender'], { home: practice })).out);
	});

	it('would find each of them', () => {
		for (const [i, text] of [
			'5.1 in ± 0.06',
			'one standard deviation',
			'16.725°',
			'5.1234 in',
			'9.123 mm',
			'1.00885',
		].entries())
			expect(FAULTS[i]![1].test(text), text).toBe(true);
		expect(FAULTS.some(([, pattern]) => pattern.test("inside the drawing's ±0.5°; 6 3/8 in ±1/16 in"))).toBe(false);
	});
});
