// Every change that is made to a package while bundling: the file, what is changed, why, and what it gains (`npm run bench:patches`). The tests
// run the same patched Ink as the program.
import { realpathSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { relative } from 'node:path';
import { fileURLToPath } from 'node:url';

const WIDTH = JSON.stringify(fileURLToPath(new URL('../src/terminal/width.ts', import.meta.url)));

/**
 * @typedef {object} Patch
 * @property {string} name
 * @property {string} file below node_modules
 * @property {string} what
 * @property {string} why
 * @property {string} gains
 * @property {string} [whole] what stands in place of the file
 * @property {string} [first] what is put before it
 * @property {(readonly [from: string, to: string])[]} [swaps] each must be there
 */

/** @type {readonly Patch[]} */
export const PATCHES = [
	{
		name: 'devtools',
		file: 'ink/build/devtools.js',
		what: 'emptied',
		why: 'it imports a package that is not installed: the bundle would not build, or not start',
		gains: 'the program starts',
		whole: '',
	},
	{
		name: 'dev',
		file: 'ink/build/utils.js',
		what: 'never in development',
		why: 'with DEV in the environment it reads a file that is not beside the bundle, and the program ends',
		gains: 'the program starts whatever DEV says',
		whole: 'export const isDev = () => false;',
	},
	{
		name: 'width',
		file: 'string-width/index.js',
		what: 'plain text, box drawing, blocks and braille are counted by their length',
		why: 'only ASCII was: all else is segmented and looked up, at the first frame and at each new line',
		gains: '36 in 100 of a keystroke at 80x24, 63 at 160x50',
		first: `import { isNarrow } from ${WIDTH};`,
		swaps: [
			[
				'\tlet width = 0;\n\tconst eastAsianWidthOptions',
				'\tif (ambiguousIsNarrow && isNarrow(string)) return string.length;\n\tlet width = 0;\n\tconst eastAsianWidthOptions',
			],
		],
	},
	{
		name: 'caches',
		file: 'ink/build/output.js',
		what: 'what is known of texts is kept from frame to frame',
		why: 'Ink takes every row of every frame apart anew',
		gains: '66 in 100 of a keystroke at 80x24, 71 at 160x50',
		first: `let caches = null;
function keptCaches() {
	if (caches === null || caches.styledChars.size > 1000) caches = new OutputCaches();
	return caches;
}`,
		swaps: [['caches = new OutputCaches();\n    constructor', 'caches = keptCaches();\n    constructor']],
	},
	{
		name: 'rows',
		file: 'ink/build/output.js',
		what: 'a row is put together only when its cells are other ones than before',
		why: 'all rows of a window are put together cell by cell at every key',
		gains: '36 in 100 of a keystroke at 80x24, 47 at 160x50',
		first: `const BLANK = { type: 'char', value: ' ', fullWidth: false, styles: [] };
let keptRows = [];
function rowText(cells, at) {
	const known = keptRows[at];
	if (known && known.cells.length === cells.length && cells.every((cell, i) => cell === known.cells[i])) return known.text;
	const text = styledCharsToString(cells).trimEnd();
	keptRows[at] = { cells, text };
	return text;
}`,
		swaps: [
			[
				`row.push({
                    type: 'char',
                    value: ' ',
                    fullWidth: false,
                    styles: [],
                });`,
				'row.push(BLANK);',
			],
			['.map(line => {\n            // See', '.map((line, at) => {\n            // See'],
			['return styledCharsToString(lineWithoutEmptyItems).trimEnd();', 'return rowText(lineWithoutEmptyItems, at);'],
		],
	},
];

/** The same of what prints: the tests print with the packages as they are. @type {readonly Patch[]} */
export const PAPER_PATCHES = [
	{
		name: 'yoga',
		file: 'yoga-layout/dist/binaries/yoga-wasm-base64-esm.js',
		what: 'its program is read from the text that it stands in, not fetched from there',
		why: 'the first fetch loads all that Node has for the web',
		gains: '6 in 100 of a shop sheet: the fetch alone takes 41 ms of 720',
		swaps: [['return w||"function"!=typeof fetch?', 'return true?']],
	},
	{
		name: 'inflate',
		file: 'tiny-inflate/index.js',
		what: 'Node inflates',
		why: 'tables of characters are inflated by JavaScript each time that the library is loaded',
		gains: '5 in 100 of a shop sheet: its ten tables take 36 ms of 720 less',
		whole: "module.exports = (source) => require('node:zlib').inflateRawSync(source);",
	},
	{
		name: 'brotli',
		file: 'brotli/decompress.js',
		what: 'left out',
		why: 'fonts of ours are not packed so, and its dictionary is a quarter of the whole program',
		gains: '1.4 MB of 5.8, and up to 5 in 100 of a shop sheet',
		whole: "module.exports = () => { throw new Error('This program opens no packed fonts.'); };",
	},
	{
		name: 'standard-fonts',
		file: 'pdfkit/js/pdfkit.node.mjs',
		what: 'the fonts that it opens at its start are in the bundle',
		why: 'it looks for them in its package, which is not beside the bundle; pages of ours do not use them',
		gains: 'the installed program prints',
		swaps: ['Helvetica', 'HelveticaBold', 'HelveticaBoldOblique', 'HelveticaOblique'].map((name) => [
			`require$1('#standard-fonts/${name}')`,
			`require('./standard-fonts/${name}.cjs')`,
		]),
	},
];

/** `text` with all of a patch done. Throws where something it replaces is not there: the package has changed, and the patch must be looked at. */
export function patched(text, { file, whole, first, swaps = [] }) {
	if (whole !== undefined) return whole;
	let result = text;
	for (const [from, to] of swaps) {
		if (!result.includes(from))
			throw new Error(`${file} no longer has ${JSON.stringify(from)}, which a patch replaces.`);
		result = result.replace(from, () => to);
	}
	return first === undefined ? result : `${first}\n${result}`;
}

/** Where the packages really lie: the folder may be a link. */
const packages = realpathSync(fileURLToPath(new URL('../node_modules', import.meta.url)));

/** The patches as a plugin of esbuild. A build in which one of them finds no file fails. */
export function patches(all = [...PATCHES, ...PAPER_PATCHES]) {
	return {
		name: 'patches',
		setup(b) {
			const done = new Set();
			b.onStart(() => done.clear());
			b.onLoad({ filter: /[\\/]node_modules[\\/].*\.m?js$/ }, async ({ path }) => {
				const file = relative(packages, path).replaceAll('\\', '/');
				const own = all.filter((patch) => patch.file === file);
				if (own.length === 0) return undefined;
				let contents = await readFile(path, 'utf8');
				for (const patch of own) {
					contents = patched(contents, patch);
					done.add(patch);
				}
				return { contents, loader: 'js' };
			});
			b.onEnd(() => ({
				errors: all
					.filter((patch) => !done.has(patch))
					.map(({ file }) => ({ text: `${file} is not in the bundle, so that its patch was not applied.` })),
			}));
		},
	};
}
