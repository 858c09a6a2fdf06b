import { CHOICE, CHOOSE_OR_BACK, ONLY_BACK } from '../../words/screen/usual.ts';
import type { HomeView } from '../home/home-view.ts';
import { wrapped } from '../text/line.ts';
import { LIST, type ListAt, type ReviewPage } from './review-page.ts';
import type { Opened } from './review-port.ts';
import { HELP_KEY, PRINT, to } from './usual.ts';

/** The most needed first: a small window drops the last. */
const HELP = [
	'In the list: letters search job, bender, heat, date and outcome; a number and Enter opens a session; * narrows and sorts.',
	'In a session: + reads on, a page a bend, then the corrections, the checks, the tube, the log line by line, the plots, and what it taught. / leads back.',
	'p on its first page prints the record: a PDF that shows a customer what was made, and how well that is known.',
	'4 6 8 2 are the arrow keys: they turn the tube, step through the lines, change the plot, or move a long page.',
	'Nothing is changed here. (taken back) and (set aside) mark what is in the log and does not count.',
] as const;

export function helpView(from: ReviewPage): HomeView {
	return {
		title: 'Help: kept sessions',
		prompt: { label: '', back: { label: 'back', step: to(from) }, empty: ONLY_BACK },
		body: ({ columns }) => HELP.map((text, rank) => ({ rank, lines: wrapped(text, columns, 'plain', 2) })),
	};
}

/** Where else one can go from a page of a session: a pad has no letters. */
export function moreView(
	at: Extract<ReviewPage, { review: 'more' | 'help' }>,
	opened: Opened | null,
	list: ListAt = LIST,
): HomeView {
	const help = to({ review: 'help', from: at });
	return {
		title: 'More',
		prompt: {
			label: CHOICE,
			choices: [
				...(opened === null ? [] : [{ label: PRINT, step: { step: 'record', id: opened.id } as const }]),
				{ label: 'help', step: help },
				{ label: 'the kept sessions', step: to(list) },
				{ label: 'the jobs', step: { step: 'page', page: { page: 'home' } } },
			],
			back: { label: 'back', step: to(at.from) },
			empty: CHOOSE_OR_BACK,
		},
		keys: [HELP_KEY],
		shortcuts: { h: help, '?': help },
		body: () => [],
	};
}
