/** Numbers as block digits that can be read from across a shop. */

/** How many cells of the terminal one cell of a glyph takes; null: plain text, one row high. */
export type DigitScale = { across: number; down: number } | null;

/** Drawn for this program: five rows, a mark for each cell that is filled. */
const GLYPHS: Record<string, readonly string[]> = {
	'0': ['###', '# #', '# #', '# #', '###'],
	'1': [' # ', '## ', ' # ', ' # ', '###'],
	'2': ['###', '  #', '###', '#  ', '###'],
	'3': ['###', '  #', ' ##', '  #', '###'],
	'4': ['# #', '# #', '###', '  #', '  #'],
	'5': ['###', '#  ', '###', '  #', '###'],
	'6': ['###', '#  ', '###', '# #', '###'],
	'7': ['###', '  #', '  #', ' # ', ' # '],
	'8': ['###', '# #', '###', '# #', '###'],
	'9': ['###', '# #', '###', '  #', '###'],
	'/': ['  #', '  #', ' # ', '#  ', '#  '],
	'-': ['  ', '  ', '##', '  ', '  '],
	'.': [' ', ' ', ' ', ' ', '#'],
	' ': [' ', ' ', ' ', ' ', ' '],
};

export const DIGIT_ROWS = 5;

/** The rows of `text` in block digits, all equally wide; one row with the plain scale. */
export function digitRows(text: string, scale: DigitScale, ink = '█'): string[] {
	if (scale === null) return [text];
	const rows = Array.from({ length: DIGIT_ROWS }, (_, row) =>
		[...text].map((character) => glyph(character)[row]!).join(' '),
	);
	return inked(rows, scale, ink);
}

/** Rows of marks as the terminal shows them, each mark so many cells wide and high. */
export function inked(rows: readonly string[], scale: { across: number; down: number }, ink: string): string[] {
	return rows.flatMap((row) =>
		Array<string>(scale.down).fill(row.replace(/./g, (mark) => (mark === '#' ? ink : ' ').repeat(scale.across))),
	);
}

/** How many cells wide and high `text` is at that scale. */
export function digitSize(text: string, scale: DigitScale): { width: number; height: number } {
	if (scale === null) return { width: text.length, height: 1 };
	const cells = [...text].reduce((sum, character) => sum + glyph(character)[0]!.length + 1, -1);
	return { width: Math.max(0, cells) * scale.across, height: DIGIT_ROWS * scale.down };
}

function glyph(character: string): readonly string[] {
	const found = GLYPHS[character];
	if (found === undefined) throw new RangeError(`There is no block digit for "${character}".`);
	return found;
}
