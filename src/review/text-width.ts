/** How many cells of a terminal a text takes: names may be in any script. */

/** Characters that take one cell each and join with nothing: nearly all that is ever drawn. */
const NARROW =
	/^[ -~\u00a0-\u00ac\u00ae-\u02ff\u2010-\u2027\u2030-\u205e\u2190-\u2193\u2212\u2500-\u259f\u2800-\u28ff]*$/;

/** Ranges of characters that take two cells. Source: Unicode Standard Annex 11, "East Asian Width", classes W and F. */
const WIDE: readonly (readonly [from: number, to: number])[] = [
	[0x1100, 0x115f],
	[0x2e80, 0x303e],
	[0x3041, 0x33ff],
	[0x3400, 0x4dbf],
	[0x4e00, 0xa4cf],
	[0xa960, 0xa97f],
	[0xac00, 0xd7a3],
	[0xf900, 0xfaff],
	[0xfe30, 0xfe6f],
	[0xff01, 0xff60],
	[0xffe0, 0xffe6],
	[0x1f300, 0x1f64f],
	[0x1f680, 0x1f6ff],
	[0x1f900, 0x1f9ff],
	[0x20000, 0x3fffd],
];

/** What stands over or under the character before it, and what joins characters. */
const NO_WIDTH = /^[\p{Mn}\p{Me}\p{Cf}]$/u;

export function cellsOf(text: string): number {
	if (NARROW.test(text)) return text.length;
	return [...text].reduce((sum, character) => sum + cellsOfOne(character), 0);
}

function cellsOfOne(character: string): number {
	if (NARROW.test(character)) return 1;
	if (NO_WIDTH.test(character)) return 0;
	const code = character.codePointAt(0)!;
	return WIDE.some(([from, to]) => code >= from && code <= to) ? 2 : 1;
}

/** As much of the text as has room in so many cells, no character cut in two. */
export function firstCells(text: string, cells: number): string {
	if (NARROW.test(text)) return text.slice(0, Math.max(0, cells));
	let taken = 0;
	let kept = '';
	for (const character of text) {
		taken += cellsOfOne(character);
		if (taken > cells) break;
		kept += character;
	}
	return kept;
}

/** The text with blanks after it up to so many cells. */
export function padded(text: string, cells: number): string {
	return text + ' '.repeat(Math.max(0, cells - cellsOf(text)));
}
