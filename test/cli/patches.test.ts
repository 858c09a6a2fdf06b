import { build } from 'esbuild';
import { describe, expect, it } from 'vitest';

const file = (name: string) => new URL(`../../.ci/${name}`, import.meta.url).href;
const { bundleOptions } = await import(file('bundle.mjs'));
const { PATCHES, patches } = await import(file('patches.mjs'));

const built = (more: object[]) =>
	build({ ...bundleOptions, plugins: [patches([...PATCHES, ...more])], write: false, logLevel: 'silent' });

describe('the build', () => {
	it('fails where a patch finds no file', async () => {
		const gone = { file: 'ink/build/gone.js', whole: '' };
		await expect(built([gone])).rejects.toThrow('ink/build/gone.js is not in the bundle');
	});

	it('fails where a patch finds nothing to replace', async () => {
		const changed = { file: 'ink/build/dom.js', swaps: [['no such line', '']] };
		await expect(built([changed])).rejects.toThrow('ink/build/dom.js no longer has "no such line"');
	});
});

it.each(PATCHES as { name: string; what: string; why: string; gains: string }[])(
	'the patch $name says what it changes, why, and what it gains',
	(patch) => {
		for (const told of [patch.what, patch.why, patch.gains]) expect(told).not.toBe('');
	},
);
