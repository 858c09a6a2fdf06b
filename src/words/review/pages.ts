import type { State } from '../../session/log/state.ts';
import type { Job } from '../../tube/job.ts';
import { foreign } from '../foreign.ts';
import { angle, angleGiveOrTake, fine } from '../numbers.ts';

/** What the pages of a kept session say alike, and those that step through it or turn its tube. */

/** What `+` on the page before calls them. */
export const PAGE_NAMES = {
	list: 'the list',
	narrow: 'narrow the list',
	story: 'the whole',
	bend: 'bend',
	corrections: 'corrections',
	checks: 'checks and notes',
	tube: 'the tube',
	line: 'line by line',
	plot: 'plots',
	taught: 'what it taught',
	more: 'more',
	help: 'help',
} as const;

export const nextPage = (name: string): string => `next: ${name}`;
export const PRINT_RECORD = 'print its record';
export const ONLY_PLUS_OR_BACK = 'Press + to go on, / to go back.';
export const REVIEW_MORE = { kept: 'the kept sessions' } as const;
export const TAUGHT_TITLE = 'What it taught';

/** A page that is longer than the screen. */
export const LONG_PAGE = {
	left: (count: number, where: 'above' | 'below'): string =>
		count > 0 ? `(${count} more ${count === 1 ? 'line' : 'lines'} ${where})` : '',
} as const;

/** The most needed first: a small window drops the last. */
export const REVIEW_HELP = {
	title: 'Help: kept sessions',
	said: [
		'In the list: letters search job, bender, heat, date and outcome; a number and Enter opens a session; * narrows and sorts.',
		'In a session: + reads on, a page a bend, then the corrections, the checks, the tube, the log line by line, the plots, and what it taught. / leads back.',
		'p on its first page prints the record: a PDF that shows a customer what was made, and how well that is known.',
		'4 6 8 2 are the arrow keys: they turn the tube, step through the lines, change the plot, or move a long page.',
		'Nothing is changed here. (taken back) and (set aside) mark what is in the log and does not count.',
	],
} as const;

/** The session as it was after one line of its log. */
export const LINE = {
	title: (line: number, last: number): string => (line === 0 ? 'As it began' : `Line ${line} of ${last}`),
	next: 'next line',
	keys: [
		['4 6', 'line before, after'],
		['7 1', 'first, last'],
	],
	begun: (started: string): string => `Begun ${foreign(started)}.`,
} as const;

/** Made and still to make, as it stood then. */
export function bendsWords({ bends, plan }: State): string {
	const each = bends.map(({ made, pulls, target }, i) => {
		if (made !== null) return `${i + 1}: made ${angleGiveOrTake(made)}`;
		const aim = angle(plan.current[i]?.angle ?? target);
		return pulls.length > 0 ? `${i + 1}: at work, ${aim} wanted` : `${i + 1}: to come, ${aim}`;
	});
	return `Bends  ${each.join('; ')}`;
}

/** The tube as drawn over the tube as made. `times`: how large errors are drawn. */
export const TUBE = {
	title: 'The tube, drawn and made',
	keys: { turn: (degrees: number): string => `turn by ${angle(degrees)}`, reset: 'as it was' },
	errors: (times: number): string => (times === 1 ? 'errors as they are' : `errors ${times} times`),
	off: (end: number, corner: { bend: number; off: number }, job: Job): string =>
		`Far end off by ${fine(end, job)}. Farthest corner: bend ${corner.bend}, off by ${fine(corner.off, job)}.`,
	read: (times: number): string =>
		times === 1
			? 'Line: as made. Dots: as drawn, where it can be told apart, or not made yet.'
			: `Every error is drawn ${times} times as large. Dots: as drawn.`,
} as const;
