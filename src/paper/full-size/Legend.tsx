import { G, Rect, Text } from '@react-pdf/renderer';
import { FAMILY } from '../typeface.ts';

export interface LegendProps {
	text: string;
	/** The left end of the base line, and how long the text is there, in points. */
	x: number;
	y: number;
	width: number;
	size: number;
	bold?: boolean;
}

/** Words in a drawing; no line runs through them. */
export function Legend({ text, x, y, width, size, bold = false }: LegendProps) {
	return (
		<G>
			<Rect x={x - 0.5} y={y - 0.85 * size} width={width + 1} height={1.1 * size} fill="white" />
			<Text x={x} y={y} style={{ fontFamily: FAMILY, fontSize: size, fontWeight: bold ? 700 : 400 }}>
				{text}
			</Text>
		</G>
	);
}
