import { View } from '@react-pdf/renderer';
import { Words } from './Words.tsx';

const NAME = 76;
const SIZE = 8;
const BETWEEN = 6;

/** Values with their names before them, two in a row. */
export function NamedValues({
	values,
	width,
}: {
	values: readonly (readonly [name: string, value: string])[];
	width: number;
}) {
	const half = width / 2;
	return (
		<View style={{ flexDirection: 'row', flexWrap: 'wrap', paddingTop: 3 }}>
			{values.map(([name, value]) => (
				<View key={name} style={{ flexDirection: 'row', width: half }}>
					<Words text={name} width={NAME} size={SIZE} />
					<Words text={value} width={half - NAME - BETWEEN} size={SIZE} bold />
				</View>
			))}
		</View>
	);
}
