import {
	FITS,
	MARKS,
	type MarkName,
	type Narrowing,
	narrowed,
	SORTINGS,
	type Sorting,
	sorted,
	valuesOf,
} from '../../review/table.ts';
import { pieceBrief } from '../../words/batch.ts';
import { bentAsBrief } from '../../words/bent-as.ts';
import { foreign, foreignName } from '../../words/foreign.ts';
import { CHOICE, CHOOSE_OR_BACK } from '../../words/screen/usual.ts';
import { fitWords, markWords, STATUS_WORDS, searchedText } from '../../words/session-list.ts';
import type { SessionRow } from '../home/home-port.ts';
import type { HomeStep, HomeView, KeptSessions } from '../home/home-view.ts';
import { searchKeys, TO_HOME } from '../home/pages/usual.ts';
import type { Choice } from '../shell/prompt.ts';
import { line } from '../text/line.ts';
import { LIST, type ListAt, type ReviewPage } from './review-page.ts';
import { HELP_KEY, to } from './usual.ts';

/** The rows' choices and the texts that are searched are made once for a list: there may be thousands, and each key looks at all. */
class Worded {
	readonly #choices = new Map<SessionRow, Choice<HomeStep>>();
	readonly #texts = new Map<SessionRow, string>();

	readonly choiceOf = (row: SessionRow): Choice<HomeStep> => {
		const known = this.#choices.get(row) ?? new RowChoice(row);
		this.#choices.set(row, known);
		return known;
	};

	readonly textOf = (row: SessionRow): string => {
		const known = this.#texts.get(row) ?? searchedText(row);
		this.#texts.set(row, known);
		return known;
	};
}

const WORDED = new WeakMap<readonly SessionRow[], Worded>();

function wordedOf(sessions: readonly SessionRow[]): Worded {
	const known = WORDED.get(sessions) ?? new Worded();
	WORDED.set(sessions, known);
	return known;
}

/** Worded only where it is shown. */
class RowChoice implements Choice<HomeStep> {
	readonly #row: SessionRow;
	#brief: string | undefined;

	constructor(row: SessionRow) {
		this.#row = row;
	}

