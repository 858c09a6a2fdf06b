import { folded } from '../../terminal/folded.ts';
import type { Size } from '../../terminal/output.ts';
import { KEY_NAMES, READER_KEYS, readerPlace } from '../../words/screen/frame.ts';
import { KEY_SAYS } from '../../words/screen/usual.ts';
import { line } from '../text/line.ts';
import { type Content, type Frame, frame } from './frame.ts';
import type { Key } from './keys.ts';
import type { Look } from './look.ts';
import { NOTHING } from './prompt.ts';

/** Lines to be read, more than a screen holds. */
export interface ReaderState {
	title: string;
	lines: readonly string[];
	/** The line at the top of the screen. */
	top: number;
}

/** Rows that are not the text's: title, rule, the blank line and the keys. */
const OTHER_ROWS = 6;

/** The lines as a window of that width has them. */
function linesAt({ lines }: ReaderState, { columns }: Size): string[] {
	return lines.flatMap((text) => folded(text, columns));
}

/** What a key does while reading; null: back to where it was opened from. */
export function readerKey(state: ReaderState, key: Key, size: Size): ReaderState | null {
	const page = Math.max(1, size.rows - OTHER_ROWS);
	const last = Math.max(0, linesAt(state, size).length - page);
	const name = key.key === 'character' ? (PAD[key.text] ?? '') : key.key;
	if (name === 'escape') return null;
	const moves: Record<string, number> = {
		up: state.top - 1,
		down: state.top + 1,
		pageUp: state.top - page,
		pageDown: state.top + page,
		return: state.top + page,
		home: 0,
		end: last,
	};
	return { ...state, top: Math.min(last, Math.max(0, moves[name] ?? state.top)) };
}

/** The same by the numeric pad: its own arrows' places, and the signs. */
const PAD: Record<string, Key['key']> = {
	'8': 'up',
	'2': 'down',
	'+': 'pageDown',
	'-': 'pageUp',
	'7': 'home',
	'1': 'end',
	'/': 'escape',
};

export function readerFrame(state: ReaderState, size: Size, look: Look): Frame {
	const page = Math.max(1, size.rows - OTHER_ROWS);
	const all = linesAt(state, size);
	// In a window that has become wider there are fewer lines.
	const top = Math.min(state.top, Math.max(0, all.length - page));
	const shown = all.slice(top, top + page);
	const last = Math.min(all.length, top + page);
	const content: Content<never> = {
		title: state.title,
		where: [readerPlace(top + 1, last, all.length)],
		body: () => [{ rank: 0, lines: shown.map((text) => line(text)) }],
		prompt: { label: '', empty: '' },
		entry: NOTHING,
		message: null,
		keys: [
			['+', READER_KEYS.next],
			['-', READER_KEYS.before],
			['2 8', READER_KEYS.line],
			[KEY_NAMES.slashEscape, KEY_SAYS.back],
		],
	};
	return frame(content, size, look);
}
