import type { HomeView } from '../home/home-view.ts';
import { wrapped } from '../text/line.ts';
import type { ReviewPage } from './review-page.ts';
import { to } from './usual.ts';

/** The most needed first: a small window drops the last. */
const HELP = [
	'In the list: letters search job, bender, heat, date and outcome; a number and Enter opens a session; * narrows and sorts.',
	'In a session: + reads on, a page a bend, then the corrections, the checks, the tube, the log line by line, and the plots. / leads back.',
	'4 6 8 2 are the arrow keys: they turn the tube, step through the lines, change the plot, or move a long page.',
	'Nothing is changed here. (taken back) and (set aside) mark what is in the log and does not count.',
] as const;

export function helpView(from: ReviewPage): HomeView {
	return {
		title: 'Help: kept sessions',
		prompt: { label: '', back: { label: 'back', step: to(from) }, empty: 'Press / to go back.' },
		body: ({ columns }) => HELP.map((text, rank) => ({ rank, lines: wrapped(text, columns, 'plain', 2) })),
	};
}
