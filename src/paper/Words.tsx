import { Text, View } from '@react-pdf/renderer';
import { createContext, useContext } from 'react';
import { oneLine, paperLines } from './paper-lines.ts';
import { FAMILY, type Typeface, type TypeStyle } from './typeface.ts';

/** The fonts that a document is set in. */
export const TypefaceOf = createContext<Typeface | null>(null);

export function useTypeface(): Typeface {
	const type = useContext(TypefaceOf);
	if (type === null) throw new RangeError('Words stand in a document that has its fonts.');
	return type;
}

/** From one line to the next, in sizes of the letters. */
export const LEADING = 1.25;

/** How high a text comes out that has so many points a line. */
export function heightOfWords(text: string, width: number, style: TypeStyle, type: Typeface): number {
	return paperLines(type.legible(text), width, style, type).length * style.size * LEADING;
}

export interface WordsProps extends TypeStyle {
	/** What of it came from outside is made legible here. */
	text: string;
	/** Points that a line may take. */
	width: number;
	align?: 'left' | 'right' | 'center';
	/** On one line, what has no room left out: for what stands in full elsewhere. */
	brief?: boolean;
}

/** A text in lines that fit, whatever characters it has and however long its words are. */
export function Words({ text, width, size, bold = false, align = 'left', brief = false }: WordsProps) {
	const type = useTypeface();
	const style = { fontFamily: FAMILY, fontSize: size, fontWeight: bold ? 700 : 400, lineHeight: LEADING } as const;
	const said = type.legible(text);
	const set = { size, bold };
	const lines = brief ? [oneLine(said, width, set, type)] : paperLines(said, width, set, type);
	const [first] = lines;
	const height = size * LEADING;
	if (lines.length === 1) return <Text style={{ ...style, width, height, textAlign: align }}>{first}</Text>;
	// A line end inside of a text is a character that the font lacks, and would be set in another.
	return (
		<View style={{ width }}>
			{lines.map((line, at) => (
				// biome-ignore lint/suspicious/noArrayIndexKey: lines have no other name
				<Text key={at} style={{ ...style, width, height, textAlign: align }} wrap={false}>
					{line}
				</Text>
			))}
		</View>
	);
}
