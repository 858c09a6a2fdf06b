/** Reads the text of a job file, and of nothing else: not of what never ends, nor of what waits for somebody to write into it. */
import { closeSync, constants, fstatSync, openSync, readSync, type Stats } from 'node:fs';
import { JobFileError } from './fault.ts';

/** A job file is a few kilobytes; what is larger is some other file. */
const MOST_BYTES = 1_000_000;

/** @throws JobFileError where there is no regular file of at most 1 MB that can be read */
export function jobText(path: string): string {
	let file: number;
	try {
		// A pipe that nobody writes into is opened, and found out, without waiting.
		file = openSync(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
	} catch (error) {
		throw notRead(path, whyNot(error));
	}
	try {
		const kind = kindOf(fstatSync(file));
		if (kind !== null) throw notRead(path, kind);
		return wholeText(file, path);
	} catch (error) {
		throw error instanceof JobFileError ? error : notRead(path, whyNot(error));
	} finally {
		closeSync(file);
	}
}

/** It may grow, or be shorter than it says, while it is read: what counts is what comes. */
function wholeText(file: number, path: string): string {
	const bytes = Buffer.allocUnsafe(MOST_BYTES + 1);
	let filled = 0;
	while (filled < bytes.length) {
		const got = readSync(file, bytes, filled, bytes.length - filled, null);
		if (got === 0) return bytes.toString('utf8', 0, filled);
		filled += got;
	}
	throw notRead(path, 'more than 1 MB');
}

function kindOf(stats: Stats): string | null {
	if (stats.isFile()) return null;
	if (stats.isDirectory()) return 'a folder';
	return stats.isFIFO() ? 'a pipe' : 'a device or a socket';
}

function notRead(path: string, found: string): JobFileError {
	const right = 'the path of a job file that can be read, at most 1 MB';
	return new JobFileError(path, [{ at: 'job', found, right }]);
}

const WHY_NOT_READ: Readonly<Record<string, string>> = {
	ENOENT: 'no such file',
	EISDIR: 'a folder',
	EACCES: 'a file that may not be read',
	EPERM: 'a file that may not be read',
	ENOTDIR: 'a path through something that is no folder',
	ENXIO: 'a device or a socket',
};

function whyNot(error: unknown): string {
	const { code, message } = error as NodeJS.ErrnoException;
	return WHY_NOT_READ[code ?? ''] ?? message;
}
