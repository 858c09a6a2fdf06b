import { realpathSync } from 'node:fs';
import { readBack, startIn } from '../session/read-back.ts';
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
 * The readable sessions of a job, the one with the newest record first: those started from the same real path, and where there
 * is none, those of a job of the same name. Damaged ones are left out here; `log` lists them.
 */
export function sessionsOfJob(home: string, jobFile: string, jobName: string): JobSession[] {
	const sessions = listSessions(home).flatMap(jobSession);
	const file = realPath(jobFile);
	const samePath = sessions.filter(({ start }) => start.jobFile === file);
	const chosen = samePath.length > 0 ? samePath : sessions.filter(({ start }) => start.job.name === jobName);
	return chosen.sort((a, b) => (a.touched < b.touched ? 1 : -1));
}

function jobSession(kept: KeptSession): JobSession[] {
	if (!kept.first || !kept.last || kept.problem !== null) return [];
	const state = readBack(kept.records);
	return [{ kept, start: startIn(kept.first), status: status(state), touched: kept.last.at }];
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
