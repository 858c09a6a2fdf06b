import {
	MARKS,
	type MarkName,
	markValues,
	type Narrowing,
	narrowed,
	SORTINGS,
	sorted,
} from '../../review/session-table.ts';
import { LIST_WORDS, NARROW, narrowedWords, rowBrief, rowMarks, SORT_WORDS } from '../../words/review/kept-list.ts';
import { searchLabel } from '../../words/screen/home.ts';
import { BESIDES, CHOICE, CHOOSE_OR_BACK, KEY_SAYS } from '../../words/screen/usual.ts';
import { searchedText } from '../../words/session-list.ts';
import type { SessionRow } from '../home/home-port.ts';
import type { HomeStep, HomeView, KeptSessions } from '../home/home-view.ts';
import { searchKeys, TO_HOME } from '../home/pages/usual.ts';
import { type Choice, choicesFrom } from '../shell/prompt.ts';
import { line } from '../text/line.ts';
import { LIST, type ListAt, type ReviewPage } from './review-page.ts';
import { HELP_KEY, toReview } from './usual.ts';

const TEXTS = new WeakMap<readonly SessionRow[], (row: SessionRow, place: number) => string>();

/** What is searched of each of the sessions: made once for a list, for there may be thousands, and each key looks at all. */
function textsOf(sessions: readonly SessionRow[]): (row: SessionRow, place: number) => string {
	const known = TEXTS.get(sessions);
	if (known !== undefined) return known;
	const texts: string[] = [];
	const textOf = (row: SessionRow, place: number) => {
		texts[place] ??= row.searched ?? searchedText(row);
		return texts[place];
	};
	TEXTS.set(sessions, textOf);
	return textOf;
}

/** Worded only where there is room for it. */
function rowChoice(row: SessionRow): Choice<HomeStep> {
	const brief = rowBrief(row);
	return {
		step: { step: 'review', id: row.id },
		brief,
		get label() {
			return `${brief}${rowMarks(row)}`;
		},
	};
}

/** The kept sessions: searched as one types, narrowed and sorted. */
export function sessionListView({ sessions, search }: KeptSessions, at: ListAt): HomeView {
	const found = sorted(narrowed(sessions, { by: at.by, words: search }, textsOf(sessions)), at.sort);
	const choices = choicesFrom(found, rowChoice);
	const first = choices.at(0);
	const help = toReview({ review: 'help', from: { ...at, search } });
	return {
		title: LIST_WORDS.title,
		where: [LIST_WORDS.where(found.length, sessions.length)],
		prompt: {
			label: search === '' ? LIST_WORDS.label : searchLabel(search, found.length),
			choices,
			...(first === undefined ? {} : { plus: { label: LIST_WORDS.first, step: first.step } }),
			star: { label: KEY_SAYS.more, step: toReview({ review: 'narrow', by: null, list: { ...at, search } }) },
			back: search === '' ? TO_HOME : { label: KEY_SAYS.back, step: toReview({ ...at, search: '' }) },
			empty: LIST_WORDS.empty,
		},
		keys: searchKeys(search),
		shortcuts: { '?': help },
		body: () => [
			{
				rank: 0,
				lines: isNarrowed(at) ? [line(narrowedWords(at.by, at.sort === LIST.sort ? null : at.sort), 'quiet')] : [],
			},
			{
				rank: 0,
				lines: found.length === 0 ? [line(LIST_WORDS.none, 'alert')] : [],
			},
		],
	};
}

const isNarrowed = ({ by, sort }: ListAt) => MARKS.some((mark) => by[mark] !== undefined) || sort !== LIST.sort;

/** By what the list can be narrowed or sorted, and to what. */
export function narrowView({ sessions }: KeptSessions, at: Extract<ReviewPage, { review: 'narrow' }>): HomeView {
	const { by, list } = at;
	const help = toReview({ review: 'help', from: at });
	const choices =
		by === null
			? [...marksToChoose(list), { group: BESIDES, label: KEY_SAYS.help, step: help }]
			: by === 'sort'
				? sortings(list)
				: valuesToChoose(sessions, by, list);
	return {
		title: by === null ? NARROW.title : by === 'sort' ? NARROW.sortTitle : NARROW.oneTitle(by),
		prompt: {
			label: CHOICE,
			choices,
			back: {
				label: KEY_SAYS.back,
				step: by === null ? toReview(list) : toReview({ review: 'narrow', by: null, list }),
			},
			empty: CHOOSE_OR_BACK,
		},
		keys: [HELP_KEY],
		shortcuts: { h: help, '?': help },
		body: () => [{ rank: 0, lines: choices.length === 0 ? [line(NARROW.none, 'alert')] : [] }],
	};
}

function marksToChoose(list: ListAt): Choice<HomeStep>[] {
	return [
		...MARKS.map((mark) => ({
			group: NARROW.only,
			label: NARROW.one(mark, list.by[mark]),
			step: toReview({ review: 'narrow', by: mark, list }),
		})),
		{ group: NARROW.order, label: NARROW.sort(list.sort), step: toReview({ review: 'narrow', by: 'sort', list }) },
		{ group: NARROW.order, label: NARROW.allAgain, step: toReview(LIST) },
	];
}

function sortings(list: ListAt): Choice<HomeStep>[] {
	return SORTINGS.map((sort) => ({ label: SORT_WORDS[sort], step: toReview({ ...list, sort }) }));
}

function valuesToChoose(sessions: readonly SessionRow[], mark: MarkName, list: ListAt): Choice<HomeStep>[] {
	// What this mark is narrowed to now does not count, but for a month, whose days are there to be chosen.
	const { [mark]: now, ...others } = list.by;
	const by: Narrowing = mark === 'date' ? list.by : others;
	const rows = narrowed(sessions, { by, words: list.search }, textsOf(sessions));
	const chosen = (value: string) => toReview({ ...list, by: { ...list.by, [mark]: value } });
	return [
		...markValues(rows, mark, list.by).map(({ value, count }) => ({
			label: NARROW.value(mark, value, count),
			step: chosen(value),
		})),
		...(now === undefined ? [] : [{ label: NARROW.any, step: toReview({ ...list, by: others }) }]),
	];
}
