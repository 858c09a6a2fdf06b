import { View } from '@react-pdf/renderer';
import { LEADING, Words } from './Words.tsx';

const SIZE = 9;
const UNDER = 2;

/** How high it stands, on one line. */
export const HEADING_HEIGHT = SIZE * LEADING + UNDER;

/** What the rows under it are, never left alone at the foot of a page. */
export function Heading({ text, width }: { text: string; width: number }) {
	return (
		<View minPresenceAhead={40} style={{ paddingBottom: UNDER }}>
			<Words text={text} width={width} size={SIZE} bold />
		</View>
	);
}
