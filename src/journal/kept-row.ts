import { lessonOf } from '../session/estimate/lesson-of-session.ts';
import { DoesNotFollow, following, readBack, startIn, UnknownRecord } from '../session/log/read-back.ts';
import type { State } from '../session/log/state.ts';
import { figuresOf, type SessionFigures } from '../session/report/figures.ts';
import { type SessionStatus, type SessionSummary, sessionSummary, status } from '../session/report/views.ts';
import type { Kin, Lesson } from '../springback/history.ts';
import type { Units } from '../units/units.ts';
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

/** What lists, resumes and later sessions need to know of one kept session, without its records. */
export interface KeptRow {
	readonly id: string;
	/** Where its log lies now. */
	readonly path: string;
	/** Null where its first record cannot be read. */
	readonly job: JobNames | null;
	/** When it began, and the id that it began under; '' where its first record cannot be read. */
	readonly at: string;
	readonly startId: string;
	/** When its newest record was written; '' without any. */
	readonly touched: string;
	/** As far as the log can be read; a session that cannot be folded counts as open: going on with it says what is wrong. */
	readonly status: SessionStatus;
	/** Null where there is a problem. */
	readonly summary: SessionSummary | null;
	/** Why it cannot be gone on with. */
	readonly problem: JournalFault | null;
	readonly isDamaged: boolean;
	/** The combination that it taught something of, and what; of a damaged log, what its whole records before the damage did. */
	readonly kin: Kin | null;
	/** How many pulls taught it. */
	readonly pulls: number;
	readonly lesson: Lesson | null;
	/** What it comes to beside others; null where there is a problem. */
	readonly figures: SessionFigures | null;
}

/** A session's log taken together into its row. */
export function rowOf(kept: ReadSession): KeptRow {
	const { id, path, records, problem } = kept;
	const row = { id, path, ...begunBy(kept.first), touched: kept.touched };
	const unknown = { status: 'open', summary: null, kin: null, pulls: 0, lesson: null, figures: null } as const;
	const isDamaged = kept.damage !== null;
	if (row.job === null && problem !== null) return { ...row, ...unknown, problem, isDamaged };
	const told = folded(records, problem === null);
	if ('code' in told) {
		return { ...row, ...unknown, problem: problem ?? told, isDamaged: isDamaged || problem === null };
	}
	return { ...row, ...told, problem, isDamaged };
}

/** The row of a session that is being left, by its state: the same as its log taken together gives. `touched`: its newest record's time. */
export function rowLeft(path: string, state: State, touched: string): KeptRow {
	const { id } = state.start;
	const names = { id, path, ...namesOf(state.start) };
	return { ...names, touched, ...foldedInto(state, true), problem: null, isDamaged: false };
}

type Folded = Pick<KeptRow, 'status' | 'summary' | 'kin' | 'pulls' | 'lesson' | 'figures'>;

function foldedInto(state: State, isWhole: boolean): Folded {
	const lesson = lessonOf(state);
	const summary = isWhole ? sessionSummary(state) : null;
	const figures = isWhole ? figuresOf(state, lesson) : null;
	return { status: status(state), summary, kin: lesson?.kin ?? null, pulls: lesson?.pulls ?? 0, lesson, figures };
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
function folded(records: readonly LogRecord[], isWhole: boolean): ReturnType<typeof foldedInto> | JournalFault {
	try {
		const state = readBack(records);
		return following(() => foldedInto(state, isWhole));
	} catch (error) {
		if (error instanceof UnknownRecord || error instanceof DoesNotFollow) return error.fact;
		throw error;
	}
}