	get step(): HomeStep {
		return { step: 'review', id: this.#row.id };
	}

	get brief(): string {
		this.#brief ??= briefOf(this.#row);
		return this.#brief;
	}

	get label(): string {
		const { bender, heat } = this.#row;
		const marks = [bender, heat === undefined ? undefined : `heat ${heat}`].flatMap((mark) => mark ?? []);
		return marks.length === 0 ? this.brief : `${this.brief} (${marks.map(foreignName).join(', ')})`;
	}
}

/** In columns, so that one looks down them: when, what came of it, which job. */
function briefOf(row: SessionRow): string {
	const { started, status, job, bentAs } = row;
	const came = (fitWords(row) || STATUS_WORDS[status]).padEnd(12);
	return `${foreign(started.slice(0, 16))}  ${came}  ${foreignName(job)}${bentAsBrief(bentAs)}${pieceBrief(row)}${markWords(row)}`;
}

/** The kept sessions: searched as one types, narrowed and sorted. */
export function listView({ sessions, search }: KeptSessions, at: ListAt): HomeView {
	const { choiceOf, textOf } = wordedOf(sessions);
	const found = sorted(narrowed(sessions, { by: at.by, words: search }, textOf), at.sort);
	const [first] = found;
	const help = to({ review: 'help', from: { ...at, search } });
	return {
		title: 'Kept sessions',
		where: found.length === sessions.length ? `${found.length}` : `${found.length} of ${sessions.length}`,
		prompt: {
			label:
				search === '' ? 'Number of your choice, or letters to search' : `Search: ${search}   ${found.length} found`,
			choices: found.map(choiceOf),
			...(first === undefined ? {} : { plus: { label: 'review the first', step: choiceOf(first).step } }),
			star: { label: 'more', step: to({ review: 'narrow', by: null, list: { ...at, search } }) },
			back: search === '' ? TO_HOME : { label: 'back', step: to({ ...at, search: '' }) },
			empty: 'Write the number of a choice and press Enter; letters search; * narrows and sorts.',
		},
		keys: searchKeys(search),
		shortcuts: { '?': help },
		body: () => [
			{ rank: 0, lines: isNarrowed(at) ? [line(narrowedWords(at), 'quiet')] : [] },
			{
				rank: 0,
				lines: found.length === 0 ? [line('No session is like that. Press / to see all again.', 'alert')] : [],
			},
		],
	};
}

const isNarrowed = ({ by, sort }: ListAt) => MARKS.some((mark) => by[mark] !== undefined) || sort !== LIST.sort;

const MARK_WORDS: Readonly<Record<MarkName, string>> = {
	job: 'job',
	bender: 'bender',
	heat: 'heat',
	date: 'date',
	fits: 'outcome',
};

const SORT_WORDS: Readonly<Record<Sorting, string>> = {
	newest: 'newest first',
	oldest: 'oldest first',
	job: 'by job',
	bender: 'by bender',
};

function narrowedWords({ by, sort }: ListAt): string {
	const only = MARKS.flatMap((mark) => {
		const value = by[mark];
		return value === undefined ? [] : [`${MARK_WORDS[mark]} ${valueWords(mark, value)}`];
	});
	const parts = only.length === 0 ? [] : [`Only ${only.join(', ')}`];
	if (sort !== LIST.sort) parts.push(parts.length === 0 ? `Sorted: ${SORT_WORDS[sort]}` : SORT_WORDS[sort]);
	return `${parts.join('; ')}.`;
}

/** By what the list can be narrowed or sorted, and to what. */
export function narrowView({ sessions }: KeptSessions, at: Extract<ReviewPage, { review: 'narrow' }>): HomeView {
	const { by, list } = at;
	const help = to({ review: 'help', from: at });
	const choices =
		by === null
			? [...marksToChoose(list), { group: 'Besides', label: 'help', step: help }]
			: by === 'sort'
				? sortings(list)
				: valuesToChoose(sessions, by, list);
	return {
		title: by === null ? 'Narrow and sort' : by === 'sort' ? 'Sort the list' : `Only one ${MARK_WORDS[by]}`,
		prompt: {
			label: CHOICE,
			choices,
			back: { label: 'back', step: by === null ? to(list) : to({ review: 'narrow', by: null, list }) },
			empty: CHOOSE_OR_BACK,
		},
		keys: [HELP_KEY],
		shortcuts: { h: help, '?': help },
		body: () => [
			{ rank: 0, lines: choices.length === 0 ? [line('No session here tells it. Press / to go back.', 'alert')] : [] },
		],
	};
}

function valueWords(mark: MarkName, value: string): string {
	if (mark === 'fits') return value === FITS.yes ? 'fits' : 'does not fit';
	return foreignName(value);
}

function marksToChoose(list: ListAt): Choice<HomeStep>[] {
	const now = (mark: MarkName) => (list.by[mark] === undefined ? '' : ` (now ${valueWords(mark, list.by[mark])})`);
	return [
		...MARKS.map((mark) => ({
			group: 'Only',
			label: `one ${MARK_WORDS[mark]}${now(mark)}`,
			step: to({ review: 'narrow', by: mark, list }),
		})),
		{ group: 'Order', label: `sort: now ${SORT_WORDS[list.sort]}`, step: to({ review: 'narrow', by: 'sort', list }) },
		{ group: 'Order', label: 'all again, newest first', step: to(LIST) },
	];
}

function sortings(list: ListAt): Choice<HomeStep>[] {
	return SORTINGS.map((sort) => ({ label: SORT_WORDS[sort], step: to({ ...list, sort }) }));
}

function valuesToChoose(sessions: readonly SessionRow[], mark: MarkName, list: ListAt): Choice<HomeStep>[] {
	// What this mark is narrowed to now does not count, but for a month, whose days are there to be chosen.
	const { [mark]: now, ...others } = list.by;
	const by: Narrowing = mark === 'date' ? list.by : others;
	const rows = narrowed(sessions, { by, words: list.search }, wordedOf(sessions).textOf);
	const chosen = (value: string) => to({ ...list, by: { ...list.by, [mark]: value } });
	return [
		...valuesOf(rows, mark, list.by).map(({ value, count }) => ({
			label: `${valueWords(mark, value)}: ${count === 1 ? '1 session' : `${count} sessions`}`,
			step: chosen(value),
		})),
		...(now === undefined ? [] : [{ label: 'any', step: to({ ...list, by: others }) }]),
	];
}
