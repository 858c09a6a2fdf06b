import { readdirSync, readFileSync } from 'node:fs';
import { join, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { toldTexts } from '../helpers/texts-told.ts';

const src = fileURLToPath(new URL('../../src', import.meta.url));

/** Scripts that shells run; what people read of them are their comments. */
const SCRIPTS = 'cli/completion/scripts.ts';

describe('what people read stands in the room of words', () => {
	// `toldTexts` says which texts count.
	it.each(['cli', 'screen'])('and not in %s', (room) => {
		const files = readdirSync(join(src, room), { recursive: true, encoding: 'utf8' })
			.filter((file) => /\.tsx?$/.test(file))
			.map((file) => [room, ...file.split(sep)].join('/'))
			.filter((file) => file !== SCRIPTS);
		expect(files).not.toEqual([]);
		const told = files.flatMap((file) =>
			toldTexts(file, readFileSync(join(src, file), 'utf8')).map(({ line, text }) => `${file}:${line} ${text}`),
		);
		expect(told).toEqual([]);
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
	])('passes over %s', (source) => {
		expect(toldTexts('a.tsx', source)).toEqual([]);
	});
});
