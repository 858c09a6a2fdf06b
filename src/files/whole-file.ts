import { basename, dirname, join } from 'node:path';
import { closeQuietly, createFile, FRESH_FILE, removeQuietly, syncFolder, writeAll } from './disk.ts';
import { codeOf } from './error-codes.ts';
import type { FsPort } from './fs-port.ts';

/** File systems without hard links say one of these. */
const NO_LINKS = new Set(['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EMLINK']);

/** Who writes many files of a folder sweeps it once: looking through it for each would take longer than writing. */
export interface Sweeping {
	isSwept?: boolean;
}

/** Writes these bytes under a name, over what had it. Throws what the disk threw; the old file then stands there still, or whole the new one. */
export function replaceFile(fs: FsPort, path: string, bytes: Uint8Array, mode: number, swept: Sweeping = {}): void {
	const fresh = writtenAside(fs, path, bytes, mode, swept);
	try {
		fs.renameSync(fresh, path);
	} catch (error) {
		removeQuietly(fs, fresh);
		throw error;
	}
	syncFolder(fs, dirname(path));
}

/** Writes these bytes under a name that is free; false, with nothing changed, where it is not. Throws what the disk threw; then it is not there, or whole. */
export function writeUnlessThere(
	fs: FsPort,
	path: string,
	bytes: Uint8Array,
	mode: number,
	swept: Sweeping = {},
): boolean {
	const fresh = writtenAside(fs, path, bytes, mode, swept);
	try {
		// Asking first and writing then would leave a gap between.
		if (!linked(fs, fresh, path)) closeQuietly(fs, createFile(fs, path, bytes, mode));
		syncFolder(fs, dirname(path));
		return true;
	} catch (error) {
		if (codeOf(error) === 'EEXIST') return false;
		throw error;
	} finally {
		removeQuietly(fs, fresh);
	}
}

/** The bytes in a file beside the one that they are meant for; gives its name. */
function writtenAside(
	fs: FsPort,
	path: string,
	bytes: Uint8Array,
	mode: number,
	{ isSwept = false }: Sweeping,
): string {
	if (!isSwept) sweep(fs, dirname(path), new RegExp(`^${basename(path).replace(/\W/g, '\\$&')}${IN_THE_MAKING}`));
	const fresh = `${path}.new-${process.pid}`;
	const fd = openFresh(fs, fresh, mode);
	try {
		writeAll(fs, fd, bytes);
		fs.fsyncSync(fd);
	} catch (error) {
		// What a full disk has taken so far must not go on taking its room.
		removeQuietly(fs, fresh);
		throw error;
	} finally {
		closeQuietly(fs, fd);
	}
	return fresh;
}

/** Opens a new file. One that a killed program left goes first: written over, a link in its place would lead elsewhere. */
function openFresh(fs: FsPort, path: string, mode: number): number {
	try {
		return fs.openSync(path, FRESH_FILE, mode);
	} catch (error) {
		if (codeOf(error) !== 'EEXIST') throw error;
		fs.unlinkSync(path);
		return fs.openSync(path, FRESH_FILE, mode);
	}
}

/** A file in the making that is older was left by a program that was killed. */
const ABANDONED_MS = 3_600_000;

const IN_THE_MAKING = '\\.(new-\\d+|tmp-[\\da-z]+)$';

/** Removes what killed programs left in a folder of files whose names end so. */
export function sweepFolder(fs: FsPort, folder: string, ending: string): void {
	sweep(fs, folder, new RegExp(`${ending.replace(/\W/g, '\\$&')}${IN_THE_MAKING}`));
}

function sweep(fs: FsPort, folder: string, begun: RegExp): void {
	try {
		for (const name of fs.readdirSync(folder)) {
			const left = join(folder, name);
			if (begun.test(name) && Date.now() - fs.statSync(left).mtimeMs > ABANDONED_MS) removeQuietly(fs, left);
		}
	} catch (error) {
		// Where the folder cannot be looked into, the write itself says what is wrong.
		if (codeOf(error) === '') throw error;
	}
}

/** False where the file system has no links. */
function linked(fs: FsPort, from: string, to: string): boolean {
	try {
		fs.linkSync(from, to);
		return true;
	} catch (error) {
		if (NO_LINKS.has(codeOf(error))) return false;
		throw error;
	}
}
