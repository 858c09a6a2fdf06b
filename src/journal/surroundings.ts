import type { FsPort } from '../files/fs-port.ts';
import type { Job } from '../tube/job.ts';
import type { LockSelf } from './lock.ts';
import type { OpenOptions } from './open-log.ts';

/** Where a session gets what the pure core may not have: the time, a random tail for its id, the program's version. */
export interface Surroundings {
	home: string;
	program: string;
	/** The folder in which a session goes on when its own disk refuses, where one was agreed on. */
	rescue?: string | null;
	/** The disk, and who asks for locks; left out: the real ones. */
	fs?: FsPort;
	self?: LockSelf;
	now(): Date;
	random(): string;
}

/** A job as loaded from its file. */
export interface JobFile {
	job: Job;
	path: string;
	raw: unknown;
	/** The place of each value that the file leaves to bender and die as kept. */
	fromBender?: readonly string[];
}

/** How a log is opened there. */
export function openOptions({ rescue = null, fs, self }: Surroundings, now: Date): OpenOptions {
	return { now, rescue, ...(fs && { fs }), ...(self && { self }) };
}
