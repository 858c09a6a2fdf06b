/** Reads the text of a job file, and of nothing else: not of what never ends, nor of what waits for somebody to write into it. */
import { closeSync, constants, fstatSync, openSync, readSync, type Stats } from 'node:fs';
import { causeOf, codeOf } from '../files/error-codes.ts';
import type { FileKind, Found } from './facts/index.ts';
import { JobFileError } from './fault.ts';

/** A job file is a few kilobytes; what is larger is some other file. */
const MOST_BYTES = 1_000_000;

/** @throws JobFileError where there is no regular file of at most 1 MB that can be read */
export function jobText(path: string): string {
	let open: number;
	try {
		// A pipe that nobody writes into is opened, and found out, without waiting.
		open = openSync(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
	} catch (error) {
		throw notRead(path, whyNot(error));
	}
	try {
		const kind = fileKindOf(fstatSync(open));
		if (kind !== null) throw notRead(path, file(kind));
		return wholeText(open, path);
	} catch (error) {
		throw error instanceof JobFileError ? error : notRead(path, whyNot(error));
	} finally {
		closeSync(open);
	}
}

/** It may grow, or be shorter than it says, while it is read: what counts is what comes. */
function wholeText(open: number, path: string): string {
	const bytes = Buffer.allocUnsafe(MOST_BYTES + 1);
	let filled = 0;
	while (filled < bytes.length) {
		const got = readSync(open, bytes, filled, bytes.length - filled, null);
		if (got === 0) return bytes.toString('utf8', 0, filled);
		filled += got;
	}
	throw notRead(path, file('too-large'));
}

function fileKindOf(stats: Stats): FileKind | null {
	if (stats.isFile()) return null;
	if (stats.isDirectory()) return 'folder';
	return stats.isFIFO() ? 'pipe' : 'device-or-socket';
}

function notRead(path: string, found: Found): JobFileError {
	return new JobFileError(path, [{ at: 'job', found, right: { code: 'readable-file' } }]);
}

const WHY_NOT_READ: Readonly<Record<string, FileKind>> = {
	ENOENT: 'absent',
	EISDIR: 'folder',
	EACCES: 'forbidden',
	EPERM: 'forbidden',
	ENOTDIR: 'through-no-folder',
	ENXIO: 'device-or-socket',
};

const file = (is: FileKind): Found => ({ code: 'file', is });

function whyNot(error: unknown): Found {
	const kind = WHY_NOT_READ[codeOf(error)];
	return kind === undefined ? { code: 'not-read', text: causeOf(error).text } : file(kind);
}
