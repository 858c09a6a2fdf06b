/** Which of the kept sessions are wanted, by what their rows say. */
import type { KeptRow } from '../journal/kept-row.ts';

export interface Wanted {
	/** Each stands somewhere in the id or the names of job, bender, die or heat; capitals or not. */
	words: readonly string[];
	/** ISO time: begun then or later. */
	since: string | null;
	bender: string | null;
	/** Finished tubes that fit, or that do not surely fit. */
	fits: boolean | null;
}

export function isWanted(row: KeptRow, { words, since, bender, fits }: Wanted): boolean {
	if (since !== null && row.at < since) return false;
	if (bender !== null && !isNamed(row, bender)) return false;
	if (fits !== null && (row.status !== 'done' || row.summary?.fits !== fits)) return false;
	if (words.length === 0) return true;
	const { job } = row;
	const text = [row.id, job?.name, job?.bender, job?.die, job?.heat].join('\n').toLowerCase();
	return words.every((word) => text.includes(word.toLowerCase()));
}

/** Whether a session was bent on the bender of that name; capitals or not. */
export function isNamed({ job }: KeptRow, bender: string): boolean {
	return job !== null && job.bender.toLowerCase() === bender.toLowerCase();
}

/** The benders that these sessions were bent on, the newest first. */
export function bendersOf(rows: readonly KeptRow[]): string[] {
	return [...new Set(rows.flatMap(({ job }) => job?.bender ?? []))];
}
