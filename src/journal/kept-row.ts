import { lessonOf } from '../session/lesson.ts';
import { readBack, startIn, UnknownRecord } from '../session/read-back.ts';
import type { State } from '../session/state.ts';
import { type SessionStatus, type SessionSummary, sessionSummary, status } from '../session/views.ts';
import type { Lesson } from '../springback/history.ts';
import type { Units } from '../units/units.ts';
import type { KeptSession } from './catalogue.ts';
import type { LogRecord } from './record.ts';

/** What lists, resumes and later sessions need to know of one kept session, without its records. */
export interface KeptRow {
	id: string;
	/** Where its log lies now. */
	path: string;
	/** What its first record says, the id it was begun under too; null where that cannot be read. */
	begun: { job: string; jobFile: string; units: Units; at: string; id: string } | null;
	/** When its newest record was written; '' without any. */
	touched: string;
	/** As far as the log can be read; a session that cannot be folded counts as open: going on with it says what is wrong. */
	status: SessionStatus;
	/** Null where there is a problem. */
	summary: SessionSummary | null;
	/** Why it cannot be gone on with, as a sentence. */
	problem: string | null;
	isDamaged: boolean;
	/** What it taught; of a damaged log, what its whole records before the damage did. */
	lesson: Lesson | null;
}

/** A session's log taken together into its row. */
export function rowOf(kept: KeptSession): KeptRow {
	const { id, path, records } = kept;
	const row = { id, path, begun: begunBy(kept.first), touched: kept.last?.at ?? '' };
	const unknown = { status: 'open', summary: null, lesson: null } as const;
	const own = { problem: kept.problem, isDamaged: kept.damage !== null };
	if (row.begun === null && kept.problem !== null) return { ...row, ...unknown, ...own };
	const state = folded(records);
	if (typeof state === 'string') {
		return { ...row, ...unknown, problem: kept.problem ?? state, isDamaged: kept.problem === null || own.isDamaged };
	}
	const summary = kept.problem === null ? sessionSummary(state) : null;
	return { ...row, status: status(state), summary, ...own, lesson: lessonOf(state) };
}

/** The row of a session that is being left, by its state: the same as its log taken together gives. `touched`: its newest record's time. */
export function rowLeft(path: string, state: State, touched: string): KeptRow {
	const { id, at, job, jobFile } = state.start;
	return {
		id,
		path,
		begun: { job: job.name, jobFile, units: job.units, at, id },
		touched,
		status: status(state),
		summary: sessionSummary(state),
		problem: null,
		isDamaged: false,
		lesson: lessonOf(state),
	};
}

function begunBy(first: LogRecord | null): KeptRow['begun'] {
	if (!first) return null;
	try {
		const { job, jobFile, at, id } = startIn(first);
		return { job: job.name, jobFile, units: job.units, at, id };
	} catch (error) {
		if (error instanceof UnknownRecord) return null;
		throw error;
	}
}

/**
 * The state; or why there is none, as a sentence. Its checksums say that a log is as it was written, not that what wrote it was
 * this program: whatever cannot be folded is that one log's problem, and must not keep another session from beginning.
 */
function folded(records: readonly LogRecord[]): State | string {
	try {
		return readBack(records);
	} catch (error) {
		if (error instanceof UnknownRecord) return error.message;
		return `What the log holds does not follow from one record to the next: ${error instanceof Error ? error.message : error}.`;
	}
}
