import { accessSync, constants, statfsSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve, sep } from 'node:path';
import { codeOf } from './error-codes.ts';

/** Types of file systems that lie in memory (statfs(2)): tmpfs, ramfs. */
const IN_MEMORY = new Set([0x01021994, 0x858458f6]);

/** Whether what is kept in this folder, or in the nearest one above it that is there, is gone after a power cut. False where the system does not tell. */
export function isInMemory(folder: string): boolean {
	try {
		return IN_MEMORY.has(statfsSync(folder).type);
	} catch (error) {
		const parent = dirname(resolve(folder));
		return codeOf(error) === 'ENOENT' && parent !== resolve(folder) && isInMemory(parent);
	}
}

const FOLDER = 'pullbook-rescued';

/**
 * A folder to offer where a log's own disk refuses: in the first of these that can be written, outlasts a power cut and lies on another
 * disk than the log, else on the same. Null where there is none. Nothing is made on disk.
 */
export function durablePlace(folders: readonly string[], log: string): string | null {
	const fit = folders.map((folder) => resolve(folder)).filter(canKeep);
	const own = deviceOf(dirname(log));
	const found = fit.find((folder) => deviceOf(folder) !== own) ?? fit[0];
	return found === undefined ? null : join(found, FOLDER);
}

function canKeep(folder: string): boolean {
	if (isInMemory(folder) || `${folder}${sep}`.startsWith(`${resolve(tmpdir())}${sep}`)) return false;
	try {
		accessSync(folder, constants.W_OK);
		return true;
	} catch (error) {
		if (codeOf(error) === '') throw error;
		return false;
	}
}

function deviceOf(folder: string): number | null {
	return statSync(folder, { throwIfNoEntry: false })?.dev ?? null;
}
