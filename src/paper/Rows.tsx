import { View } from '@react-pdf/renderer';
import { Words } from './Words.tsx';

export interface RowsProps {
	heads: readonly string[];
	/** A cell a head. */
	rows: readonly (readonly string[])[];
	/** Points that each column takes. */
	widths: readonly number[];
	/** How many columns from the left hold words; the others hold numbers, in line at their right ends. */
	words: number;
	size: number;
}

/** Rows under their heads, the next page's too. */
export function Rows({ heads, rows, widths, words, size }: RowsProps) {
	const cells = (row: readonly string[], bold: boolean) =>
		row.map((cell, i) => (
			<Words
				key={heads[i]}
				text={cell}
				width={widths[i]!}
				size={size}
				bold={bold}
				align={i < words ? 'left' : 'right'}
			/>
		));
	return (
		<View style={{ marginVertical: 5 }}>
			<View fixed style={{ flexDirection: 'row', borderBottomWidth: 0.6 }} wrap={false}>
				{cells(heads, true)}
			</View>
			{rows.map((row) => (
				<View key={row.join('\n')} style={{ flexDirection: 'row', borderBottomWidth: 0.3 }} wrap={false}>
					{cells(row, false)}
				</View>
			))}
		</View>
	);
}
