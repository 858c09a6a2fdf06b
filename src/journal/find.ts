import { realpathSync } from 'node:fs';
import type { JournalFault } from './facts.ts';
import type { KeptRow } from './kept-row.ts';

/**
 * The sessions of a job among these, the one with the newest record first: those started from the same real path, and where there
 * is none, those of a job of the same name.
 */
export function sessionsOfJob(
	rows: readonly KeptRow[],
	jobFile: string,
	jobName: string,
	now: Date = new Date(),
): KeptRow[] {
	const file = realPath(jobFile);
	const samePath = rows.filter(({ job }) => job?.file === file);
	const chosen = samePath.length > 0 ? samePath : rows.filter(({ job }) => job?.name === jobName);
	return newestFirst(chosen, ({ touched }) => touched, now);
}

/** By that time; what is dated in the future, by a clock that was wrong, comes after all that is not. */
export function newestFirst(
	rows: readonly KeptRow[],
	timeOf: (row: KeptRow) => string,
	now: Date = new Date(),
): KeptRow[] {
	const present = now.toISOString();
	// A row makes its time anew each time that it is asked.
	const timed = rows.map((row) => ({ row, time: timeOf(row) })).sort((a, b) => (a.time < b.time ? 1 : -1));
	const isAhead = ({ time }: { time: string }) => time > present;
	return [...timed.filter((each) => !isAhead(each)), ...timed.filter(isAhead)].map(({ row }) => row);
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

/** The damage of a log that went on after this ISO time and does not say any more whose it is; null where there is none. */
export function damagedAfter(rows: readonly KeptRow[], touched: string): JournalFault | null {
	const newer = rows.find((row) => row.job === null && row.isDamaged && row.problem !== null && row.touched > touched);
	return newer?.problem ?? null;
}
