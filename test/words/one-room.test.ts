import { readdirSync, readFileSync } from 'node:fs';
import { join, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { toldTexts } from '../helpers/sources/texts-told.ts';

const src = fileURLToPath(new URL('../../src', import.meta.url));

/** Texts that stand elsewhere, each with what it is instead of a sentence to people. */
const ELSEWHERE: Readonly<Record<string, RegExp>> = {
	// Scripts that shells run; what people read of them are their comments.
	'cli/completion/scripts.ts': /^#(compdef pullbook\n#)? Completion/,
	// A folder of Windows.
	'files/home-folder.ts': /^(AppData|Local)$/,
	// Own messages of errors that are told by their fact.
	'fit/test-piece.ts': /^the readings of a test piece cannot all be right$/,
	'units/units-error.ts': /^"…" is no …: …$/,
	// Names in records: a die that has none of its own, and what a lesson shares.
	'job/tooling.ts': /^… clr … od$/,
	'springback/history.ts': /^bender and die$/,
	// How the file of what was listed begins, and a line of a log.
	'journal/kept-cache.ts': /^pullbook sessions 3 /,
	'journal/read-log.ts': /^ \{"seq":…,$/,
	// Fonts, and the standards that materials are sold by.
	'paper/typeface.ts': /^DejaVu ?Sans(-Bold)?$/,
	'springback/materials.ts': /^(ASTM|EN|MIL)\b/,
};

const rooms = readdirSync(src, { withFileTypes: true }).filter((entry) => entry.isDirectory());

describe('what people read stands in the room of words', () => {
	const textsOf = (room: string) =>
		readdirSync(join(src, room), { recursive: true, encoding: 'utf8' })
			.filter((file) => /\.tsx?$/.test(file))
			.map((file) => [room, ...file.split(sep)].join('/'))
			.flatMap((file) => toldTexts(file, readFileSync(join(src, file), 'utf8')).map((told) => ({ file, ...told })));

	// `toldTexts` says which texts count.
	it.each(rooms.map(({ name }) => name).filter((room) => room !== 'words'))('and not in %s', (room) => {
		const told = textsOf(room).filter(({ file, text }) => !ELSEWHERE[file]?.test(text));
		expect(told.map(({ file, line, text }) => `${file}:${line} ${text}`)).toEqual([]);
	});

	it('but for what is named here, each of which is there', () => {
		const there = new Set(rooms.flatMap(({ name }) => textsOf(name)).map(({ file }) => file));
		expect(Object.keys(ELSEWHERE).filter((file) => !there.has(file))).toEqual([]);
	});
});

describe('the reading of texts', () => {
	it.each([
		["const text = 'Pull again';", 'Pull again'],
		["const text = 'again, please';", 'again, please'],
		["const text = 'Again';", 'Again'],
		[`const text = \`bend \${at} of \${all}\`;`, 'bend … of …'],
		[`const text = \`\${pull} pulls\`;`, '… pulls'],
		["const choice = { label: last ? 'finish' : label };", 'finish'],
		["const lines = [span('made', 'strong')];", 'made'],
		["const head = 'drawn'.padStart(7);", 'drawn'],
		['const row = <Text>pull</Text>;', 'pull'],
		["throw new UnitsError(text, 'write a length');", 'write a length'],
		["const text = kind === 'Not a text' ? 'a text' : '';", 'a text'],
	])('finds in %s', (source, text) => {
		expect(toldTexts('a.tsx', source)).toEqual([{ line: 1, text }]);
	});

	it.each([
		"import { Box } from './Some file.ts';",
		"const { a } = await import('./A file.ts');",
		"type Name = 'A name' | 'Another';",
		"const code = 'not-saved';",
		"const key = 'pageUp';",
		"const name = process.env['Some Name'];",
		"const kept = { 'A name': 1 };",
		"throw new RangeError('No digit for this.');",
		"if (key === 'Page Up' || 'Some Key' in keys) step();",
		"class A extends Error {\n\toverride name = 'UsageError';\n}",
		`const text = \`\${value} \${unit}\`;`,
		"const environment = { TERM: 'xterm' };",
		`const path = \`M \${x} \${y}\`;`,
	])('passes over %s', (source) => {
		expect(toldTexts('a.tsx', source)).toEqual([]);
	});
});
