import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const { bundleOptions } = await import(new URL('../../../.ci/bundle.mjs', import.meta.url).href);
const { PATCHES, patches } = await import(new URL('../../../.ci/patches.mjs', import.meta.url).href);

/** The little program that is typed into, bundled as Pullbook is, so that it has the same patched Ink and starts as fast. */
export async function builtApp(): Promise<{ app: string; remove(): void }> {
	const outdir = mkdtempSync(join(tmpdir(), 'typing-app-'));
	const typing = fileURLToPath(new URL('../../fixtures/typing-app.tsx', import.meta.url));
	const own = { plugins: [patches(PATCHES)], entryPoints: { typing }, outdir, outExtension: { '.js': '.mjs' } };
	await build({ ...bundleOptions, ...own });
	return { app: join(outdir, 'typing.mjs'), remove: () => rmSync(outdir, { recursive: true }) };
}
