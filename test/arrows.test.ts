import { readdirSync, readFileSync } from 'node:fs';
import { join, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { arrowFaults, circles, importsOf } from './helpers/sources/arrows.ts';

const src = fileURLToPath(new URL('../src', import.meta.url));
const files = readdirSync(src, { recursive: true, encoding: 'utf8' })
	.filter((file) => /\.tsx?$/.test(file))
	.map((file) => file.split(sep).join('/'));

describe('the rooms', () => {
	it.each([
		'maths',
		'units',
		'tube',
		'springback',
		'fit',
		'session',
		'files',
		'journal',
		'job',
		'settings',
		'review',
		'practice',
		'words',
		'terminal',
		'paper',
		'screen',
		'cli',
	])('%s has files to be read', (room) => {
		expect(files.filter((file) => file.startsWith(`${room}/`))).not.toEqual([]);
	});

	it('import only to their left', () => {
		const faults = files.flatMap((file) => arrowFaults(file, readFileSync(join(src, file), 'utf8')));
		expect(faults).toEqual([]);
	});
});

describe('the files', () => {
	const sources = new Map(files.map((file) => [file, readFileSync(join(src, file), 'utf8')]));

	it('import one another in no circle', () => {
		const imports = new Map([...sources].map(([file, source]) => [file, importsOf(file, source)]));
		expect(circles(imports)).toEqual([]);
		expect(
			circles(
				new Map([
					['a', ['b']],
					['b', ['c']],
					['c', ['a']],
				]),
			),
		).toEqual([['a', 'b', 'c', 'a']]);
	});

	it('have at most 250 lines, and half of them under 80', () => {
		const lines = [...sources].map(([file, source]) => [source.split('\n').length, file] as const);
		expect(lines.filter(([count]) => count > 251)).toEqual([]);
		const sorted = lines.map(([count]) => count).sort((a, b) => a - b);
		expect(sorted[Math.floor(sorted.length / 2)]).toBeLessThan(80);
	});
});

describe('the reading of arrows', () => {
	it.each([
		['tube/a.ts', "import { b } from '../session/b.ts';", 'tube may not import session'],
		['tube/a.ts', "import type { B } from '../session/b.ts';", 'tube may not import session'],
		['tube/a.ts', "export * from '../fit/b.ts';", 'tube may not import fit'],
		['tube/a.ts', "type B = import('../session/b.ts').B;", 'tube may not import session'],
		['maths/a.ts', "import { b } from '../units/b.ts';", 'maths may not import units'],
		['units/a.ts', "import { b } from '../maths/b.ts';", 'units may not import maths'],
		['maths/a.ts', "import { b } from 'node:fs';", 'imports no package'],
		['fit/a.ts', "import { b } from '../springback/b.ts';", 'fit may not import springback'],
		['springback/a.ts', "import { b } from '../fit/b.ts';", 'springback may not import fit'],
		['journal/a.ts', "import { b } from '../job/b.ts';", 'journal may not import job'],
		['files/a.ts', "import { b } from '../journal/b.ts';", 'files may not import journal'],
		['session/a.ts', "import { b } from '../files/b.ts';", 'session may not import files'],
		['settings/a.ts', "import { b } from '../journal/b.ts';", 'settings may not import journal'],
		['job/a.ts', "import { b } from '../settings/b.ts';", 'job may not import settings'],
		['session/a.ts', "const b = await import('../journal/b.ts');", 'session may not import journal'],
		['screen/parts/a.tsx', "import { b } from '../../cli/b.ts';", 'screen may not import cli'],
		['cli/a.ts', "import '../main.ts';", 'cli may not import main'],
		['cli/a.ts', "import { b } from '../screen/b.tsx';", 'loaded by import()'],
		['review/a.ts', "import { b } from '../practice/b.ts';", 'review may not import practice'],
		['review/a.ts', "import { b } from '../words/b.ts';", 'review may not import words'],
		['practice/a.ts', "import { b } from '../terminal/b.ts';", 'terminal serves screen and cli only'],
		['terminal/a.ts', "import { b } from '../units/b.ts';", 'terminal imports nothing'],
		['tube/a.ts', "import { b } from '../shed/b.ts';", 'shed is not a room'],
		['shed/a.ts', "import { b } from '../tube/b.ts';", 'shed is not a room'],
		['tube/a.ts', "import { b } from '../../test/b.ts';", 'in no room'],
		['tube/a.ts', "import { readFileSync } from 'node:fs';", 'imports no package'],
		['session/a.ts', "import * as z from 'zod/mini';", 'imports no package'],
		['units/a.ts', "const b = require('node:fs');", 'imports no package'],
		['session/a.ts', "import React from 'react';", 'imports no package'],
		['cli/a.ts', "import { render } from 'ink';", 'only screen may'],
		['terminal/a.ts', "import { useState } from 'react';", 'only screen and paper may'],
		['screen/a.tsx', "import { Page } from '@react-pdf/renderer';", 'only paper may'],
		['paper/a.tsx', "import { Box } from 'ink';", 'only screen may'],
		['screen/a.tsx', "import { b } from '../paper/b.tsx';", 'screen may not import paper'],
		['paper/a.tsx', "import { b } from '../screen/b.tsx';", 'paper may not import screen'],
		['paper/a.tsx', "import { b } from '../terminal/b.ts';", 'terminal serves screen and cli only'],
		['words/a.ts', "import { b } from '../paper/b.ts';", 'words may not import paper'],
		['cli/a.ts', "import { b } from '../paper/b.tsx';", 'loaded by import()'],
		['cli/a.ts', 'await import(name);', 'not written out'],
		['session/a.ts', 'const at = Date.now();', 'not pure'],
		['session/a.ts', 'const at = new Date();', 'reads the clock'],
		['springback/a.ts', 'const x = Math.random();', 'not pure'],
		['tube/a.ts', 'const x = process.env.HOME;', 'not pure'],
		['tube/a.ts', 'const x = globalThis.crypto.randomUUID();', 'not pure'],
	])('%s: %s', (file, source, fault) => {
		const faults = arrowFaults(file, source);
		expect(faults).toHaveLength(1);
		expect(faults[0]).toContain(fault);
	});

	it.each([
		['tube/a.ts', "import { b } from '../maths/b.ts';"],
		['tube/a.ts', "import { b } from '../units/b.ts';\nimport { c } from './c.ts';"],
		['session/a.ts', "import { b } from '../fit/b.ts';\nimport { c } from '../springback/c.ts';"],
		['job/a.ts', "import { b } from '../files/b.ts';"],
		['journal/a.ts', "import { openSync } from 'node:fs';\nconst at = new Date();"],
		['screen/a.tsx', "import { Box } from 'ink';\nimport { b } from '../terminal/b.ts';"],
		['cli/a.ts', "import { b } from '../terminal/b.ts';"],
		['cli/a.ts', "const { b } = await import('../screen/b.tsx');"],
		['cli/a.ts', "import type { B } from '../screen/b.tsx';"],
		[
			'paper/a.tsx',
			"import { Page } from '@react-pdf/renderer';\nimport { useContext } from 'react';\nimport { b } from '../words/b.ts';",
		],
		['cli/a.ts', "const { b } = await import('../paper/b.tsx');"],
		['cli/version.ts', "import manifest from '../../package.json' with { type: 'json' };"],
		['main.ts', "import { b } from './cli/b.ts';"],
		['tube/a.ts', "// import { b } from '../session/b.ts';\nconst text = 'Date.now()';\nMath.max(1, 2);"],
	])('lets %s pass: %s', (file, source) => {
		expect(arrowFaults(file, source)).toEqual([]);
	});
});
