import type { Size } from '../../terminal/output.ts';
import { cellsOf } from '../../terminal/width.ts';
import { foreign } from '../../words/foreign.ts';
import { NO_ROOM, tooSmallWords } from '../../words/screen/frame.ts';
import { type FittedBody, fitted, ROOMY_ROWS, type Room, type Section } from '../session/pages/page.ts';
import type { Message } from '../session/session-state.ts';
import { choiceLines } from '../text/choice-list.ts';
import { type KeyHint, keyLines, keysOf } from '../text/key-line.ts';
import {
	asciiOnly,
	cutLine,
	EMPTY,
	inAscii,
	type Line,
	line,
	linesInAscii,
	span,
	spreadOut,
	widthOf,
	wrapped,
} from '../text/line.ts';
import type { Look } from './look.ts';
import { type Choice, choiceNumbered, choicesFrom, type FieldEntry, type Prompt } from './prompt.ts';

/** What is drawn: lines from the top, and in which of them the text field stands. */
export interface Frame {
	lines: readonly Line[];
	textAt: number | null;
	/** Something of the page has no room and stands nowhere else. */
	short: boolean;
}

/** What goes into a frame. */
export interface Content<Step> {
	title: string;
	/** At the right of the title, in its parts: which job, which bend. */
	where: readonly string[];
	body: (room: Room) => Section[];
	prompt: Prompt<Step>;
	entry: FieldEntry;
	message: Message | null;
	/** What may fill the room that the page leaves: a picture at most so wide and so high. */
	picture?: (columns: number, rows: number) => Line[];
	/** Further keys, for a page that has some of its own. */
	keys?: readonly KeyHint[];
}

export const SMALLEST: Size = { columns: 60, rows: 20 };

/** The least room that the body of a page with choices keeps. */
const LEAST_CHOICES = 4;

/**
 * The whole screen at that size, one row less than the terminal has: a frame as tall as the terminal makes Ink wipe the
 * scrollback at every key. Pure.
 */
export function frame<Step>(whole: Content<Step>, size: Size, look: Look): Frame {
	const { columns } = size;
	const height = size.rows - 1;
	if (columns < SMALLEST.columns || size.rows < SMALLEST.rows) return tooSmall(size);
	// Here, and not line by line at the end: what comes out wider may need a further line.
	const content = look.ascii ? contentInAscii(whole) : whole;
	// Else there are some for a rule under the title and a blank line above the field.
	const tight = size.rows < ROOMY_ROWS;
	const rule = tight ? [] : [line('─'.repeat(columns), 'quiet')];
	const bottom = footer(content, columns);
	const rows = height - header(content, columns).length - rule.length - bottom.lines.length - (tight ? 0 : 1);
	const middle = bodyBetween(content, { columns, rows, free: rows, window: size.rows, ...look });
	const top = [...header(content, columns, middle.short), ...rule];
	const used = top.length + middle.lines.length + bottom.lines.length;
	const filler = Array.from({ length: Math.max(0, height - used) }, () => EMPTY);
	const lines = [...top, ...middle.lines, ...filler, ...bottom.lines]
		.map((each) => fittedLine(each, columns, look))
		.slice(0, height);
	return {
		lines,
		textAt: bottom.textAt === null ? null : height - bottom.lines.length + bottom.textAt,
		short: middle.short,
	};
}

function contentInAscii<Step>(content: Content<Step>): Content<Step> {
	const { title, body, prompt, message } = content;
	const { choices } = prompt;
	return {
		...content,
		title: asciiOnly(title),
		body: (room) => body(room).map((each) => ({ ...each, lines: linesInAscii(each.lines, room.columns) })),
		prompt: {
			...prompt,
			label: asciiOnly(prompt.label),
			...(choices && { choices: choicesFrom(choices, choiceInAscii) }),
		},
		message: message === null ? null : { ...message, text: asciiOnly(message.text) },
	};
}

/** Worded only where it is drawn: there may be thousands. */
function choiceInAscii<Step>(choice: Choice<Step>): Choice<Step> {
	const { step, advised, group } = choice;
	return {
		step,
		advised,
		group,
		get label() {
			return asciiOnly(choice.label);
		},
		get brief() {
			return choice.brief === undefined ? undefined : asciiOnly(choice.brief);
		},
	};
}

/** The line as that terminal can show it, at most so wide. Here everything passes that a frame shows, whoever wrote it. */
function fittedLine(parts: Line, columns: number, { ascii }: Look): Line {
	const shown = parts.map((part) => ({ ...part, text: foreign(part.text) }));
	return ascii ? cutLine(inAscii(shown), columns, '~') : cutLine(shown, columns);
}

function tooSmall(size: Size): Frame {
	const room = Math.max(1, size.columns - 1);
	const [whole, shorter, shortest] = tooSmallWords(SMALLEST, size);
	const text = [whole, shorter].find((each) => each.length <= room) ?? shortest;
	return { lines: [cutLine(line(text), room)], textAt: null, short: true };
}

/** That something has no room, in as many words as have room themselves. */
const SHORT = [`  ${NO_ROOM.whole}`, `  ${NO_ROOM.brief}`, ' …'];

/**
 * The title whole; of where one is, as much as has room beside it: job, piece and bend, less of it, or nothing. `short`: something of the
 * page has no room.
 */
function header<Step>({ title, where }: Content<Step>, columns: number, short = false): Line[] {
	if (cellsOf(title) > columns) return wrapped(title, columns, 'strong').slice(0, 2);
	const notes = short ? SHORT : [''];
	const all = whereShortened(where).flatMap((texts) =>
		notes.flatMap((note) => texts.map((beside) => ({ note, beside }))),
	);
	const fits = ({ note, beside }: (typeof all)[number]) =>
		cellsOf(title) + note.length + (short ? 2 : 1) + cellsOf(beside) <= columns;
	const { note, beside } = all.find(fits) ?? { note: '', beside: '' };
	return [spreadOut([span(title, 'strong'), span(note, 'quiet')], [span(beside, 'quiet')], columns)];
}

