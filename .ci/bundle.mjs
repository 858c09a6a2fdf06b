// How the program is bundled; apart from the build itself so that a test can ask what each command loads.
import { dirname } from 'node:path';
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
	plugins: [patchInk],
	banner: {
		js: "#!/usr/bin/env node\nimport {createRequire as __cr} from 'node:module'; const require = __cr(import.meta.url);",
	},
	define: { 'process.env.NODE_ENV': '"production"' },
	minifySyntax: true,
	legalComments: 'none',
	logLevel: 'warning',
};
