/** The list of sessions as rows of a table for other programs. */
import type { KeptRow } from '../journal/kept-row.ts';

/** What a cell holds; null: nothing to say. */
export type CsvCell = string | number | boolean | null;

/** A column's name, and what stands in it. */
export type CsvColumn<T> = readonly [name: string, of: (row: T) => CsvCell];

/** In their order, which stays: new ones come last. Times in UTC, angles in degrees. */
export const LIST_COLUMNS: readonly CsvColumn<KeptRow>[] = [
	['id', ({ id }) => id],
	['job', ({ job }) => job?.name ?? null],
	['status', ({ status, isDamaged }) => (isDamaged ? 'damaged' : status)],
	['started', ({ at }) => at],
	['bender', ({ job }) => job?.bender ?? null],
	['die', ({ job }) => job?.die ?? null],
	['heat', ({ job }) => job?.heat ?? null],
	['bends_done', ({ listed }) => listed?.bendsDone ?? null],
	['bends', ({ listed }) => listed?.bends ?? null],
	['fits', ({ listed }) => listed?.fits ?? null],
	['may_fit', ({ listed }) => listed?.mayFit ?? null],
	['pulls', ({ figures }) => figures?.pulls ?? null],
	['springback_45', ({ figures }) => figures?.springback ?? null],
	['error', ({ figures }) => figures?.error ?? null],
	['first_pull_miss', ({ figures }) => figures?.miss ?? null],
	['imported', ({ isImported }) => isImported],
];
