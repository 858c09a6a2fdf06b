import { isCount } from '../session/log/form/is.ts';
/**
 * What a session came to, kept in the line that ends a sitting: so that its log need not be folded to be listed and learned from. Nothing
 * depends on it; a log without it, of another method or cut short, is folded.
 */

import { begunAs } from '../session/batch/given.ts';
import { lessonOf } from '../session/estimate/lesson-of-session.ts';
import type { Start } from '../session/log/start.ts';
import type { State } from '../session/log/state.ts';
import { figuresOf, type SessionFigures } from '../session/report/figures.ts';
import {
	SESSION_STATUSES,
	type SessionStatus,
	type SessionSummary,
	sessionSummary,
	status,
} from '../session/report/views.ts';
import type { Lesson } from '../springback/history.ts';
import { bentAsField } from '../tube/bent-as.ts';
import type { Job } from '../tube/job.ts';
import { methodName } from './method-name.ts';
import type { LogRecord } from './record.ts';
import { isNumbers, lessonWritten, type WrittenLesson, writtenLesson } from './written-lesson.ts';

/** What a log taken together comes to, apart from where it lies. */
export interface SessionOutcome {
	readonly status: SessionStatus;
	readonly summary: SessionSummary;
	readonly lesson: Lesson | null;
	readonly figures: SessionFigures;
}

/** The same in a log's line: only what does not stand in its first line already. */
interface CameTo {
	method: string;
	status: SessionStatus;
	bendsDone: number;
	bends: number;
	fits: boolean | null;
	mayFit: boolean;
	/** Null where it taught nothing. */
	lesson: WrittenLesson | null;
	figures: SessionFigures;
}

export function cameTo(state: State): SessionOutcome {
	const lesson = lessonOf(state);
	return { status: status(state), summary: sessionSummary(state), lesson, figures: figuresOf(state, lesson) };
}

/** The fields by which the last line of a session of this job says it. */
export function cameToField({ status, summary, lesson, figures }: SessionOutcome, job: Job): { cameTo: CameTo } {
	const { bendsDone, bends, fits, mayFit = false } = summary;
	const taught = lesson && writtenLesson(lesson, job);
	return { cameTo: { method: methodName(), status, bendsDone, bends, fits, mayFit, lesson: taught, figures } };
}

/** What the session of this start came to, by its last line; null where that does not say so in the way of this program. */
export function outcomeIn(last: LogRecord, start: Start): SessionOutcome | null {
	const said = last.cameTo;
	if (!isCameTo(said) || said.method !== methodName()) return null;
	const { job, at, id } = start;
	const lesson = said.lesson && lessonWritten(said.lesson, start);
	if (lesson === null && said.lesson !== null) return null;
	const { bendsDone, bends, fits, mayFit } = said;
	const summary = { id, job: job.name, status: said.status, started: at, bendsDone, bends };
	return {
		status: said.status,
		summary: { ...summary, fits, ...(mayFit ? { mayFit: true } : {}), ...begunAs(start), ...bentAsField(job) },
		lesson,
		figures: said.figures,
	};
}

/** Checksums say that a line is as it was written, not by whom: what has not its form is as if it were not there. */
function isCameTo(said: unknown): said is CameTo {
	if (typeof said !== 'object' || said === null) return false;
	const { method, status, bendsDone, bends, fits, mayFit, lesson, figures } = said as Partial<
		Record<keyof CameTo, unknown>
	>;
	return (
		typeof method === 'string' &&
		SESSION_STATUSES.some((known) => known === status) &&
		isCount(bendsDone) &&
		isCount(bends) &&
		(fits === null || typeof fits === 'boolean') &&
		typeof mayFit === 'boolean' &&
		(lesson === null || typeof lesson === 'object') &&
		isFigures(figures)
	);
}

function isFigures(said: unknown): boolean {
	if (typeof said !== 'object' || said === null) return false;
	const { springback, error, miss, taken, pulls } = said as Partial<Record<keyof SessionFigures, unknown>>;
	return isNumbers([springback, error, miss]) && isCount(taken) && isCount(pulls);
}
