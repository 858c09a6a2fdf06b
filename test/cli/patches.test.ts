import { readFileSync } from 'node:fs';
import { build } from 'esbuild';
import { Text } from 'ink';
import { createElement } from 'react';
import { describe, expect, it, vi } from 'vitest';
import { root } from '../helpers/disk/program.ts';
import { mount } from '../helpers/screen/mount.tsx';

interface Patch {
	name: string;
	file: string;
	what: string;
	why: string;
	gains: string;
	swaps?: (readonly [from: string, to: string])[];
}

const file = (name: string) => new URL(`../../.ci/${name}`, import.meta.url).href;
const { bundleOptions } = await import(file('bundle.mjs'));
const { PATCHES, PAPER_PATCHES, patched, patches } = await import(file('patches.mjs'));
const all: Patch[] = [...PATCHES, ...PAPER_PATCHES];

const built = (plugin: object) =>
	build({ ...bundleOptions, plugins: [plugin], write: false, logLevel: 'silent' }).catch(
		({ errors }: { errors: { text: string }[] }) => errors.map(({ text }) => text),
	);

describe('the build', () => {
	it('fails where a patch finds no file, and names each', async () => {
		const faults = await built(patches(all.map((patch) => ({ ...patch, file: `${patch.file}.gone` }))));
		const wanted = all.map((patch) => `${patch.file}.gone is not in the bundle, so that its patch was not applied.`);
		expect(faults).toEqual(expect.arrayContaining(wanted));
	});

	it('fails where a patch finds nothing to replace', async () => {
		const changed = { file: 'ink/build/dom.js', swaps: [['no such line', '']] };
		const faults = await built(patches([...all, changed]));
		expect(String(faults)).toContain('ink/build/dom.js no longer has "no such line"');
	});
});

describe.each(all)('the patch $name', (patch) => {
	it('says what it changes, why, and what it gains', () => {
		for (const told of [patch.what, patch.why, patch.gains]) expect(told).not.toBe('');
	});

	it('fails where one thing that it replaces is no longer there', () => {
		const text = readFileSync(`${root}node_modules/${patch.file}`, 'utf8');
		expect(patched(text, patch)).not.toBe(text);
		for (const [from] of patch.swaps ?? [])
			expect(() => patched(text.replaceAll(from, ''), patch)).toThrow(`${patch.file} no longer has`);
	});
});

describe('the Ink of the tests', () => {
	it('has the patches of the program: box drawing is taken apart once, into cells, and not to be counted', async () => {
		const apart = vi.spyOn(Intl.Segmenter.prototype, 'segment');
		const text = '├──┤ 18.5°';
		const { terminal, unmount } = mount(createElement(Text, null, text), { columns: 60, rows: 20 });
		await terminal.until(text);
		expect(apart.mock.calls).toEqual([[text]]);
		apart.mockRestore();
		unmount();
	});
});
