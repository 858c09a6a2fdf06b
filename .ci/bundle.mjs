// How the program is bundled; apart from the build itself so that a test can ask what each command loads.
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { patches } from './patches.mjs';
import { together } from './together.mjs';

export const root = dirname(dirname(fileURLToPath(import.meta.url)));

/** The files that the program reads beside itself when it prints. */
export const FONTS = ['DejaVuSans.ttf', 'DejaVuSans-Bold.ttf'];

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
	plugins: [together(root), patches()],
	banner: {
		js: "#!/usr/bin/env node\nimport {createRequire as __cr} from 'node:module'; const require = __cr(import.meta.url);",
	},
	define: { 'process.env.NODE_ENV': '"production"', FONTS_BESIDE: 'true' },
	minifySyntax: true,
	legalComments: 'none',
	logLevel: 'warning',
};
