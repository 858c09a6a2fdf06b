/** Writes a job file whole or not at all. */
import { mkdirSync } from 'node:fs';
import { type FsPort, realFs } from '../files/fs-port.ts';
import { whyRefused } from '../files/refused.ts';
import { replaceFile, writeUnlessThere } from '../files/whole-file.ts';

/** A job file was not written; whatever stood there before still does. Exit code 5: the disk refused a write. */
export class JobNotSaved extends Error {
	readonly exitCode = 5;
	override name = 'JobNotSaved';
}

/** A job is there to be read by others too. */
const MODE = 0o644;

/**
 * Writes `text` under `path`. Gives false, with nothing changed, where a file of that name is there already and `over` does not say to
 * take its place. A power cut leaves the old file or the new one, never a part.
 * @throws JobNotSaved with the reason
 */
export function saveJobFile(path: string, text: string, over: boolean, fs: FsPort = realFs): boolean {
	const bytes = Buffer.from(text);
	try {
		if (!over) return writeUnlessThere(fs, path, bytes, MODE);
		replaceFile(fs, path, bytes, MODE);
		return true;
	} catch (error) {
		throw new JobNotSaved(`The job was not saved as ${path}: ${whyRefused(error)}.`);
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
		throw new JobNotSaved(`The job was not saved: the folder ${path} cannot be made here, ${whyRefused(error)}.`);
	}
}
