// Ink for the tests, with the same patches as in the program. What imports it is bundled with it, so that there is one Ink; React stays outside.
import { createHash } from 'node:crypto';
import { mkdir, writeFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { build } from 'esbuild';
import { bundleOptions, root } from './bundle.mjs';
import { PATCHES, patches } from './patches.mjs';

const PACKAGES = ['ink', 'ink-text-input', 'ink-testing-library'];

/** Bundles them into a folder named by what is in it, and gives the path that stands for each. */
export async function patchedInk() {
	const { define, minifySyntax, ...options } = bundleOptions;
	const { outputFiles } = await build({
		...options,
		plugins: [patches(PATCHES)],
		entryPoints: Object.fromEntries(PACKAGES.map((name) => [name, name])),
		external: ['react', 'react/jsx-runtime'],
		outExtension: { '.js': '.mjs' },
		write: false,
	});
	const name = createHash('sha256')
		.update(outputFiles.map(({ hash }) => hash).join())
		.digest('hex')
		.slice(0, 16);
	const folder = join(root, 'node_modules', '.cache', 'patched-ink', name);
	await mkdir(folder, { recursive: true });
	for (const { path, contents } of outputFiles) await writeFile(join(folder, basename(path)), contents);
	return PACKAGES.map((name) => ({ find: new RegExp(`^${name}$`), replacement: join(folder, `${name}.mjs`) }));
}
