import type { Fault } from '../../job/facts/index.ts';
import type { Pieces } from '../../session/batch/pieces.ts';
import type { SessionSummary } from '../../session/report/views.ts';
import type { BentAs } from '../../tube/job.ts';
import type { WorkshopPort } from '../benders/workshop-port.ts';
import type { Opened } from '../review/review-port.ts';
import type { LivePort } from '../session/live-port.ts';

/** A job file, as the home screen lists it. */
export interface JobRow {
	path: string;
	name: string;
	/** In a few words: bends, tube, material. */
	summary: string;
	/** How many bends in words, and diameter and wall with their unit; absent where they cannot be read. */
	bends?: string;
	tube?: string;
	/** What is wrong with the file, when it cannot be bent. */
	faults?: readonly Fault[];
	/** It comes with the program: to be bent and copied, not to be changed. */
	sample?: true;
	/** The id of its newest session that was interrupted. */
	open?: string;
	/** Its newest session. */
	latest?: SessionRow;
	/** How its pieces stand, where several are wanted. */
	pieces?: Pieces;
}

/** A kept session, as the home screen lists it. */
export interface SessionRow extends Omit<SessionSummary, 'status'> {
	/** The job file it was started from. */
	path?: string;
	status: SessionSummary['status'] | 'damaged';
	/** It was bent elsewhere: nobody goes on with it here unasked. */
	imported?: boolean;
	/** When it was started, as a person reads it. */
	started: string;
	bender?: string;
	die?: string;
	/** Absent where the job has none. */
	heat?: string;
	/** What is searched of it, where it is at hand: there may be thousands. */
	searched?: string;
}

/** What the screen needs of the rest of the program. */
export interface HomePort {
	/** As they read at a glance, where there is `checkedJobs`. */
	jobs(): readonly JobRow[];
	/** The same read through, with what is wrong with each; it takes longer than a first frame may. */
	checkedJobs?(): readonly JobRow[];
	/** Newest first. */
	sessions(): readonly SessionRow[];
	/** What is to be said about them, in a sentence. */
	notice?(): string | null;
	/**
	 * Starts a session of the job file, or goes on with the session of that id. `as`: hand and end of a new one; left out: as the command
	 * line has it.
	 * @throws an error with `exitCode`: 2 bad job, 4 another session holds the lock, 5 the disk refuses, 6 the log is damaged
	 */
	openSession(jobPathOrId: string, resume: boolean, as?: BentAs): Promise<LivePort>;
	/**
	 * Begins another of the same after the session of that id; left out where there is none.
	 * @throws as `openSession`
	 */
	another?(id: string): Promise<LivePort>;
	/**
	 * A kept session to be looked at.
	 * @throws an error with `exitCode` where there is none that can be read
	 */
	story(id: string): Opened;
	/** Its review as one text, line by line. */
	review(id: string): readonly string[];
	/** The benders and dies set up, line by line. */
	benders(): Promise<readonly string[]>;
	/**
	 * Writes the shop sheet of a job as a PDF, under a name that is free, and gives that name.
	 * @throws an error with `exitCode`: 2 bad job, 5 the disk refuses
	 */
	printSheet(path: string, sample: boolean): Promise<string>;
	/**
	 * Writes the record of a kept session as a PDF beside its job, under a name that is free, and gives that name.
	 * @throws an error with `exitCode`: 2 nothing that can be read, 5 the disk refuses
	 */
	printRecord(id: string): Promise<string>;
	/** Job files to be written, and benders to be set up. */
	readonly workshop: WorkshopPort;
}
