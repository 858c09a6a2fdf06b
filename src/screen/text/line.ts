import { cellsOf, firstCells } from '../../terminal/width.ts';
import { wrap } from '../../terminal/wrap.ts';
import { DEGREES } from '../../words/screen/frame.ts';

/** How a piece of text stands out, with colors and without. */
export type Tone = 'plain' | 'strong' | 'quiet' | 'alert' | 'wrong' | 'good' | 'inverse';

export interface Span {
	text: string;
	tone: Tone;
	/** The text that this line of it was broken from, for a terminal on which it comes out wider. */
	of?: BrokenText;
}

/** A text that was broken into lines, the ones after the first indented by `indent`. */
interface BrokenText {
	text: string;
	indent: number;
}

/** One line of a frame. */
export type Line = readonly Span[];

export const EMPTY: Line = [];

export function line(text: string, tone: Tone = 'plain'): Line {
	return [{ text, tone }];
}

export function span(text: string, tone: Tone = 'plain'): Span {
	return { text, tone };
}

export function widthOf(parts: Line): number {
	return parts.reduce((sum, { text }) => sum + cellsOf(text), 0);
}

export function wrapped(text: string, width: number, tone: Tone = 'plain', indent = 0): Line[] {
	const of = { text, indent };
	return wrap(text, width, indent).map((part) => [{ text: part, tone, of }]);
}

/** As many of the texts, the first ones, as have room in so many rows when they are broken as one; and the rest. */
export function wholeTexts(texts: readonly string[], width: number, rows: number): [shown: string, rest: string] {
	const joined = (from: number, to: number) => texts.slice(from, to).join(' ');
	let fit = texts.length;
	while (fit > 0 && wrap(joined(0, fit), width).length > rows) fit--;
	return [joined(0, fit), joined(fit, texts.length)];
}

/** Text without words, such as a path, broken after every `width` characters. */
export function chopped(text: string, width: number, tone: Tone = 'plain'): Line[] {
	return Array.from({ length: Math.ceil(text.length / width) }, (_, at) =>
		line(text.slice(at * width, (at + 1) * width), tone),
	);
}

/** The line with `right` at the right edge; what does not fit beside it is cut off the left part. */
export function spreadOut(left: Line, right: Line, width: number): Line {
	const gap = width - widthOf(left) - widthOf(right);
	if (gap >= 1) return [...left, span(' '.repeat(gap)), ...right];
	return [...cutLine(left, Math.max(0, width - widthOf(right) - 1)), span(' '), ...right];
}

/** The line's first `width` characters; what is cut off is marked. */
export function cutLine(parts: Line, width: number, mark = '…'): Line {
	const kept: Span[] = [];
	let room = width;
	for (const part of parts) {
		if (room <= 0) break;
		const cells = cellsOf(part.text);
		kept.push(cells <= room ? part : { ...part, text: `${firstCells(part.text, room - 1)}${mark}` });
		room -= cells;
	}
	return kept;
}

const ASCII: Record<string, string> = {
	'°': ` ${DEGREES}`,
	'±': '+/-',
	'·': '-',
	'→': '->',
	'…': '~',
	'─': '-',
	'│': '|',
	'├': '|',
	'┤': '|',
	'┴': '+',
	'┼': '+',
	'×': 'x',
	'█': '#',
	'░': ':',
	'▒': '=',
};

/** A line as a terminal can show it that may know ASCII alone. */
export function inAscii(parts: Line): Line {
	return parts.map(({ text, tone }) => ({ text: asciiOnly(text), tone }));
}

/** Lines as such a terminal can show them: a text that would come out wider than `width` is broken anew. */
export function linesInAscii(lines: readonly Line[], width: number): Line[] {
	const ascii = lines.map(inAscii);
	const tooWide = new Set(lines.flatMap(([first], at) => (widthOf(ascii[at]!) > width && first?.of ? [first.of] : [])));
	return lines.flatMap(([first], at) => {
		const of = first?.of;
		if (of === undefined || !tooWide.has(of)) return [ascii[at]!];
		// Once, in place of its first line.
		return lines[at - 1]?.[0]?.of === of ? [] : wrapped(asciiOnly(of.text), width, first?.tone, of.indent);
	});
}

/** The same text in ASCII, for a terminal that may know nothing else. What grows by it takes of the blanks beside it, so that columns stay. */
export function asciiOnly(text: string): string {
	const ascii = text.replace(/[^\n -~]/gu, (character) => ASCII[character] ?? '?');
	const grown = ascii.length - text.length;
	const [before = ''] = /^ */.exec(ascii) ?? [];
	const [after = ''] = / *$/.exec(ascii) ?? [];
	if (grown <= 0) return ascii;
	if (before.length > grown) return ascii.slice(grown);
	return after.length > grown ? ascii.slice(0, -grown) : ascii;
}
