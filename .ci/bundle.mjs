// How the program is bundled; apart from the build itself so that a test can ask what each command loads.
import { readFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = dirname(dirname(fileURLToPath(import.meta.url)));

/** Ink 6.8.0 reads devtools and CI state at import; neither belongs in a program on a bench (see DEVELOPERS.md, traps). */
const patchInk = {
	name: 'patch-ink',
	setup(b) {
		b.onLoad({ filter: /[\\/]ink[\\/]build[\\/]devtools\.js$/ }, () => ({ contents: '', loader: 'js' }));
		b.onLoad({ filter: /[\\/]ink[\\/]build[\\/]utils\.js$/ }, () => ({
			contents: 'export const isDev = () => false;',
			loader: 'js',
		}));
		b.onLoad({ filter: /[\\/]is-in-ci[\\/]index\.js$/ }, () => ({ contents: 'export default false;', loader: 'js' }));
	},
};

/** `text` with `from` replaced. Throws when it is not there: the package has changed, and the change must be looked at. */
function swap(text, from, to, path) {
	if (!text.includes(from))
		throw new Error(`${path} no longer has ${JSON.stringify(from)}, which the bundle replaces.`);
	return text.replace(from, to);
}

/** Ink takes every row of every frame apart anew. Kept over frames, only rows that changed cost time: a third of a keystroke's. */
const KEPT_CACHES = `let caches = new OutputCaches();
function keptCaches() {
	if (caches.styledChars.size > 1000) caches = new OutputCaches();
	return caches;
}
`;

/** Nor is a row put together anew whose cells are the very ones of the frame before: most of a large window's keystroke was that. */
const KEPT_ROWS = `const BLANK = { type: 'char', value: ' ', fullWidth: false, styles: [] };
let keptRows = [];
function rowText(cells, at) {
	const known = keptRows[at];
	if (known && known.cells.length === cells.length && cells.every((cell, i) => cell === known.cells[i])) return known.text;
	const text = styledCharsToString(cells).trimEnd();
	keptRows[at] = { cells, text };
	return text;
}
`;

/** What a first frame waits for without need: see plain-text.mjs, and `fetch`, which loads an HTTP client to decode a string. */
const quickStart = {
	name: 'quick-start',
	setup(b) {
		const plainText = JSON.stringify(join(root, '.ci', 'plain-text.mjs'));
		const patch = (filter, change) =>
			b.onLoad({ filter }, async ({ path }) => ({
				contents: change(await readFile(path, 'utf8'), path),
				loader: 'js',
			}));
		const lazily = (made) => (text, path) =>
			`import { lazySegmenter } from ${plainText};\n${swap(text, made, 'lazySegmenter()', path)}`;
		const graphemes = "new Intl.Segmenter(undefined, { granularity: 'grapheme' })";
		patch(/ansi-tokenize[\\/]build[\\/]tokenize\.js$/, lazily(graphemes.replaceAll("'", '"')));
		patch(/slice-ansi[\\/]tokenize-ansi\.js$/, lazily("new Intl.Segmenter(undefined, {granularity: 'grapheme'})"));
		patch(/string-width[\\/]index\.js$/, (text, path) => {
			const counting = '\tlet width = 0;\n\tconst eastAsianWidthOptions';
			const quickly = `\tif (ambiguousIsNarrow && isPlain(string)) return string.length;\n${counting}`;
			const quick = swap(text, counting, quickly, path);
			const segmented = swap(quick, 'new Intl.Segmenter()', 'lazySegmenter()', path);
			const emoji = '/^\\p{RGI_Emoji}$/v';
			// The older copy that wrap-ansi brings along makes its expression when it is asked, and not before.
			const older = path.includes('wrap-ansi');
			const patched = older ? segmented : swap(segmented, `= ${emoji};`, `= lazyExpression(() => ${emoji});`, path);
			return `import { isPlain, lazyExpression, lazySegmenter } from ${plainText};\n${patched}`;
		});
		patch(/yoga-wasm-base64-esm\.js$/, (text) => `const fetch = undefined;\n${text}`);
		patch(/ink[\\/]build[\\/]output\.js$/, (text, path) => {
			const kept = swap(text, 'caches = new OutputCaches();', 'caches = keptCaches();', path);
			const blank = /row\.push\(\{\s*type: 'char',\s*value: ' ',\s*fullWidth: false,\s*styles: \[\],\s*\}\);/.exec(
				kept,
			)?.[0];
			const shared = swap(kept, blank ?? 'row.push({', 'row.push(BLANK);', path);
			const put = 'return styledCharsToString(lineWithoutEmptyItems).trimEnd();';
			const joined = swap(shared, put, 'return rowText(lineWithoutEmptyItems, at);', path);
			const counted = swap(
				joined,
				'output\n            .map(line => {',
				'output\n            .map((line, at) => {',
				path,
			);
			return swap(
				counted,
				'export default class Output',
				`${KEPT_CACHES}${KEPT_ROWS}export default class Output`,
				path,
			);
		});
	},
};

export const bundleOptions = {
	absWorkingDir: root,
	entryPoints: { pullbook: 'src/main.ts' },
	outdir: '.build',
	bundle: true,
	splitting: true,
	chunkNames: 'part-[hash]',
	platform: 'node',
	format: 'esm',
	target: 'node20',
	plugins: [patchInk, quickStart],
	banner: {
		js: "#!/usr/bin/env node\nimport {createRequire as __cr} from 'node:module'; const require = __cr(import.meta.url);",
	},
	define: { 'process.env.NODE_ENV': '"production"' },
	minifySyntax: true,
	legalComments: 'none',
	logLevel: 'warning',
};
