import { View } from '@react-pdf/renderer';
import { sumOf } from '../maths/list.ts';
import type { Typeface } from './typeface.ts';
import { heightOfWords, Words } from './Words.tsx';

const WIDTH_OF_NAME = 76;
const VALUE_SIZE = 8;
const BETWEEN = 6;

type ValuePairs = readonly (readonly [name: string, value: string])[];

const ABOVE = 3;
const valueWidth = (width: number): number => width / 2 - WIDTH_OF_NAME - BETWEEN;

/** How high they stand. */
export function namedValuesHeight(values: ValuePairs, width: number, type: Typeface): number {
	const each = values.map(([name, value]) =>
		Math.max(
			heightOfWords(name, WIDTH_OF_NAME, { size: VALUE_SIZE }, type),
			heightOfWords(value, valueWidth(width), { size: VALUE_SIZE, bold: true }, type),
		),
	);
	const rows = each.filter((_, at) => at % 2 === 0).map((height, row) => Math.max(height, each[2 * row + 1] ?? 0));
	return ABOVE + sumOf(rows);
}

/** Values with their names before them, two in a row. */
export function NamedValues({ values, width }: { values: ValuePairs; width: number }) {
	const half = width / 2;
	return (
		<View style={{ flexDirection: 'row', flexWrap: 'wrap', paddingTop: ABOVE }}>
			{values.map(([name, value]) => (
				<View key={name} style={{ flexDirection: 'row', width: half }}>
					<Words text={name} width={WIDTH_OF_NAME} size={VALUE_SIZE} />
					<Words text={value} width={valueWidth(width)} size={VALUE_SIZE} bold />
				</View>
			))}
		</View>
	);
}
