import { type FsPort, realFs } from '../../../src/files/fs-port.ts';
import { SessionCache } from '../../../src/journal/kept-sessions.ts';
import type { Lesson } from '../../../src/springback/history.ts';

/** What all kept sessions of a home have taught, the newest first. */
export function lessonsKept(home: string, fs: FsPort = realFs): Lesson[] {
	return new SessionCache(home, fs).read().rows.flatMap(({ lesson }) => lesson ?? []);
}
