import { PRINT_RECORD, REVIEW_HELP, REVIEW_MORE } from '../../words/review/pages.ts';
import { CHOICE, CHOOSE_OR_BACK, KEY_SAYS, MORE_TITLE, ONLY_BACK, TO_THE_JOBS } from '../../words/screen/usual.ts';
import type { HomeView } from '../home/home-view.ts';
import { wrapped } from '../text/line.ts';
import { LIST, type ListAt, type ReviewPage } from './review-page.ts';
import type { Opened } from './review-port.ts';
import { HELP_KEY, toReview } from './usual.ts';

export function helpView(from: ReviewPage): HomeView {
	return {
		title: REVIEW_HELP.title,
		prompt: { label: '', back: { label: KEY_SAYS.back, step: toReview(from) }, empty: ONLY_BACK },
		body: ({ columns }) => REVIEW_HELP.said.map((text, rank) => ({ rank, lines: wrapped(text, columns, 'plain', 2) })),
	};
}

/** Where else one can go from a page of a session: a pad has no letters. */
export function moreView(
	at: Extract<ReviewPage, { review: 'more' | 'help' }>,
	opened: Opened | null,
	list: ListAt = LIST,
): HomeView {
	const help = toReview({ review: 'help', from: at });
	return {
		title: MORE_TITLE,
		prompt: {
			label: CHOICE,
			choices: [
				...(opened === null ? [] : [{ label: PRINT_RECORD, step: { step: 'record', id: opened.id } as const }]),
				{ label: KEY_SAYS.help, step: help },
				{ label: REVIEW_MORE.kept, step: toReview(list) },
				{ label: TO_THE_JOBS, step: { step: 'page', page: { page: 'home' } } },
			],
			back: { label: KEY_SAYS.back, step: toReview(at.from) },
			empty: CHOOSE_OR_BACK,
		},
		keys: [HELP_KEY],
		shortcuts: { h: help, '?': help },
		body: () => [],
	};
}
