import type { Job } from '../tube/job.ts';

/** Where a session gets what the pure core may not have: the time, a random tail for its id, the program's version. */
export interface Surroundings {
	home: string;
	program: string;
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
