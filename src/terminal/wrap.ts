import { cellsOf, firstCells } from './width.ts';

/** A number stays with its fraction and its unit: the blanks between them that no line is broken at. */
const TOGETHER = /(?<=\d) (?=\d+\/\d|(?:in|mm|degrees|%)(?![\w-]))/g;
const NO_BREAK = '\u00a0';

/**
 * Text broken between words into lines of at most `width` cells, the ones after the first indented by `indent`; a word that is longer
 * than a line, such as a path, goes on in the next. The first line begins with `lead`.
 */
export function wrap(text: string, width: number, indent = 0, lead = ''): string[] {
	const lines: string[] = [];
	let current = lead;
	let isEmpty = true;
	const words = text.replace(TOGETHER, NO_BREAK).split(/[ \t\n]+/);
	const room = width - Math.max(indent, cellsOf(lead));
	for (const word of words.flatMap((each) => inPieces(each, room))) {
		if (word === '') continue;
		const joined = isEmpty ? current + word : `${current} ${word}`;
		if (!isEmpty && cellsOf(joined) > width) {
			lines.push(current);
			current = ' '.repeat(indent) + word;
		} else current = joined;
		isEmpty = false;
	}
	const all = isEmpty ? lines : [...lines, current];
	return all.map((part) => part.replaceAll(NO_BREAK, ' '));
}

/** The same behind a lead such as `  - `, the lines after the first set in as far as it reaches. */
export function wrapBehind(lead: string, text: string, width: number): string[] {
	return wrap(text, width, cellsOf(lead), lead);
}

function inPieces(word: string, width: number): string[] {
	const head = firstCells(word, width);
	return head.length === word.length || head === '' ? [word] : [head, ...inPieces(word.slice(head.length), width)];
}
