/** How many cells of a terminal a text takes: names may be in any script. */
import { eastAsianWidth } from 'get-east-asian-width';

/** Characters that take one cell each and join with no neighbor: nearly all that is ever drawn. */
const ONE_CELL_EACH =
	/^[ -~\u00a0-\u00ac\u00ae-\u02ff\u2010-\u2027\u2030-\u205e\u2190-\u2193\u2212\u2500-\u259f\u2800-\u28ff]*$/;

/** What stands over or under the character before it, and what joins characters. */
const NO_WIDTH = /^[\p{Mn}\p{Me}\p{Cf}]$/u;

/** Whether a text takes as many cells as it is long. Ink asks too, by a patch of the build. */
export const isNarrow = (text: string): boolean => ONE_CELL_EACH.test(text);

export function cellsOf(text: string): number {
	if (isNarrow(text)) return text.length;
	return [...text].reduce((sum, character) => sum + cellsOfOne(character), 0);
}

function cellsOfOne(character: string): number {
	return NO_WIDTH.test(character) ? 0 : eastAsianWidth(character.codePointAt(0)!);
}

/** As much of the text as has room in so many cells, no character cut in two. */
export function firstCells(text: string, cells: number): string {
	if (isNarrow(text)) return text.slice(0, Math.max(0, cells));
	let taken = 0;
	let kept = '';
	for (const character of text) {
		taken += cellsOfOne(character);
		if (taken > cells) break;
		kept += character;
	}
	return kept;
}

/** The text without its last character, as backspace leaves it. */
export const withoutLast = (text: string): string => [...text].slice(0, -1).join('');

/** The text with blanks after it up to so many cells. */
export function padded(text: string, cells: number): string {
	return text + blanks(text, cells);
}

/** The text with blanks before it up to so many cells. */
export function paddedBefore(text: string, cells: number): string {
	return blanks(text, cells) + text;
}

function blanks(text: string, cells: number): string {
	return ' '.repeat(Math.max(0, cells - cellsOf(text)));
}
