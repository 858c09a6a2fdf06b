/** Many sessions as a table: searched, narrowed and sorted. */

/** What a list knows of a session. */
export interface Listed {
	id: string;
	job: string;
	bender?: string;
	/** As the job has it; absent where it has none. */
	heat?: string;
	/** When it began, as the clock on the wall had it: year, month, day, then the time. */
	started: string;
	fits: boolean | null;
	bendsDone: number;
}

/** By which of their marks sessions can be narrowed. */
export const MARKS = ['job', 'bender', 'heat', 'date', 'fits'] as const;
export type MarkName = (typeof MARKS)[number];
/** Only sessions with these; of a date its beginning: `2026-11`, `2026-11-26`. */
export type Narrowing = Readonly<Partial<Record<MarkName, string>>>;
export const SORTINGS = ['newest', 'oldest', 'job', 'bender'] as const;
export type Sorting = (typeof SORTINGS)[number];

/** A value that sessions can be narrowed to, and how many have it. */
export interface Value {
	value: string;
	count: number;
}

const YES = 'yes';
const NO = 'no';
const MONTH = '2026-11'.length;
const DAY = '2026-11-26'.length;

const VALUE_OF: Readonly<Record<MarkName, (row: Listed) => string | undefined>> = {
	job: ({ job }) => job,
	bender: ({ bender }) => bender,
	heat: ({ heat }) => heat,
	date: ({ started }) => started,
	fits: ({ fits }) => (fits === null ? undefined : fits ? YES : NO),
};

/** The rows that have all of `by`, and every word of `search` somewhere in `textOf`. */
export function narrowed<Row extends Listed>(
	rows: readonly Row[],
	by: Narrowing,
	search: string,
	textOf: (row: Row) => string,
): Row[] {
	const wanted = MARKS.flatMap((mark) => (by[mark] === undefined ? [] : [[mark, by[mark]] as const]));
	const words = search.toLowerCase().split(/\s+/).filter(Boolean);
	return rows.filter((row) => {
		if (!wanted.every(([mark, value]) => has(row, mark, value))) return false;
		return words.length === 0 || allIn(textOf(row), words);
	});
}

function allIn(text: string, words: readonly string[]): boolean {
	return words.every((word) => text.includes(word));
}

function has(row: Listed, mark: MarkName, value: string): boolean {
	const own = VALUE_OF[mark](row);
	return mark === 'date' ? (own ?? '').startsWith(value) : own === value;
}

/** `rows` come newest first; those that are alike keep that order. */
export function sorted<Row extends Listed>(rows: readonly Row[], by: Sorting): Row[] {
	if (by === 'newest') return [...rows];
	if (by === 'oldest') return rows.toReversed();
	const own = (row: Row) => VALUE_OF[by](row) ?? '';
	return rows.toSorted((a, b) => own(a).localeCompare(own(b), 'en'));
}

/** What these rows can be narrowed to by a mark, the most frequent first; dates by month, of a month by day, the newest first. */
export function valuesOf(rows: readonly Listed[], mark: MarkName, by: Narrowing = {}): Value[] {
	const length = by.date === undefined ? MONTH : DAY;
	const counts = new Map<string, number>();
	for (const row of rows) {
		const own = VALUE_OF[mark](row);
		const value = mark === 'date' ? own?.slice(0, length) : own;
		if (value !== undefined && value !== '') counts.set(value, (counts.get(value) ?? 0) + 1);
	}
	const values = [...counts].map(([value, count]) => ({ value, count }));
	return mark === 'date' ? values : values.sort((a, b) => b.count - a.count);
}
