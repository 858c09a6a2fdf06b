import type { JobNotSavedFact } from '../job/save.ts';
import type { Cause } from '../session/protocol/facts/not-saved.ts';

const WHY: Readonly<Record<string, string>> = {
	ENOSPC: 'the disk is full',
	EDQUOT: 'the disk is full',
	EROFS: 'the folder is read-only',
	EACCES: 'the folder may not be written to',
	EPERM: 'the folder may not be written to',
	ENOENT: 'the folder is not there any more',
};

/** Why the disk did not take a file, as the end of a sentence. */
export const whyRefused = ({ errno, text }: Cause): string => WHY[errno] ?? text;

export function jobNotSavedWords({ code, path, cause }: JobNotSavedFact): string {
	return code === 'job-not-saved'
		? `The job was not saved as ${path}: ${whyRefused(cause)}.`
		: `The job was not saved: the folder ${path} cannot be made here, ${whyRefused(cause)}.`;
}
