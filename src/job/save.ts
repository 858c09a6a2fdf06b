/** Writes a job file whole or not at all. */

import { mkdirSync } from 'node:fs';
import { FOR_ALL } from '../files/disk.ts';
import { causeOf } from '../files/error-codes.ts';
import { type FsPort, realFs } from '../files/fs-port.ts';
import { replaceFile, writeUnlessThere } from '../files/whole-file.ts';
import type { Cause } from '../session/protocol/facts/not-saved.ts';

/** A job file, or the folder for it, that the disk did not take. */
export interface JobNotSavedFact {
	readonly code: 'job-not-saved' | 'no-job-folder';
	readonly path: string;
	readonly cause: Cause;
}

/** A job file was not written; whatever stood there before still does. Exit code 5: the disk refused a write. `words` tells its fact. */
export class JobNotSaved extends Error {
	readonly exitCode = 5;
	override name = 'JobNotSaved';
	readonly fact: JobNotSavedFact;

	constructor(code: JobNotSavedFact['code'], path: string, error: unknown) {
		super(`${code}: ${path}`, { cause: error });
		this.fact = { code, path, cause: causeOf(error) };
	}
}

/**
 * Writes `text` under `path`. Gives false, with nothing changed, where a file of that name is there already and `over` does not say to
 * take its place. A power cut leaves the old file or the new one, never a part.
 * @throws JobNotSaved with the reason
 */
export function saveJobFile(path: string, text: string, over: boolean, fs: FsPort = realFs): boolean {
	const bytes = Buffer.from(text);
	try {
		if (!over) return writeUnlessThere(fs, path, bytes, FOR_ALL);
		replaceFile(fs, path, bytes, FOR_ALL);
		return true;
	} catch (error) {
		throw new JobNotSaved('job-not-saved', path, error);
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
		throw new JobNotSaved('no-job-folder', path, error);
	}
}
