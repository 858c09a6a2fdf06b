/** What stands around every page of the screen: keys, what a field refuses, what has no room. */

/** The keys by their names, and what a list or a field does with them. */
export const KEY_NAMES = {
	enter: 'Enter',
	numberEnter: 'number Enter',
	escape: 'Esc',
	slashEscape: '/ Esc',
	up: 'Up',
	down: 'Down',
} as const;
export const FIELD_KEYS = { keep: 'keep', give: 'give it', choose: 'choose' } as const;

/** The keys of a long text. */
export const READER_KEYS = {
	next: 'next page',
	before: 'page before',
	line: 'line down, up',
} as const;
export const readerPlace = (first: number, last: number, all: number): string =>
	all === 0 ? 'empty' : `lines ${first} to ${last} of ${all}`;
export const topicTitle = (name: string): string => `Help: ${name}`;

/** What is wrong with what was typed. */
export const longNumberWords = (most: number): string =>
	`A number has at most ${most} characters; the next key starts over.`;
export const noChoiceWords = (typed: string, choices: number): string =>
	`"${typed}" is none of the numbers here; write one from 1 to ${choices}.`;

/** That choices are left out, above or below those that are seen. */
export const moreChoicesWords = (count: number, where: 'above' | 'below'): string =>
	`(${count} more ${where}; arrow keys)`;

/** That something of the page has no room. */
export const NO_ROOM = { whole: 'more: larger window', brief: 'more: larger' } as const;

/** That the window has no room for any page, the whole of it first. */
export function tooSmallWords(least: Window, now: Window): readonly [whole: string, shorter: string, shortest: string] {
	const needed = `${least.columns} x ${least.rows} needed`;
	return [
		`Make the window larger: ${least.columns} by ${least.rows} at least, now ${now.columns} by ${now.rows}.`,
		`Make the window larger: ${needed}`,
		needed,
	];
}

interface Window {
	columns: number;
	rows: number;
}

/** While something is being opened. */
export const WAITING = 'One moment';

/** Behind an angle where the sign for it cannot be drawn. */
export const DEGREES = 'deg';
