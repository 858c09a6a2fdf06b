import { Text } from '@react-pdf/renderer';
import { FAMILY } from '../typeface.ts';
import { useTypeface } from '../Words.tsx';

export interface LabelProps {
	/** The middle of the text, or its right or left end, in the drawing's points. */
	x: number;
	y: number;
	text: string;
	size: number;
	bold?: boolean;
	align?: 'left' | 'center' | 'right';
}

const SHIFT = { left: 0, center: 0.5, right: 1 };
/** Half the height of a digit, in sizes of the letters. */
const HALF = 0.36;

/** A short text of ours in a drawing. */
export function Label({ x, y, text, size, bold = false, align = 'center' }: LabelProps) {
	const type = useTypeface();
	const left = x - SHIFT[align] * type.width(text, { size, bold });
	return (
		<Text x={left} y={y + HALF * size} style={{ fontFamily: FAMILY, fontSize: size, fontWeight: bold ? 700 : 400 }}>
			{text}
		</Text>
	);
}
