import { existsSync, mkdtempSync, rmSync, statfsSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { durablePlace, isInMemory } from '../../src/files/durable.ts';
import { root } from '../helpers/disk/program.ts';

/** statfs(2): tmpfs. */
const TMPFS = 0x01021994;
const SHM = '/dev/shm';
const hasMemoryDisk = existsSync(SHM) && statfsSync(SHM).type === TMPFS;
const LOG = join(root, 'a.log');

/** The project itself lies on a disk, but where somebody tests in memory. */
const onDisk = !isInMemory(root) && !`${root}/`.startsWith(`${tmpdir()}/`);

describe('the folder that is offered where a disk refuses', () => {
	it.runIf(onDisk)('lies in the first one that outlasts a power cut', () => {
		expect(durablePlace([tmpdir(), root], LOG)).toBe(join(root, 'pullbook-rescued'));
	});

	it('is never the temporary folder, nor lies in it', () => {
		const folder = mkdtempSync(join(tmpdir(), 'pullbook-durable-'));
		try {
			expect(durablePlace([tmpdir(), folder], LOG)).toBeNull();
		} finally {
			rmSync(folder, { recursive: true });
		}
	});

	it.runIf(hasMemoryDisk)('is never in memory, nor in a folder that is still to be made there', () => {
		expect(durablePlace([SHM], LOG)).toBeNull();
		expect(isInMemory(join(SHM, 'none', 'there'))).toBe(true);
	});

	it('is none that is not there', () => {
		expect(durablePlace([join(root, 'none-there')], LOG)).toBeNull();
	});
});
