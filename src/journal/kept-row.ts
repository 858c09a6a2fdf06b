import { DoesNotFollow, following, readBack, startIn, UnknownRecord } from '../session/log/read-back.ts';
import type { State } from '../session/log/state.ts';
import type { SessionFigures } from '../session/report/figures.ts';
import type { SessionStatus, SessionSummary } from '../session/report/views.ts';
import type { Kin, Lesson } from '../springback/history.ts';
import type { Units } from '../units/units.ts';
import { cameTo, outcomeIn, type SessionOutcome } from './came-to.ts';
import type { ReadSession } from './catalogue.ts';
import type { JournalFault } from './facts.ts';
import type { LogRecord } from './record.ts';

/** The job of a session, as many sessions have it. */
export interface JobNames {
	name: string;
	/** Real path of its file. */
	file: string;
	units: Units;
	bender: string;
	die: string;
	/** As the job has it; absent where it has none. */
	heat?: string;
}

/** What lists say of a session besides its name, its state and its times. */
export type ListedOutcome = Omit<SessionSummary, 'id' | 'job' | 'status' | 'started'>;

/** What lists, resumes and later sessions need to know of one kept session, without its records. */
export interface KeptRow {
	readonly id: string;
	/** Where its log lies now. */
	readonly path: string;
	/** Null where its first record cannot be read. */
	readonly job: JobNames | null;
	/**
	 * When it began, and the id that it began under; '' where its first record cannot be read. Another id than its own is that of a log which
	 * it went on apart from: it teaches nothing, since that one does.
	 */
	readonly at: string;
	readonly startId: string;
	/** When its newest record was written; '' without any. */
	readonly touched: string;
	/** As far as the log can be read; a session that cannot be folded counts as open: going on with it says what is wrong. */
	readonly status: SessionStatus;
	/** Null where there is a problem. */
	readonly listed: ListedOutcome | null;
	/** Why it cannot be gone on with. */
	readonly problem: JournalFault | null;
	readonly isDamaged: boolean;
	/** It was bent elsewhere and taken over from there. */
	readonly isImported: boolean;
	/** The combination that it taught something of, and what; of a damaged log, what its whole records before the damage did. */
	readonly kin: Kin | null;
	/** How many pulls taught it. */
	readonly pulls: number;
	readonly lesson: Lesson | null;
	/** What it comes to beside others; null where there is a problem. */
	readonly figures: SessionFigures | null;
	/** The further combinations that it taught something of, where a tube was bent on several dies. */
	readonly besides: NonNullable<Lesson['besides']>;
}

/** A session's log taken together into its row. `by` its last line, where that says what it came to; or by folding every line. */
export function rowOf(kept: ReadSession, by: 'last-line' | 'fold' = 'last-line'): KeptRow {
	const { id, path, records, problem } = kept;
	const row = { id, path, ...begunBy(kept.first), touched: kept.touched };
	const nothing = { kin: null, pulls: 0, lesson: null, besides: [], figures: null } as const;
	const unknown = { status: 'open', listed: null, ...nothing } as const;
	const isDamaged = kept.damage !== null;
	const isImported = kept.imported !== null;
	if (row.job === null && problem !== null) return { ...row, ...unknown, problem, isDamaged, isImported };
	const outcome = outcomeOfAll(records, by === 'last-line' && problem === null);
	if ('code' in outcome) {
		return { ...row, ...unknown, problem: problem ?? outcome, isDamaged: isDamaged || problem === null, isImported };
	}
	const come = toldOfRow(outcome, problem === null);
	// Practice teaches the practice that it was bent in, and no home that it was taken over to.
	const teaches = row.startId === id && !(isImported && come.listed?.simulated);
	const taught = teaches ? {} : { kin: null, pulls: 0, lesson: null, besides: [], figures: null };
	return { ...row, ...come, ...taught, problem, isDamaged, isImported };
}

/** All that a list says of a session, as programs read it; null where there is a problem. */
export function summaryOf({ id, job, status, at, listed }: KeptRow): SessionSummary | null {
	return listed && { id, job: job?.name ?? '', status, started: at, ...listed };
}

/** The row of a session that is being left, by its state: the same as its log taken together gives. `touched`: its newest record's time. */
export function rowLeft(path: string, { start }: State, touched: string, outcome: SessionOutcome): KeptRow {
	const names = { id: start.id, path, ...namesOf(start) };
	return { ...names, touched, ...toldOfRow(outcome, true), problem: null, isDamaged: false, isImported: false };
}

type ToldOfRow = Pick<KeptRow, 'status' | 'listed' | 'kin' | 'pulls' | 'lesson' | 'besides' | 'figures'>;

function toldOfRow({ status, summary, lesson, figures }: SessionOutcome, isWhole: boolean): ToldOfRow {
	const taught = { kin: lesson?.kin ?? null, pulls: lesson?.pulls ?? 0, lesson, besides: lesson?.besides ?? [] };
	return isWhole
		? { status, listed: outcomeOf(summary), ...taught, figures }
		: { status, listed: null, ...taught, figures: null };
}

function outcomeOf({ id, job, status, started, ...listed }: SessionSummary): ListedOutcome {
	return listed;
}

function begunBy(first: LogRecord | null): Pick<KeptRow, 'job' | 'at' | 'startId'> {
	const unknown = { job: null, at: '', startId: '' };
	if (!first) return unknown;
	try {
		return namesOf(startIn(first));
	} catch (error) {
		if (error instanceof UnknownRecord) return unknown;
		throw error;
	}
}

function namesOf({ job, jobFile, at, id }: State['start']): Pick<KeptRow, 'job' | 'at' | 'startId'> {
	const { name, units, tube, tooling } = job;
	const { bender, die } = tooling;
	const { heat } = tube ?? {};
	return {
		job: { name, file: jobFile, units, bender, die, ...(typeof heat === 'string' && { heat }) },
		at,
		startId: id,
	};
}

/**
 * What it comes to; or why it comes to nothing. Its checksums say that a log is as it was written, not that what wrote it was
 * this program: whatever cannot be folded is that one log's problem, and must not keep another session from beginning.
 */
function outcomeOfAll(records: readonly LogRecord[], believesLast: boolean): SessionOutcome | JournalFault {
	try {
		const said = believesLast ? outcomeIn(records.at(-1)!, startIn(records[0]!)) : null;
		if (said !== null) return said;
		const state = readBack(records);
		return following(() => cameTo(state));
	} catch (error) {
		if (error instanceof UnknownRecord || error instanceof DoesNotFollow) return error.fact;
		throw error;
	}
}
