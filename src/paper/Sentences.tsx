import { View } from '@react-pdf/renderer';
import { Words } from './Words.tsx';

/** Sentences below one another; null: none there. Of a text with lines each stands on its own. */
export function Sentences({
	lines,
	width,
	size,
	bold = false,
}: {
	lines: readonly (string | null)[];
	width: number;
	size: number;
	bold?: boolean;
}) {
	const said = lines.flatMap((line) => (line === null ? [] : line.split('\n')));
	return (
		<View>
			{said.map((line, at) => (
				// biome-ignore lint/suspicious/noArrayIndexKey: two lines may be the same
				<Words key={at} text={line} width={width} size={size} bold={bold} />
			))}
		</View>
	);
}
