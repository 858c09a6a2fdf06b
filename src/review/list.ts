import type { KeptSession } from '../journal/catalogue.ts';
import { readBack, UnknownRecord } from '../session/read-back.ts';
import { type SessionSummary, sessionSummary } from '../session/views.ts';

/** A kept session in a line; one that cannot be gone on with has its problem instead, and whether that is damage to its log. */
export type Listed = { kept: KeptSession } & ({ summary: SessionSummary } | { problem: string; isDamaged: boolean });

export function listed(kept: KeptSession): Listed {
	if (kept.problem !== null) return { kept, problem: kept.problem, isDamaged: kept.damage !== null };
	try {
		return { kept, summary: sessionSummary(readBack(kept.records)) };
	} catch (error) {
		if (!(error instanceof UnknownRecord)) throw error;
		return { kept, problem: error.message, isDamaged: true };
	}
}

/** The sessions as a table of text, newest first. */
export function listText(sessions: readonly Listed[]): string {
	if (sessions.length === 0) return 'No session has been kept yet. Start one: pullbook bend JOB';
	return sessions.map(lineOf).join('\n');
}

function lineOf(session: Listed): string {
	if ('problem' in session) return `${session.kept.id}  ${session.problem}`;
	const { id, job, status, bendsDone, bends, fits } = session.summary;
	const outcome = fits === null ? '' : fits ? ', fits' : ', does not fit';
	return `${id}  ${status.padEnd(8)}  ${bendsDone} of ${bends} bends${outcome}  ${job}`;
}
