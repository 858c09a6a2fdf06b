import { realpathSync } from 'node:fs';
import type { KeptRow } from './kept-row.ts';

/**
 * The sessions of a job among these, the one with the newest record first: those started from the same real path, and where there
 * is none, those of a job of the same name.
 */
export function sessionsOfJob(rows: readonly KeptRow[], jobFile: string, jobName: string): KeptRow[] {
	const file = realPath(jobFile);
	const samePath = rows.filter(({ job }) => job?.file === file);
	const chosen = samePath.length > 0 ? samePath : rows.filter(({ job }) => job?.name === jobName);
	return [...chosen].sort((a, b) => (a.touched < b.touched ? 1 : -1));
}

/** The path with links resolved; as it is where the file is gone. */
export function realPath(path: string): string {
	try {
		return realpathSync(path);
	} catch {
		// A job file that is gone still has its sessions under the path it had.
		return path;
	}
}
