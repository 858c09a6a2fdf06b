import { readdirSync, readFileSync } from 'node:fs';
import { posix, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { baseOf, constantsIn, declaredIn, mistakable, namesTwice } from './helpers/names.ts';
import { FILES_OF_ONE_SUBJECT, NAMES_OF_ONE_MEANING, type Shared } from './helpers/shared-names.ts';

const src = fileURLToPath(new URL('../src', import.meta.url));
const files = readdirSync(src, { recursive: true, encoding: 'utf8' })
	.filter((file) => /\.tsx?$/.test(file))
	.map((file) => file.split(sep).join('/'))
	.sort();

const placesOf = (shared: Shared) =>
	Object.fromEntries(Object.entries(shared).map(([name, [, ...places]]) => [name, places]));

describe('a name', () => {
	const sources = files.map((file) => [file, readFileSync(`${src}/${file}`, 'utf8')] as const);
	const declared = sources.map(([file, source]) => [file, declaredIn(source)] as const);

	it('stands for one thing in all files: a function, a type, whatever a file gives others', () => {
		expect(namesTwice(declared)).toEqual(placesOf(NAMES_OF_ONE_MEANING));
	});

	it('in capitals is short only where no other of its folder, none that all files may use and none of the same value has it', () => {
		const constants = sources.flatMap(([file, source]) => constantsIn(file, source));
		expect(constants.length).toBeGreaterThan(1000);
		expect(mistakable(constants)).toEqual({});
	});

	it('of a file says its subject, and is had again only by what else there is of that subject', () => {
		const named = files.map((file) => [posix.dirname(file), [baseOf(file)]] as const);
		expect(namesTwice(named)).toEqual(placesOf(FILES_OF_ONE_SUBJECT));
	});
});

describe('the reading of names', () => {
	it.each([
		['function weigh(): void {}', ['weigh']],
		['export async function weigh<T>() {}', ['weigh']],
		['export interface World {\n\tat: number;\n}', ['World']],
		['type Told = 1;', ['Told']],
		['export class LogWriter extends Writer {}', ['LogWriter']],
		['const gap = (a: number): number => a;\nlet known = 1;', ['gap', 'known']],
		['const GAP = 2;\nexport const PAGE = 3;', ['PAGE']],
		['function a() {\n\tconst inner = 1;\n\tfunction deeper() {}\n}', ['a']],
		["import { other } from './b.ts';\nexport { other };\nother();", []],
		['/** const said = 1 */\n// function said() {}', []],
	])('%s', (source, names) => {
		expect(declaredIn(source)).toEqual(names);
	});

	it.each([
		['log-writer.ts', 'LogWriter.tsx'],
		['bent-as.ts', 'as-bent.ts'],
		['table.ts', 'Table.tsx'],
	])('takes the files %s and %s for twins', (one, other) => {
		expect(baseOf(one)).toBe(baseOf(other));
	});

	it('finds what two files declare, and where', () => {
		const declared = [
			['b.ts', ['told', 'own']],
			['a.ts', ['told', 'told']],
		] as const;
		expect(namesTwice(declared)).toEqual({ told: ['b.ts', 'a.ts'] });
	});

	it('finds the constants of a file, and what each is', () => {
		const source =
			'const GAP = 2;\nexport const PAGE: Readonly<Record<A, B>> = {\n\tone: 1,\n};\nconst told = 1;\n\tconst IN = 3;\n';
		expect(constantsIn('a.ts', source).map(({ name, exported }) => [name, exported])).toEqual([
			['GAP', false],
			['PAGE', true],
		]);
	});

	it.each([
		[
			'of two folders and two values',
			[
				['a/x.ts', 'const GAP = 2;'],
				['b/y.ts', 'const GAP = 3;'],
			],
			false,
		],
		[
			'of one folder',
			[
				['a/x.ts', 'const GAP = 2;'],
				['a/y.ts', 'const GAP = 3;'],
			],
			true,
		],
		[
			'of which one is for all',
			[
				['a/x.ts', 'export const GAP = 2;'],
				['b/y.ts', 'const GAP = 3;'],
			],
			true,
		],
		[
			'of one value',
			[
				['a/x.ts', 'const GAP = 2;'],
				['b/y.ts', 'const GAP =\n\t2;'],
			],
			true,
		],
	] as const)('tells whether constants can be told apart: %s', (_, sources, isMistakable) => {
		const found = mistakable(sources.flatMap(([file, source]) => constantsIn(file, `${source}\n`)));
		expect(found).toEqual(isMistakable ? { GAP: sources.map(([file]) => file) } : {});
	});
});
