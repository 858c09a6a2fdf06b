import { basename, dirname, join } from 'node:path';
import { FOR_ALL } from '../files/disk.ts';
import { causeOf, codeOf } from '../files/error-codes.ts';
import { type FsPort, realFs } from '../files/fs-port.ts';
import { replaceFile, writeUnlessThere } from '../files/whole-file.ts';
import { PDF } from '../words/usage/paper.ts';
import { EXIT } from './exit.ts';
import { type Io, tellOn } from './io.ts';
import { UsageError } from './usage-error.ts';

/** A PDF was not written; whatever stood there before still does. */
export class PdfNotSaved extends Error {
	readonly exitCode = EXIT.notSaved;
	override name = 'PdfNotSaved';
}

/**
 * Writes a PDF whole or not at all.
 * @throws UsageError where a file of that name is there and `force` does not say to take its place, or something that is no file; PdfNotSaved with the disk's reason
 */
export function savePdf(path: string, bytes: Uint8Array, force: boolean, fs: FsPort = realFs): void {
	if (force && isOther(path, fs)) throw new UsageError(PDF.noFile(path));
	if (!savedPdf(path, bytes, force, fs)) throw new UsageError(PDF.inTheWay(path));
}

/** Whether something else than a file has that name: a device or a folder is not to be replaced. */
function isOther(path: string, fs: FsPort): boolean {
	try {
		return !fs.statSync(path).isFile();
	} catch (error) {
		// What is not there, or cannot be looked at, is told when it is written.
		if (codeOf(error) !== '') return false;
		throw error;
	}
}

/** The same; false, with nothing changed, where a file is in the way. @throws PdfNotSaved */
export function savedPdf(path: string, bytes: Uint8Array, force: boolean, fs: FsPort = realFs): boolean {
	try {
		if (!force) return writeUnlessThere(fs, path, bytes, FOR_ALL);
		replaceFile(fs, path, bytes, FOR_ALL);
		return true;
	} catch (error) {
		throw new PdfNotSaved(PDF.refused(path, causeOf(error)));
	}
}

/** The PDF beside a job file that says what it is: `bow-rail-sheet.pdf`. */
export function besideJob(jobFile: string, what: string): string {
	return join(dirname(jobFile), `${basename(jobFile).replace(/\.json$/i, '')}-${what}.pdf`);
}

/** The same under that name, or with a number after it under the first that is free; gives it. @throws PdfNotSaved */
export function savedUnderFree(path: string, bytes: Uint8Array): string {
	for (let n = 1; ; n++) {
		const to = n === 1 ? path : path.replace(/\.pdf$/, `-${n}.pdf`);
		if (savedPdf(to, bytes, false)) return to;
	}
}

/** The same, or to standard output where `to` is `-`; what was written where is told. */
export function writePdf(
	{ to, bytes, force }: { to: string; bytes: Uint8Array; force: boolean },
	io: Pick<Io, 'stdout' | 'stderr'>,
): void {
	if (to === '-') {
		io.stdout.write(bytes);
		return;
	}
	savePdf(to, bytes, force);
	tellOn(io)(PDF.written(to));
}
