import {
	FITS,
	MARKS,
	type MarkName,
	type Narrowing,
	type Sorting,
	type TableSession,
} from '../../review/session-table.ts';
import type { SessionSummary } from '../../session/report/views.ts';
import { pieceBrief } from '../batch.ts';
import { bentAsBrief } from '../bent-as.ts';
import { counted } from '../counted.ts';
import { foreign, foreignName } from '../foreign.ts';
import { fitWords, markWords, STATUS_WORDS } from '../session-list.ts';

/** What the list of kept sessions says, and the pages that narrow and sort it. */

type ListRow = TableSession &
	Pick<SessionSummary, 'mayFit' | 'simulated' | 'bentAs' | 'piece' | 'quantity'> & { imported?: boolean };

export const LIST_WORDS = {
	title: 'Kept sessions',
	where: (found: number, all: number): string => (found === all ? `${found}` : `${found} of ${all}`),
	label: 'Number of your choice, or letters to search',
	first: 'review the first',
	empty: 'Write the number of a choice and press Enter; letters search; * narrows and sorts.',
	none: 'No session is like that. Press / to see all again.',
} as const;

/** In columns, so that one looks down them: when, what came of it, which job. */
export function rowBrief(row: ListRow): string {
	const { started, status, job, bentAs } = row;
	const came = (fitWords(row) || STATUS_WORDS[status]).padEnd(12);
	return `${foreign(started.slice(0, 16))}  ${came}  ${foreignName(job)}${bentAsBrief(bentAs)}${pieceBrief(row)}${markWords(row)}`;
}

/** Behind that, where there is room for it: bender and heat. */
export function rowMarks({ bender, heat }: Pick<TableSession, 'bender' | 'heat'>): string {
	const marks = [bender, heat === undefined ? undefined : `heat ${heat}`].flatMap((mark) => mark ?? []);
	return marks.length === 0 ? '' : ` (${marks.map(foreignName).join(', ')})`;
}

const MARK_WORDS: Readonly<Record<MarkName, string>> = {
	job: 'job',
	bender: 'bender',
	heat: 'heat',
	date: 'date',
	fits: 'outcome',
};

export const SORT_WORDS: Readonly<Record<Sorting, string>> = {
	newest: 'newest first',
	oldest: 'oldest first',
	job: 'by job',
	bender: 'by bender',
};

function valueWords(mark: MarkName, value: string): string {
	if (mark === 'fits') return value === FITS.yes ? 'fits' : 'does not fit';
	return foreignName(value);
}

/** To what the list is narrowed, and how it is sorted where that is not the usual way. */
export function narrowedWords(by: Narrowing, sort: Sorting | null): string {
	const only = MARKS.flatMap((mark) => {
		const value = by[mark];
		return value === undefined ? [] : [`${MARK_WORDS[mark]} ${valueWords(mark, value)}`];
	});
	const parts = only.length === 0 ? [] : [`Only ${only.join(', ')}`];
	if (sort !== null) parts.push(parts.length === 0 ? `Sorted: ${SORT_WORDS[sort]}` : SORT_WORDS[sort]);
	return `${parts.join('; ')}.`;
}

export const NARROW = {
	title: 'Narrow and sort',
	sortTitle: 'Sort the list',
	oneTitle: (mark: MarkName): string => `Only one ${MARK_WORDS[mark]}`,
	only: 'Only',
	one: (mark: MarkName, now: string | undefined): string =>
		`one ${MARK_WORDS[mark]}${now === undefined ? '' : ` (now ${valueWords(mark, now)})`}`,
	order: 'Order',
	sort: (now: Sorting): string => `sort: now ${SORT_WORDS[now]}`,
	allAgain: 'all again, newest first',
	value: (mark: MarkName, value: string, count: number): string =>
		`${valueWords(mark, value)}: ${counted(count, 'session')}`,
	any: 'any',
	none: 'No session here says which. Press / to go back.',
} as const;
