/** Many sessions as a table: searched, narrowed and sorted. The list on the screen and that of the command line go by this. */
import type { SessionStatus } from '../session/report/views.ts';

/** What a list knows of a session. */
export interface TableSession {
	id: string;
	job: string;
	/** Absent where the log does not tell; the heat also where the job has none. */
	bender?: string;
	die?: string;
	heat?: string;
	status: SessionStatus | 'damaged';
	/** When it began, as the clock on the wall had it: year, month, day, then the time. */
	started: string;
	fits: boolean | null;
	/** What is searched of it, where it is at hand: there may be thousands. */
	searched?: string;
}

/** By which of their marks sessions can be narrowed. */
export const MARKS = ['job', 'bender', 'heat', 'date', 'fits'] as const;
export type MarkName = (typeof MARKS)[number];
/** Only sessions with these, capitals or not; of a date its beginning: `2026-11`, `2026-11-26`. */
export type Narrowing = Readonly<Partial<Record<MarkName, string>>>;
export const SORTINGS = ['newest', 'oldest', 'job', 'bender'] as const;
export type Sorting = (typeof SORTINGS)[number];

/** Which sessions are wanted: those with all of it. */
export interface WantedSessions {
	by: Narrowing;
	/** Begun on that day or later: `2026-11-26`. */
	since?: string;
	/** Each word stands somewhere in what is searched of a session, or is the day or month it began on; capitals or not. */
	words: string;
}

/** A value that sessions can be narrowed to, and how many have it. */
export interface MarkValue {
	value: string;
	count: number;
}

/** The values of the mark `fits`: finished tubes that fit, or that do not surely fit. */
export const FITS = { yes: 'yes', no: 'no' } as const;
const MONTH = '2026-11'.length;
const DAY = '2026-11-26'.length;
const DATE = /^\d{4}-\d\d(-\d\d)?$/;

const VALUE_OF: Readonly<Record<MarkName, (row: TableSession) => string | undefined>> = {
	job: ({ job }) => job,
	bender: ({ bender }) => bender,
	heat: ({ heat }) => heat,
	date: ({ started }) => started,
	// Nobody asks whether what is not finished fits.
	fits: (row) => (row.status !== 'done' || row.fits === null ? undefined : row.fits ? FITS.yes : FITS.no),
};

/** The words that are searched for, in small letters: each must be found. */
export const searchedWords = (search: string): string[] => search.toLowerCase().split(/\s+/).filter(Boolean);

/** Those of the rows that are wanted. `textOf`: what is searched of the row in that place, in small letters. */
export function narrowed<Row extends TableSession>(
	rows: readonly Row[],
	{ by, since, words }: WantedSessions,
	textOf: (row: Row, place: number) => string,
): Row[] {
	const marks = MARKS.flatMap((mark) => (by[mark] === undefined ? [] : [[mark, by[mark].toLowerCase()] as const]));
	const searched = searchedWords(words);
	if (marks.length === 0 && searched.length === 0 && since === undefined) return [...rows];
	const hasAll = (row: Row, place: number) => {
		const text = textOf(row, place);
		return searched.every((word) => text.includes(word) || (DATE.test(word) && has(row, 'date', word)));
	};
	// There may be thousands of rows: what takes longest is looked at last.
	return rows.filter(
		(row, place) =>
			marks.every(([mark, value]) => has(row, mark, value)) &&
			(searched.length === 0 || hasAll(row, place)) &&
			(since === undefined || row.started >= since),
	);
}

/** `value` in small letters. */
function has(row: TableSession, mark: MarkName, value: string): boolean {
	const own = VALUE_OF[mark](row)?.toLowerCase() ?? '';
	return mark === 'date' ? own.startsWith(value) : own === value;
}

/** `rows` come newest first; those that are alike keep that order. */
export function sorted<Row extends TableSession>(rows: readonly Row[], by: Sorting): Row[] {
	if (by === 'newest') return [...rows];
	if (by === 'oldest') return rows.toReversed();
	const own = (row: Row) => VALUE_OF[by](row) ?? '';
	return rows.toSorted((a, b) => own(a).localeCompare(own(b), 'en'));
}

/** What these rows can be narrowed to by a mark, the most frequent first; dates by month, of a month by day, the newest first. */
export function markValues(rows: readonly TableSession[], mark: MarkName, by: Narrowing = {}): MarkValue[] {
	const length = by.date === undefined ? MONTH : DAY;
	const counts = new Map<string, MarkValue>();
	for (const row of rows) {
		const own = VALUE_OF[mark](row);
		const value = mark === 'date' ? own?.slice(0, length) : own;
		if (value === undefined || value === '') continue;
		// As they are narrowed, capitals or not; the newest is how it is written.
		const known = counts.get(value.toLowerCase());
		if (known === undefined) counts.set(value.toLowerCase(), { value, count: 1 });
		else known.count++;
	}
	const values = [...counts.values()];
	return mark === 'date' ? values : values.sort((a, b) => b.count - a.count);
}
