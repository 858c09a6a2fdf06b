import { type FsPort, realFs } from '../files/fs-port.ts';
import { whyRefused } from '../files/refused.ts';
import { replaceFile, writeUnlessThere } from '../files/whole-file.ts';
import { EXIT } from './exit.ts';
import { type Io, tellOn } from './io.ts';
import { UsageError } from './usage-error.ts';

/** A page is there to be printed by others too. */
const MODE = 0o644;

/** A PDF was not written; whatever stood there before still does. */
export class PdfNotSaved extends Error {
	readonly exitCode = EXIT.notSaved;
	override name = 'PdfNotSaved';
}

/**
 * Writes a PDF whole or not at all.
 * @throws UsageError where a file of that name is there and `force` does not say to take its place; PdfNotSaved with the disk's reason
 */
export function savePdf(path: string, bytes: Uint8Array, force: boolean, fs: FsPort = realFs): void {
	if (!savedPdf(path, bytes, force, fs))
		throw new UsageError(`${path} is there already. Write over it with --force, or give another name with --out FILE.`);
}

function savedPdf(path: string, bytes: Uint8Array, force: boolean, fs: FsPort): boolean {
	try {
		if (!force) return writeUnlessThere(fs, path, bytes, MODE);
		replaceFile(fs, path, bytes, MODE);
		return true;
	} catch (error) {
		throw new PdfNotSaved(
			`${path} was not written: ${whyRefused(error)}. Give another place with --out FILE, or --out - to send it to a printer.`,
		);
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
	tellOn(io)(`Written: ${to}`);
}
