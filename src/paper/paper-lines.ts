import type { Typeface, TypeStyle } from './typeface.ts';

/** What the library's own setting may come out longer than it was measured. */
const HAIR = 0.25;

const characters = new Intl.Segmenter('en', { granularity: 'grapheme' });

/**
 * A text as lines no longer than `width` points, broken between words, and inside of a word only where it is longer than a line. The library's
 * own breaking would put a hyphen into a name, or let it run off the page.
 */
export function paperLines(text: string, width: number, style: TypeStyle, type: Typeface): string[] {
	const fits = (line: string) => type.width(line, style) <= width - HAIR;
	const lines: string[] = [];
	let line = '';
	for (const word of text.split(' ')) {
		const longer = line === '' ? word : `${line} ${word}`;
		if (fits(longer)) {
			line = longer;
			continue;
		}
		if (line !== '') lines.push(line);
		const pieces = piecesOf(word, fits);
		lines.push(...pieces.slice(0, -1));
		line = pieces.at(-1)!;
	}
	return [...lines, line];
}

/** A word in pieces that fit; at least a character each, however narrow the place. */
function piecesOf(word: string, fits: (piece: string) => boolean): string[] {
	if (fits(word)) return [word];
	const pieces: string[] = [];
	let piece = '';
	for (const { segment } of characters.segment(word)) {
		if (piece !== '' && !fits(piece + segment)) {
			pieces.push(piece);
			piece = '';
		}
		piece += segment;
	}
	return [...pieces, piece];
}

/** A text on one line, its end left out where it has no room. */
export function oneLine(text: string, width: number, style: TypeStyle, type: Typeface): string {
	if (paperLines(text, width, style, type).length === 1) return text;
	const [first] = paperLines(text, width - type.width('…', style), style, type);
	return `${first}…`;
}
