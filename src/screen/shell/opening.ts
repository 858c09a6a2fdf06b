import { newerDamagedWords } from '../../words/session-list.ts';
import type { SessionRow } from '../home/home-port.ts';
import type { HomePage } from '../home/home-view.ts';
import type { Message } from '../session/session-state.ts';

/** What the screen opens with: the home page, or a job's session. */
export interface ScreenOpening {
	jobPath?: string;
	/** What the job of that file is called: by it sessions of a file that was moved are found. */
	jobName?: string;
	/** Go on with the job's newest interrupted session, or with the session of that id, without asking. */
	resume?: boolean | string;
}

/** The id of the session to go on with, or the one to offer; null: begin. Where it is named nobody looks at the sessions. */
export function leftOpen(opening: ScreenOpening, sessions: () => readonly SessionRow[]): string | SessionRow | null {
	if (typeof opening.resume === 'string') return opening.resume;
	const left = opening.resume === false ? undefined : interrupted(sessions(), opening);
	if (left === undefined) return null;
	return opening.resume === true ? left.id : left;
}

/** A job's session that was interrupted here, the newest: one started from its file, and where none was, one of a job of its name. */
function interrupted(
	sessions: readonly SessionRow[],
	{ jobPath, jobName }: Pick<ScreenOpening, 'jobPath' | 'jobName'>,
): SessionRow | undefined {
	const own = sessions.filter(({ path }) => path === jobPath);
	const all = own.length > 0 ? own : sessions.filter(({ job }) => job === jobName);
	return all.find(({ status, imported }) => status === 'open' && !imported);
}

/** The page that asks whether to go on with a session. `path`: of its job. */
export function offerPageOf(left: SessionRow, path = left.path ?? left.job): HomePage {
	return { page: 'offer', job: { path, name: left.job, summary: '', open: left.id, latest: left } };
}

/** A damaged log that may be this job's newest session: what is offered is an older one. */
export function newerDamaged(sessions: readonly SessionRow[], left: SessionRow): Message | null {
	const newer = sessions.slice(0, sessions.indexOf(left));
	const damaged = newer.find(({ status, path }) => status === 'damaged' && (path === undefined || path === left.path));
	return damaged === undefined ? null : { kind: 'wrong', text: newerDamagedWords(damaged.id) };
}
