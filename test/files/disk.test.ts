import { describe, expect, it } from 'vitest';
import { createFile, createFreeFile, makeFolder } from '../../src/files/disk.ts';
import { writeUnlessThere } from '../../src/files/whole-file.ts';
import { FATES } from '../helpers/disk/fates.ts';
import { FaultFs } from '../helpers/disk/fault-fs.ts';

const BYTES = Buffer.from('a line that was said to be saved\n'.repeat(40));

/** Ways to put bytes under `/a/b.log` that say when they are done. */
const WAYS: readonly (readonly [string, (fs: FaultFs) => void])[] = [
	['a new file', (fs) => void createFile(fs, '/a/b.log', BYTES)],
	['a file under a free name', (fs) => void createFreeFile(fs, '/a/b.log', BYTES)],
	[
		'a whole file, where there are no links',
		(fs) => {
			fs.linkSync = () => {
				throw Object.assign(new Error('no links here'), { code: 'EPERM' });
			};
			expect(writeUnlessThere(fs, '/a/b.log', BYTES, 0o600)).toBe(true);
		},
	],
];

describe.each(FATES)('once it is made, though the power goes and the disk %s', (_, fate) => {
	it.each(WAYS)('%s is there, in the folder that was made for it', (_name, make) => {
		const fs = new FaultFs();
		makeFolder(fs, '/a');
		make(fs);
		expect(fs.afterPowerCut(fate).readFileSync('/a/b.log')).toEqual(BYTES);
	});

	it('a folder is there, and all above it', () => {
		const fs = new FaultFs();
		makeFolder(fs, '/a/b/c');
		const after = fs.afterPowerCut(fate);
		for (const folder of ['/a', '/a/b', '/a/b/c']) expect(after.statSync(folder).isFile()).toBe(false);
	});
});
