import { type FsPort, realFs } from '../files/fs-port.ts';
import { heatOf } from '../session/batch/given.ts';
import { countedPieces, isLaidOutAlike, type Pieces } from '../session/batch/pieces.ts';
import { readBack } from '../session/log/read-back.ts';
import { growthOf } from '../session/log/start.ts';
import type { PlannedGrowth } from '../tube/growth.ts';
import type { BentAs, Job } from '../tube/job.ts';
import { readSession } from './catalogue.ts';
import { newestFirst, sessionsOfJob } from './find.ts';
import type { KeptRow } from './kept-row.ts';

/** A job as its pieces are found: those of the other hand are other parts. */
export interface JobAs {
	path: string;
	name: string;
	as: BentAs;
}

/**
 * The sessions of a job and hand, the one with the newest record first. A damaged log, which does not say how it was bent, is none of them, nor is one
 * that was left unfinished on another machine.
 */
export function piecesOfJob(rows: readonly KeptRow[], { path, name, as }: JobAs): KeptRow[] {
	return sessionsOfJob(rows, path, name).filter(
		({ listed, status, isImported }) =>
			listed !== null && (listed.bentAs?.mirror ?? false) === as.mirror && !(isImported && status === 'open'),
	);
}

/** How those sessions stand. */
export function countRows(sessions: readonly KeptRow[], wanted: number): Pieces {
	const rows = sessions.map(({ status, listed }) => ({
		status,
		...(listed?.piece !== undefined && { piece: listed.piece }),
	}));
	return countedPieces(rows, wanted);
}

/** What a new session knows of the pieces before it. */
export interface NewPiece {
	/** Its number among the pieces of its job. */
	piece?: number;
	/** What its tube's heat is taken for, where the piece before was told to be of another than the job's. */
	heat?: string;
	/** Whether it is cut and marked as the piece before, or the job has changed since; absent where nothing before it compares. */
	alike?: boolean;
	/** What the piece before was laid out with, where the two are cut and marked alike. */
	growth?: PlannedGrowth;
}

/** Where kept sessions are read. */
export interface KeptWhere {
	home: string;
	rescue?: string | null;
	fs?: FsPort;
}

/** A new session's place among the sessions of its job and hand. */
export function newPieceOf(
	{ home, rescue = null, fs = realFs }: KeptWhere,
	sessions: readonly KeptRow[],
	job: Job,
): NewPiece {
	const { next: piece } = countRows(sessions, job.quantity);
	const [newest] = newestFirst(sessions, ({ at }) => at);
	if (newest === undefined) return { piece };
	const { start, entries } = readBack(readSession(home, newest.id, fs, rescue).records);
	const heat = heatOf({ start, entries });
	// A number that was written into the job since is the newer word.
	const isOther = heat !== null && start.job.tube.heat === job.tube.heat && heat !== job.tube.heat;
	const told = { piece, ...(isOther && { heat }) };
	if (start.corners === undefined) return told;
	const alike = isLaidOutAlike(start, job);
	return { ...told, alike, ...(alike && { growth: growthOf(start) }) };
}
