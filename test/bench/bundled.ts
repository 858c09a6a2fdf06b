/** A file of the benchmarks, or the program, bundled as the program is, with the patches of packages that are wanted. */
import { basename, join } from 'node:path';
import { build } from 'esbuild';

export interface Patch {
	name: string;
	gains: string;
}

// By its address: the build's own files have no types.
const { bundleOptions, FONTS: fonts, root } = await import(new URL('../../.ci/bundle.mjs', import.meta.url).href);
const patching = await import(new URL('../../.ci/patches.mjs', import.meta.url).href);

/** The files that lie beside the program. */
export const FONTS: readonly string[] = fonts;
/** Those of the screen, and those of what prints. */
export const PATCHES: readonly Patch[] = patching.PATCHES;
export const PAPER_PATCHES: readonly Patch[] = patching.PAPER_PATCHES;

/** Bundles `file`, from the top of the project, into a folder; gives the path of what is to be run. Fails where a patch finds nothing to change. */
export async function bundled(file: string, folder: string, patches: readonly Patch[]): Promise<string> {
	const name = basename(file, '.ts');
	await build({
		...bundleOptions,
		plugins: [patching.patches(patches)],
		entryPoints: { [name]: join(root, file) },
		outdir: folder,
		outExtension: { '.js': '.mjs' },
	});
	return join(folder, `${name}.mjs`);
}
