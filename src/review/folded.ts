import { cellsOf, firstCells } from './text-width.ts';

/** A line of a table or a list that is too long, broken between words with its own gaps kept, what follows set in under it. */
export function folded(text: string, width: number): string[] {
	if (cellsOf(text) <= width) return [text];
	const [indent = ''] = /^ */.exec(text) ?? [];
	const at = firstCells(text, width + 1).lastIndexOf(' ');
	const head = at > indent.length ? text.slice(0, at) : firstCells(text, width);
	const rest = `${indent}  ${text.slice(head.length).trimStart()}`;
	return [head.trimEnd(), ...(rest.length < text.length ? folded(rest, width) : [rest])];
}
