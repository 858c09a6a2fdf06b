import type { Kin, Lesson } from '../springback/history.ts';
import type { KeptRow, ListedOutcome } from './kept-row.ts';

/** What of a row does not follow from its id and its numbers. */
export type Odd = Pick<KeptRow, 'path' | 'at' | 'startId' | 'touched' | 'problem'> & {
	/** The part of a lesson of several dies that is not as long as others'. */
	several?: Required<Pick<Lesson, 'besides' | 'information' | 'vector'>>;
};

/** What many rows share, each once; and what few have. */
export interface Texts {
	names: string[];
	listed: ListedOutcome[];
	kin: Kin[];
	odd: Odd[];
}
