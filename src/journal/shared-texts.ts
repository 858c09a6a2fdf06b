import type { SessionSummary } from '../session/report/views.ts';
import type { Kin, Lesson } from '../springback/history.ts';
import type { JobNames, KeptRow } from './kept-row.ts';

export type ListedOutcome = Omit<SessionSummary, 'id' | 'job' | 'status' | 'started'>;

export function outcomeOf({ id, job, status, started, ...outcome }: SessionSummary): ListedOutcome {
	return outcome;
}

/** A row's summary from what rows share. */
export function summaryOf(
	row: Pick<KeptRow, 'id' | 'status' | 'at'>,
	job: JobNames,
	outcome: ListedOutcome,
): SessionSummary {
	const { id, status } = row;
	return {
		id,
		job: job.name,
		status,
		// Writing out a time takes as long as all the rest.
		get started() {
			return row.at;
		},
		...outcome,
	};
}

/** What of a row does not follow from its id and its numbers. */
export type Odd = Pick<KeptRow, 'path' | 'at' | 'startId' | 'touched' | 'problem'> & {
	/** The part of a lesson of several dies that is not as long as others'. */
	several?: Required<Pick<Lesson, 'besides' | 'information' | 'vector'>>;
};

/** What many rows share; and by id, what few have. */
export interface Texts {
	jobs: JobNames[];
	outcomes: ListedOutcome[];
	kin: Kin[];
	odd: Record<string, Odd>;
}
