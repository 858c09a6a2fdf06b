import { codeOf } from './error-codes.ts';

const WHY: Readonly<Record<string, string>> = {
	ENOSPC: 'the disk is full',
	EDQUOT: 'the disk is full',
	EROFS: 'the folder is read-only',
	EACCES: 'the folder may not be written to',
	EPERM: 'the folder may not be written to',
	ENOENT: 'the folder is not there any more',
};

/** Why the disk did not take a file, as the end of a sentence. */
export const whyRefused = (error: unknown): string =>
	WHY[codeOf(error)] ?? (error instanceof Error ? error.message : String(error));
