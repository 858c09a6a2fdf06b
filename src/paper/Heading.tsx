import { View } from '@react-pdf/renderer';
import { Words } from './Words.tsx';

/** What the rows under it are, never left alone at the foot of a page. */
export function Heading({ text, width }: { text: string; width: number }) {
	return (
		<View minPresenceAhead={40} style={{ paddingBottom: 2 }}>
			<Words text={text} width={width} size={9} bold />
		</View>
	);
}
