import { realpathSync } from 'node:fs';
import { readBack, startIn, UnknownRecord } from '../session/read-back.ts';
import type { Start } from '../session/start.ts';
import type { SessionStatus } from '../session/views.ts';
import { status } from '../session/views.ts';
import type { KeptSession } from './catalogue.ts';
import { listSessions } from './catalogue.ts';

export interface JobSession {
	kept: KeptSession;
	start: Start;
	status: SessionStatus;
	/** When its newest record was written. */
	touched: string;
}

/**
 * The sessions of a job, the one with the newest record first: those started from the same real path, and where there
 * is none, those of a job of the same name.
 */
export function sessionsOfJob(home: string, jobFile: string, jobName: string): JobSession[] {
	const kept = listSessions(home).flatMap((session) => startOf(session));
	const file = realPath(jobFile);
	const samePath = kept.filter(({ start }) => start.jobFile === file);
	const chosen = samePath.length > 0 ? samePath : kept.filter(({ start }) => start.job.name === jobName);
	return chosen.map(folded).sort((a, b) => (a.touched < b.touched ? 1 : -1));
}

/** Only a session of this job is folded: most of what is kept belongs to others. */
function startOf(kept: KeptSession): { kept: KeptSession; start: Start }[] {
	if (!kept.first) return [];
	try {
		return [{ kept, start: startIn(kept.first) }];
	} catch (error) {
		if (error instanceof UnknownRecord) return [];
		throw error;
	}
}

/** A damaged or newer log counts as open as far as it can be read: going on with it then says what is wrong. */
function folded({ kept, start }: { kept: KeptSession; start: Start }): JobSession {
	const touched = kept.last?.at ?? start.at;
	try {
		return { kept, start, status: status(readBack(kept.records)), touched };
	} catch (error) {
		if (!(error instanceof UnknownRecord)) throw error;
		return { kept, start, status: 'open', touched };
	}
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
