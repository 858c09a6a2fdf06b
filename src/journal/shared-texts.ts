import type { Kin, Lesson } from '../springback/history.ts';
import type { JobNames, KeptRow, ListedOutcome } from './kept-row.ts';

/** What of a row does not follow from its id and its numbers. */
export type Odd = Pick<KeptRow, 'path' | 'at' | 'startId' | 'touched' | 'problem'>;

/** The further dies that a session was bent on, and how many pulls taught of each. */
export type FurtherDies = NonNullable<Lesson['besides']>;

/** What many rows share, each once; and what few have. */
export interface Texts {
	jobs: JobNames[];
	listed: ListedOutcome[];
	kin: Kin[];
	besides: FurtherDies[];
	odd: Odd[];
}
