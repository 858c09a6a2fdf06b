import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));
const TOP = ['src', 'test', 'jobs', '.ci'];
const files = [
	...TOP.flatMap((folder) =>
		readdirSync(`${root}${folder}`, { recursive: true, encoding: 'utf8' }).map(
			(file) => `${folder}/${file.replaceAll('\\', '/')}`,
		),
	),
	'README.md',
	'DEVELOPERS.md',
];
const rooms = readdirSync(`${root}src`, { withFileTypes: true }).filter((entry) => entry.isDirectory());
const guides = files.filter((file) => /^(DEVELOPERS|(src\/\w+\/)README)\.md$/.test(file));
const read = (file: string) => readFileSync(`${root}${file}`, 'utf8');
const code = files.filter((file) => /\.(tsx?|mjs)$/.test(file)).map(read);
const names = new Set(code.flatMap((text) => text.match(/\w+/g) ?? []));
/** What a file says to the machine: its names, fields and texts, and nothing of its comments. */
const said = new Map(
	files
		.filter((file) => /\.(tsx?|mjs)$/.test(file))
		.map((file) => [
			file,
			new Set(
				read(file)
					.replace(/\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gm, '')
					.match(/#?\w+/g),
			),
		]),
);
const ours = new Set([...said].filter(([file]) => file.startsWith('src/')).flatMap(([, words]) => [...words]));
/** Words in small letters that are not ours: of Node and the disk, and of what packages are given. */
const OF_OTHERS = new Set(['caches', 'defaults', 'fdatasync', 'fetch', 'link', 'props', 'rename', 'require']);

/** What stands as code in a text, without its blocks. */
function wordsOf(text: string): string[] {
	return [...text.replace(/^```[\s\S]*?^```$/gm, '').matchAll(/`([^`]+)`/g)].map(([, word]) => word!);
}

/** Those that a path may mean: from the top, from `src/`, from the guide's own room, or a file by its name alone; of a folder all that it has. */
function meant(path: string, guide: string): string[] {
	const own = guide.slice(0, guide.lastIndexOf('/') + 1);
	const starts = ['', 'src/', own].map((start) => start + path);
	const found = [...said.keys()].filter((file) =>
		starts.some((start) => file === start || (path.endsWith('/') && file.startsWith(start))),
	);
	return found.length > 0 || path.includes('/') ? found : [...said.keys()].filter((file) => file.endsWith(`/${path}`));
}

/** A folder or file, from the top, from `src/`, from the guide's own room, or a file by its name alone. */
function exists(path: string, guide: string): boolean {
	const pattern = new RegExp(`^${path.replace(/\/$/, '').replaceAll('.', '\\.').replaceAll('*', '[^/]*')}$`);
	const own = guide.slice(0, guide.lastIndexOf('/') + 1);
	const starts = ['', 'src/', own, ...TOP.map((folder) => `${folder}/`)];
	return (
		[...files, ...TOP].some((file) =>
			starts.some((start) => file.startsWith(start) && pattern.test(file.slice(start.length))),
		) ||
		(!path.includes('/') && files.some((file) => pattern.test(file.slice(file.lastIndexOf('/') + 1))))
	);
}

describe.each(guides)('%s', (guide) => {
	const words = wordsOf(read(guide));

	it('names only files and folders that are there', () => {
		const paths = words.filter((word) => /^[\w.*-]+\/[\w./*-]*$|^[\w*-]+\.(ts|tsx|mjs|md)$/.test(word));
		expect(paths.filter((path) => !exists(path, guide))).toEqual([]);
	});

	it('calls functions and types what they are called', () => {
		const called = words.filter((word) =>
			/^[A-Za-z]*[a-z][A-Z][A-Za-z]*$|^[A-Z][a-z]+[A-Za-z]*$|^[A-Z_]{4,}$/.test(word),
		);
		expect(called.filter((name) => !names.has(name))).toEqual([]);
	});

	it('says of no file that it has what it has not', () => {
		const told = [...read(guide).matchAll(/`(#?\w+)`(?: or `(\w+)`)? (?:in |\()`([\w./-]+(?:\.tsx?|\/))`/g)];
		const wrong = told.flatMap(([, one, or, path]) =>
			[one, or]
				.filter((name) => name && !meant(path!, guide).some((file) => said.get(file)!.has(name)))
				.map((name) => `${name} in ${path}`),
		);
		expect(wrong).toEqual([]);
	});
});

describe.each([...guides, 'README.md', 'jobs/README.md'])('%s', (guide) => {
	it('writes no word as code that the code does not have', () => {
		const small = wordsOf(read(guide)).filter((word) => /^[a-z]+$/.test(word) && !OF_OTHERS.has(word));
		expect(small.filter((word) => !ours.has(word) && !rooms.some(({ name }) => name === word))).toEqual([]);
	});
});

it('reads in the guides where something stands', () => {
	const guide = 'src/session/README.md';
	expect(meant('log/start.ts', guide)).toEqual(['src/session/log/start.ts']);
	expect(said.get('src/session/log/start.ts')!.has('beginning')).toBe(true);
	expect(said.get('src/session/log/start.ts')!.has('settleDoubt')).toBe(false);
	expect(meant('no-such-file.ts', guide)).toEqual([]);
});

describe('DEVELOPERS.md', () => {
	it('has every room in its map, and no other', () => {
		const mapped = [...read('DEVELOPERS.md').matchAll(/^\| `(\w+)\/` +\|/gm)].map(([, room]) => room);
		expect(mapped.sort()).toEqual(rooms.map(({ name }) => name).sort());
	});
});
