/** Whose sessions they are, by the benders' names. */
import type { KeptRow } from '../journal/kept-row.ts';

/** Whether a session was bent on the bender of that name; capitals or not. */
export function isNamed({ job }: KeptRow, bender: string): boolean {
	return job !== null && job.bender.toLowerCase() === bender.toLowerCase();
}

/** The benders that these sessions were bent on, the newest first. */
export function bendersOf(rows: readonly KeptRow[]): string[] {
	return [...new Set(rows.flatMap(({ job }) => job?.bender ?? []))];
}
