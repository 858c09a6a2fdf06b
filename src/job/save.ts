/** Writes a job file whole or not at all. */
import { closeSync, fsyncSync, linkSync, mkdirSync, openSync, renameSync, rmSync, writeSync } from 'node:fs';
import { dirname } from 'node:path';

/** A job file was not written; whatever stood there before still does. Exit code 5: the disk refused a write. */
export class JobNotSaved extends Error {
	readonly exitCode = 5;
	override name = 'JobNotSaved';
}

const WHY: Readonly<Record<string, string>> = {
	ENOSPC: 'the disk is full',
	EDQUOT: 'the disk is full',
	EROFS: 'the folder is read-only',
	EACCES: 'the folder may not be written to',
	EPERM: 'the folder may not be written to',
	ENOENT: 'the folder is not there any more',
};

/** File systems without hard links say one of these. */
const NO_LINKS = new Set(['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EMLINK']);

const codeOf = (error: unknown): string => (error instanceof Error && 'code' in error ? String(error.code) : '');

/**
 * Writes `text` under `path`. Gives false, with nothing changed, where a file of that name is there already and `over` does not say to
 * take its place. A power cut leaves the old file or the new one, never a part.
 * @throws JobNotSaved with the reason
 */
export function saveJobFile(path: string, text: string, over: boolean): boolean {
	const fresh = `${path}.new-${process.pid}`;
	try {
		writeWhole(fresh, text);
		if (over) renameSync(fresh, path);
		else if (!linked(fresh, path, text)) return false;
		syncFolder(dirname(path));
		return true;
	} catch (error) {
		throw new JobNotSaved(`The job was not saved as ${path}: ${whyNot(error)}.`);
	} finally {
		rmSync(fresh, { force: true });
	}
}

/**
 * Makes the folder of one's own jobs, for the first of them.
 * @throws JobNotSaved with the reason
 */
export function makeJobFolder(path: string): void {
	try {
		mkdirSync(path);
	} catch (error) {
		throw new JobNotSaved(`The job was not saved: the folder ${path} cannot be made here, ${whyNot(error)}.`);
	}
}

const whyNot = (error: unknown): string =>
	WHY[codeOf(error)] ?? (error instanceof Error ? error.message : String(error));

/** Gives the written file its name, unless the name is taken: asking first and writing then would leave a gap between. */
function linked(fresh: string, path: string, text: string): boolean {
	try {
		linkSync(fresh, path);
		return true;
	} catch (error) {
		if (codeOf(error) === 'EEXIST') return false;
		if (!NO_LINKS.has(codeOf(error))) throw error;
	}
	try {
		writeWhole(path, text);
		return true;
	} catch (error) {
		if (codeOf(error) === 'EEXIST') return false;
		throw error;
	}
}

/** All of a text in a file that was not there before. */
function writeWhole(path: string, text: string): void {
	const bytes = Buffer.from(text);
	const handle = openSync(path, 'wx', 0o644);
	try {
		for (let done = 0; done < bytes.length; ) done += writeSync(handle, bytes, done);
		fsyncSync(handle);
	} catch (error) {
		// A part of a job is no job.
		rmSync(path, { force: true });
		throw error;
	} finally {
		closeSync(handle);
	}
}

/** The new name is on the disk only when the folder is. Windows has no such call on folders. */
function syncFolder(folder: string): void {
	if (process.platform === 'win32') return;
	const handle = openSync(folder, 'r');
	try {
		fsyncSync(handle);
	} finally {
		closeSync(handle);
	}
}
