import { constants } from 'node:fs';
import { dirname } from 'node:path';
import { codeOf } from './error-codes.ts';
import type { FsPort } from './fs-port.ts';

/** Who may read a file of ours: what is printed or handed on is for all, what is kept is for its owner. */
export const FOR_ALL = 0o644;
export const FOR_OWNER = 0o600;

/** A file that must not be there yet: written whole, or a log. */
export const FRESH_FILE = constants.O_WRONLY | constants.O_CREAT | constants.O_EXCL;
export const NEW_FILE = constants.O_RDWR | constants.O_APPEND | constants.O_CREAT | constants.O_EXCL;
export const APPEND = constants.O_RDWR | constants.O_APPEND;

/** Writes all bytes, going on after a short write. Throws what the disk threw; then some of the bytes may stand in the file. */
export function writeAll(fs: FsPort, fd: number, bytes: Uint8Array): void {
	let done = 0;
	while (done < bytes.length) {
		const wrote = fs.writeSync(fd, bytes, done, bytes.length - done);
		if (wrote <= 0) throw Object.assign(new Error('the disk took no byte and gave no reason'), { code: 'EIO' });
		done += wrote;
	}
}

/** Makes a folder's entries (new, gone) durable. */
export function syncFolder(fs: FsPort, folder: string): void {
	// Windows cannot open a folder for this; NTFS journals its entries by itself.
	if (process.platform === 'win32') return;
	const fd = fs.openSync(folder, constants.O_RDONLY);
	try {
		fs.fsyncSync(fd);
	} finally {
		closeQuietly(fs, fd);
	}
}

/** Makes the folder and those above it that are missing (0700), each made durable in the one it lies in. */
export function makeFolder(fs: FsPort, folder: string): void {
	if (exists(fs, folder)) return;
	const parent = dirname(folder);
	if (parent !== folder) makeFolder(fs, parent);
	try {
		fs.mkdirSync(folder, 0o700);
	} catch (error) {
		// Another session may have made it in this moment.
		if (codeOf(error) !== 'EEXIST') throw error;
	}
	syncFolder(fs, parent);
}

/** Makes a new file with these bytes, durable together with its name, and gives its descriptor. Removes it again on failure. */
export function createFile(fs: FsPort, path: string, bytes: Uint8Array, mode = FOR_OWNER): number {
	const fd = fs.openSync(path, NEW_FILE, mode);
	try {
		writeAll(fs, fd, bytes);
		fs.fsyncSync(fd);
		syncFolder(fs, dirname(path));
		return fd;
	} catch (error) {
		closeQuietly(fs, fd);
		removeQuietly(fs, path);
		throw error;
	}
}

/** Is there a file or folder of this name? */
export function exists(fs: FsPort, path: string): boolean {
	try {
		fs.statSync(path);
		return true;
	} catch (error) {
		if (codeOf(error) === 'ENOENT') return false;
		throw error;
	}
}

/**
 * As createFile, under the first free of `path`, `path-2`, … (the number goes before `extension`); gives the name taken. A name that has a
 * file with `beside` added to it is not free either.
 */
export function createFreeFile(
	fs: FsPort,
	path: string,
	bytes: Uint8Array,
	{ extension = '', beside = '' } = {},
): { fd: number; path: string } {
	const stem = path.slice(0, path.length - extension.length);
	for (let n = 1; ; n++) {
		const name = n === 1 ? path : `${stem}-${n}${extension}`;
		if (beside && exists(fs, name + beside)) continue;
		try {
			return { fd: createFile(fs, name, bytes), path: name };
		} catch (error) {
			if (codeOf(error) !== 'EEXIST') throw error;
		}
	}
}

/** Closes a descriptor. What matters was flushed before, so that a failure here changes nothing. */
export function closeQuietly(fs: FsPort, fd: number): void {
	try {
		fs.closeSync(fd);
	} catch {
		// The system frees the descriptor even when it reports an error.
	}
}

/** Removes a file that holds nothing acknowledged. A failure is of no account: the error that led here is the one to report. */
export function removeQuietly(fs: FsPort, path: string): void {
	try {
		fs.unlinkSync(path);
	} catch {
		// The caller is already throwing the cause.
	}
}
