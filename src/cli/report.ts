import { JobFileError } from '../job/fault.ts';
import { diskRefusedWords, errorWords, ownFaultWords } from '../words/error.ts';
import { harmless } from '../words/foreign.ts';
import { inOurName } from '../words/usage/command-line.ts';
import { EXIT } from './exit.ts';
import { type Io, tellOn } from './io.ts';

/** The system's names for a write that the disk refused. */
const REFUSED_WRITES = new Set(['ENOSPC', 'EDQUOT', 'EROFS', 'EIO', 'EFBIG']);

/**
 * Says on standard error what went wrong, in one sentence, and gives the exit code for it. An error of ours carries a
 * numeric `exitCode` and a text made for people; any other is a fault of the program and is said to be one.
 */
export function reportError(error: unknown, stderr: Io['stderr'], debug: boolean): number {
	const ours = ownExitCode(error);
	const text = errorWords(error);
	if (error instanceof JobFileError) stderr.write(inOurName(text));
	else if (ours !== null) tellOn({ stderr })(text);
	else if (isRefusedWrite(error)) {
		tellOn({ stderr })(diskRefusedWords(flattened(text)));
		return EXIT.notSaved;
	} else {
		tellOn({ stderr })(ownFaultWords(flattened(text), debug));
	}
	if (debug && error instanceof Error) stderr.write(`${harmless(String(error.stack))}\n`);
	return ours ?? EXIT.failure;
}

function ownExitCode(error: unknown): number | null {
	if (!(error instanceof Error) || !('exitCode' in error)) return null;
	return typeof error.exitCode === 'number' ? error.exitCode : null;
}

function isRefusedWrite(error: unknown): boolean {
	return error instanceof Error && 'code' in error && REFUSED_WRITES.has(String(error.code));
}

function flattened(text: string): string {
	return text.replace(/\s+/g, ' ').trim().replace(/\.$/, '');
}
