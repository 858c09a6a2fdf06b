import { View } from '@react-pdf/renderer';
import { LEADING, Words } from './Words.tsx';

const HEADING_SIZE = 9;
const UNDER = 2;

/** How high it stands, on one line. */
export const HEADING_HEIGHT = HEADING_SIZE * LEADING + UNDER;

interface HeadingProps {
	text: string;
	width: number;
	/** Without so many points of what follows it does not stand at the foot of a page. */
	ahead?: number;
	/** What the page leaves between it and what follows, where it is to stand close. */
	gap?: number;
}

/** What the rows under it are. */
export function Heading({ text, width, ahead = 40, gap = 0 }: HeadingProps) {
	return (
		<View minPresenceAhead={ahead} style={{ paddingBottom: UNDER, marginBottom: -gap }}>
			<Words text={text} width={width} size={HEADING_SIZE} bold />
		</View>
	);
}
