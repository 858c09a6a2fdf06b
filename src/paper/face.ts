import { Font } from '@react-pdf/renderer';

/** What is used of a font that is open. */
export interface FontFace {
	unitsPerEm: number;
	hasGlyphForCodePoint(code: number): boolean;
	glyphForCodePoint(code: number): Glyph;
	getGlyph(id: number, characters?: readonly number[]): Glyph;
	/** Glyphs in the order in which they are drawn, and where. */
	layout(text: string, ...how: unknown[]): GlyphRun;
}

interface GlyphRun {
	glyphs: Glyph[];
	positions: { xAdvance: number; yAdvance: number; xOffset: number; yOffset: number; advanceWidth: number }[];
}

interface Glyph {
	advanceWidth: number;
	/** What a reader of the PDF takes it for. */
	codePoints: readonly number[];
}

/** A registered font, which sets simple texts without a search for what only others need. */
export async function openFace(fontFamily: string, fontWeight: number): Promise<FontFace> {
	const wanted = { fontFamily, fontWeight };
	await Font.load(wanted);
	const face = Font.getFont(wanted)!.data as unknown as FontFace;
	toldWhatItIs(face);
	const shaped = face.layout.bind(face);
	face.layout = (text, ...how) => (SIDE_BY_SIDE.test(text) ? sideBySide(text, face) : shaped(text, ...how));
	return face;
}

/**
 * The library keeps a glyph as it first met it. One that it met as a part of another, as the y of a letter with an accent, it takes for no character
 * at all, and on the next page in the same process that letter would be read back as another.
 */
function toldWhatItIs(face: FontFace): void {
	const kept = face.getGlyph.bind(face);
	face.getGlyph = (id, characters = []) => {
		const glyph = kept(id, characters);
		if (glyph.codePoints.length === 0) glyph.codePoints = characters;
		return glyph;
	};
}

/**
 * Latin, Greek and Cyrillic letters, digits and signs: each stands beside the one before it, whatever that is. Looking for pairs and ligatures takes
 * longer than all else on a page, and of these texts it would bring some letters closer by a hair.
 */
const SIDE_BY_SIDE =
	/^[\u0020-\u007e\u00a0-\u00ac\u00ae-\u024f\u0391-\u0482\u048a-\u052f\u2010-\u2027\u2030-\u205e\u2070-\u20bf\u2100-\u27bf]*$/u;

function sideBySide(text: string, face: FontFace): GlyphRun {
	const glyphs = Array.from(text, (character) => face.glyphForCodePoint(character.codePointAt(0)!));
	const positions = glyphs.map(({ advanceWidth }) => {
		return { xAdvance: advanceWidth, yAdvance: 0, xOffset: 0, yOffset: 0, advanceWidth };
	});
	return { glyphs, positions };
}