/** What may stand beside the title, the wanted first: a piece of a batch is named before the window is said to be small. */
function whereShortened(where: Content<never>['where']): string[][] {
	const told = (parts: readonly string[]) => parts.join(' · ');
	const [whole, last] = [told(where), told(where.slice(-1))];
	return where.length > 2 ? [[whole], [told(where.slice(1))], [last, '']] : [[whole, last, '']];
}

/** The least rows that a picture is worth; and from how many on it stands under the words of a wide window, not beside them. */
const PICTURE_ROWS = { least: 5, under: 20 };

/** From so many columns on the picture stands beside the words. */
const WIDE_COLUMNS = 120;
const MIDDLE_GAP = 3;

/** The words of a page as they have room, and what they were chosen from. */
type SaidBody = FittedBody & { sections: readonly Section[] };

function bodyBetween<Step>(content: Content<Step>, room: Room): FittedBody {
	const { picture } = content;
	const said = words(content, room);
	if (picture === undefined) return said;
	const left = room.rows - said.lines.length - 1;
	if (room.columns >= WIDE_COLUMNS && left < PICTURE_ROWS.under)
		return besidePicture(content, said.sections, room, picture);
	return left < PICTURE_ROWS.least ? said : { ...said, lines: [...said.lines, EMPTY, ...picture(room.columns, left)] };
}

/** In a wide window: what of the sections needs the whole width on top, under it the other words at the left and the picture at the right. */
function besidePicture<Step>(
	content: Content<Step>,
	sections: readonly Section[],
	room: Room,
	picture: (columns: number, rows: number) => Line[],
): FittedBody {
	const top = fitted(
		sections.filter(({ wide }) => wide === true),
		room.rows,
	);
	const gap = top.lines.length > 0 ? [EMPTY] : [];
	const rows = room.rows - top.lines.length - gap.length;
	const columns = Math.floor((room.columns - MIDDLE_GAP) / 2);
	const narrow = { ...room, columns, rows, free: rows };
	const body = (within: Room) => content.body(within).filter(({ wide }) => wide !== true);
	const left = words({ ...content, body }, narrow);
	const right = rows < PICTURE_ROWS.least ? [] : picture(room.columns - columns - MIDDLE_GAP, rows);
	const both = Array.from({ length: Math.max(left.lines.length, right.length) }, (_, at): Line => {
		const said = cutLine(left.lines[at] ?? EMPTY, columns);
		const drawn = right[at] ?? EMPTY;
		if (drawn.length === 0) return said;
		return [...said, span(' '.repeat(columns + MIDDLE_GAP - widthOf(said))), ...drawn];
	});
	return { lines: [...top.lines, ...gap, ...both], short: top.short || left.short };
}

function words<Step>({ body, prompt, entry }: Content<Step>, room: Room): SaidBody {
	const { choices = [] } = prompt;
	if (choices.length === 0) {
		const sections = body(room);
		return { ...fitted(sections, room.rows), sections };
	}
	const most = Math.max(LEAST_CHOICES, room.rows - 1);
	const list = choiceLines(choices, entry.selected, room.columns, most + 1).length;
	const forList = Math.min(list, most);
	const free = Math.max(0, room.rows - forList - 1);
	const sections = body({ ...room, free });
	const above = fitted(sections, free);
	const gap = above.lines.length > 0 ? [EMPTY] : [];
	const left = room.rows - above.lines.length - gap.length;
	// Choices that have no room are counted in the list itself.
	const chosen = choiceLines(choices, entry.selected, room.columns, left);
	return { lines: [...above.lines, ...gap, ...chosen], short: above.short, sections };
}

const MESSAGE_TONES = { said: 'good', wrong: 'wrong', unsaved: 'wrong' } as const;

function footer<Step>(content: Content<Step>, columns: number): { lines: Line[]; textAt: number | null } {
	const { prompt, entry, message, keys = [] } = content;
	const said = message === null ? [] : wrapped(message.text, columns, MESSAGE_TONES[message.kind]);
	const label = wrapped(prompt.label, columns, 'quiet');
	const hints = keyLines([...keysOf(prompt), ...keys], columns);
	if (prompt.text !== undefined) {
		const before = [...said, ...label];
		return { lines: [...before, EMPTY, ...hints], textAt: before.length };
	}
	const takesNumber = prompt.read !== undefined || prompt.choices !== undefined;
	return { lines: [...said, ...label, ...(takesNumber ? [fieldLine(prompt, entry)] : []), ...hints], textAt: null };
}

function fieldLine<Step>(prompt: Prompt<Step>, { field: text }: FieldEntry): Line {
	return [span('> ', 'quiet'), span(text, 'strong'), span(' ', 'inverse'), ...understoodSpans(prompt, text)];
}

/** How a number that is being written is read so far; nothing while it cannot be read. */
function understoodSpans<Step>(prompt: Prompt<Step>, text: string): Line {
	const choice = prompt.choices && choiceNumbered(prompt.choices, text);
	if (choice !== undefined && prompt.read === undefined) return [span(`  ${choice.label}`, 'quiet')];
	if (prompt.understood === undefined || text.trim() === '') return EMPTY;
	try {
		return [span(`  = ${prompt.understood(text)}`, 'quiet')];
	} catch {
		// Half a number is no fault yet; Enter says what is wrong with it.
		return EMPTY;
	}
}
