import { readSession } from '../journal/catalogue.ts';
import type { KeptRow } from '../journal/kept-row.ts';
import type { LiveSession } from '../journal/live.ts';
import { countRows, piecesOfJob } from '../journal/pieces.ts';
import { type Batch, batchOf } from '../session/batch/batch.ts';
import { type PieceFacts, pieceFacts } from '../session/batch/piece-facts.ts';
import { readBack } from '../session/log/read-back.ts';
import { bentAsOf } from '../tube/bent-as.ts';

/** Of a longer batch the newest tell enough, and reading more would keep one waiting. */
const LATEST = 30;

/**
 * What a session's batch has come to once the session is over; null where it is a single tube. `rows`: the kept sessions as they are now. Logs
 * that were read once are remembered.
 */
export function batchAt(home: string, rows: () => readonly KeptRow[]): (session: LiveSession) => Batch | null {
	const known = new Map<string, PieceFacts>();
	const factsOf = (id: string): PieceFacts => {
		const found = known.get(id) ?? pieceFacts(readBack(readSession(home, id).records), Date.parse);
		known.set(id, found);
		return found;
	};
	return ({ id, state }) => {
		const { job, jobFile, piece } = state.start;
		if (piece === undefined && job.quantity === 1) return null;
		known.set(id, pieceFacts(state, Date.parse));
		const sessions = piecesOfJob(rows(), { path: jobFile, name: job.name, as: bentAsOf(job) });
		const inOrder = [...sessions].sort((a, b) => (a.at < b.at ? -1 : 1));
		const made = inOrder.filter(({ status }) => status === 'done').slice(-LATEST);
		const unfinished = inOrder.filter(({ status }) => status === 'open');
		return batchOf(
			countRows(sessions, job.quantity),
			made.map((row) => factsOf(row.id)),
			unfinished.map((row) => ({ id: row.id, piece: row.listed?.piece ?? null })),
		);
	};
}
