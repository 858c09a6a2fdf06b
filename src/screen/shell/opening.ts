import { newerDamagedWords } from '../../words/session-list.ts';
import type { SessionRow } from '../home/home-port.ts';
import type { Message } from '../session/session-state.ts';

/** What the screen opens with: the home page, or a job's session. */
export interface ScreenOpening {
	jobPath?: string;
	/** Go on with the job's newest interrupted session, or with the session of that id, without asking. */
	resume?: boolean | string;
}

/** A damaged log that may be this job's newest session: what is offered is an older one. */
export function newerDamaged(sessions: readonly SessionRow[], left: SessionRow): Message | null {
	const newer = sessions.slice(0, sessions.indexOf(left));
	const damaged = newer.find(({ status, path }) => status === 'damaged' && (path === undefined || path === left.path));
	return damaged === undefined ? null : { kind: 'wrong', text: newerDamagedWords(damaged.id) };
}
