import { cellsOf, firstCells } from './width.ts';

/** What a record's line begins with: its number and its time. */
const ENTRY = /^ *\d+ {2}\d\d:\d\d:\d\d {2}/;

/** A line of a table or a list that is too long, broken between words with its own gaps kept, what follows set in under its text. */
export function folded(text: string, width: number): string[] {
	const entry = ENTRY.exec(text)?.[0].length;
	return broken(text, width, ' '.repeat(entry ?? indentOf(text) + 2));
}

/** The same with what follows set in by that many cells: under the second column of a list. */
export function foldedAt(text: string, width: number, column: number): string[] {
	return broken(text, width, ' '.repeat(column));
}

function broken(text: string, width: number, hang: string): string[] {
	if (cellsOf(text) <= width) return [text];
	const at = firstCells(text, width + 1).lastIndexOf(' ');
	const head = at > indentOf(text) ? text.slice(0, at) : firstCells(text, width);
	const rest = `${hang}${text.slice(head.length).trimStart()}`;
	return [head.trimEnd(), ...(rest.length < text.length ? broken(rest, width, hang) : [rest])];
}

function indentOf(text: string): number {
	return text.length - text.trimStart().length;
}
