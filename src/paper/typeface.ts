import { Font } from '@react-pdf/renderer';
import { foreign } from '../words/foreign.ts';
import { type FontFace, openFace } from './face.ts';
import { fontFile } from './font-files.ts';

/** The one family on paper: it has fractions, arrows and most alphabets, and is embedded, so that every reader and printer shows the same. */
export const FAMILY = 'DejaVu Sans';

const [REGULAR, BOLD] = [400, 700];

export interface TypeStyle {
	/** In points. */
	size: number;
	bold?: boolean;
}

/** What is asked of a font before anything is set in it. */
export interface Typeface {
	/** How long a text comes out on one line, in points. */
	width(text: string, style: TypeStyle): number;
	/**
	 * A text from outside so that every character of it can be read: what acts or cannot be drawn is written by its code. An empty box in its
	 * place would hide which character it was.
	 */
	legible(text: string): string;
}

let openedTypeface: Promise<Typeface> | null = null;

/** Opens the fonts, once. @throws what the disk threw where their files are gone */
export function openTypeface(): Promise<Typeface> {
	openedTypeface ??= open();
	return openedTypeface;
}

async function open(): Promise<Typeface> {
	const fonts = [
		{ src: fontFile('DejaVuSans'), fontWeight: REGULAR },
		{ src: fontFile('DejaVuSans-Bold'), fontWeight: BOLD },
	];
	Font.register({ family: FAMILY, fonts });
	// `Words` breaks lines itself.
	Font.registerHyphenationCallback((word) => [word]);
	const faces = { regular: await openFace(FAMILY, REGULAR), bold: await openFace(FAMILY, BOLD) };
	const canDraw = (code: number) => faces.regular.hasGlyphForCodePoint(code) && faces.bold.hasGlyphForCodePoint(code);
	const [regulars, bolds] = [textWidths(faces.regular), textWidths(faces.bold)];
	return {
		width: (text, { size, bold = false }) => size * (bold ? bolds : regulars)(text),
		legible: (text) => legible(foreign(text), canDraw),
	};
}

/** How wide texts are in sizes of the letters, character by character: what is set closer by a pair comes out no wider. Each is looked up once. */
function textWidths(face: FontFace): (text: string) => number {
	const known = new Map<string, number>();
	const widthOf = (character: string) => {
		const kept = known.get(character);
		if (kept !== undefined) return kept;
		const width = face.glyphForCodePoint(character.codePointAt(0)!).advanceWidth / face.unitsPerEm;
		known.set(character, width);
		return width;
	};
	return (text) => {
		let sum = 0;
		for (const character of text) sum += widthOf(character);
		return sum;
	};
}

/** Characters that cannot be drawn, by their codes; several in a row together, with blanks between at which a line may end. */
function legible(text: string, canDraw: (code: number) => boolean): string {
	const parts: string[] = [];
	let codes: string[] = [];
	for (const character of `${text}\n`) {
		const code = character.codePointAt(0)!;
		const isEnd = character === '\n';
		if (!isEnd && !canDraw(code)) codes.push(code.toString(16).toUpperCase().padStart(4, '0'));
		else {
			if (codes.length > 0) parts.push(`[U+${codes.join(' ')}]`);
			codes = [];
			if (!isEnd) parts.push(character);
		}
	}
	return parts.join('');
}
