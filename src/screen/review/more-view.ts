import { PRINT_RECORD, REVIEW_MORE } from '../../words/review/pages.ts';
import { KEY_SAYS, MORE_TITLE, TO_THE_JOBS } from '../../words/screen/usual.ts';
import type { HomeStep, HomeView } from '../home/home-view.ts';
import { choicesView } from '../home/plain-views.ts';
import type { Choice } from '../shell/prompt.ts';
import { LIST, type ListAt, type ReviewPage } from './review-page.ts';
import type { Opened } from './review-port.ts';
import { HELP_KEY, toReview } from './usual.ts';

/** Where else one can go from a page of a session: a pad has no letters. */
export function reviewMoreView(
	at: Extract<ReviewPage, { review: 'more' | 'help' }>,
	opened: Opened | null,
	list: ListAt = LIST,
): HomeView {
	const help = toReview({ review: 'help', from: at });
	const choices: Choice<HomeStep>[] = [
		...(opened === null ? [] : [{ label: PRINT_RECORD, step: { step: 'record', id: opened.id } as const }]),
		{ label: KEY_SAYS.help, step: help },
		{ label: REVIEW_MORE.kept, step: toReview(list) },
		{ label: TO_THE_JOBS, step: { step: 'page', page: { page: 'home' } } },
	];
	return {
		...choicesView(MORE_TITLE, choices, toReview(at.from)),
		keys: [HELP_KEY],
		shortcuts: { h: help, '?': help },
	};
}
