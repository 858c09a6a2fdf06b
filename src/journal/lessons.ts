import type { Lesson } from '../springback/history.ts';
import { type FsPort, realFs } from './fs-port.ts';
import type { KeptRow } from './kept-row.ts';
import { KeptSessions } from './kept-sessions.ts';

/** What the kept sessions of a home have taught, the newest first. */
export function lessonsKept(home: string, fs: FsPort = realFs): Lesson[] {
	return lessonsIn(new KeptSessions(home, fs).read().rows);
}

/** What these sessions have taught. */
export function lessonsIn(rows: readonly KeptRow[]): Lesson[] {
	return rows.flatMap(({ lesson }) => lesson ?? []);
}
