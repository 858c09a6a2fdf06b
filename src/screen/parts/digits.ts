/** Numbers as block digits that can be read from across a shop. */
export type DigitScale = 'large' | 'medium' | 'plain';

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

const DIGIT_ROWS = 5;
const CELLS = { large: 2, medium: 1 } as const;

/** The rows of `text` in block digits, all equally wide; one row with `plain`. */
export function digitRows(text: string, scale: DigitScale, ink = '█'): string[] {
	if (scale === 'plain') return [text];
	const cells = CELLS[scale];
	return Array.from({ length: DIGIT_ROWS }, (_, row) =>
		[...text]
			.map((character) => glyph(character)[row]!)
			.join(' ')
			.replace(/./g, (mark) => (mark === '#' ? ink : ' ').repeat(cells)),
	);
}

/** How many cells wide `text` is at that scale. */
export function digitWidth(text: string, scale: DigitScale): number {
	return digitRows(text, scale)[0]!.length;
}

function glyph(character: string): readonly string[] {
	const found = GLYPHS[character];
	if (found === undefined) throw new RangeError(`There is no block digit for "${character}".`);
	return found;
}
