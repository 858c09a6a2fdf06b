import { View } from '@react-pdf/renderer';
import { bentAsWords } from '../../words/bent-as.ts';
import { foreignName } from '../../words/foreign.ts';
import { PEN_FIELDS, sheetHead } from '../../words/sheet.ts';
import type { JobOnPaper } from '../job-on-paper.ts';
import { NamedValues, namedValuesHeight } from '../NamedValues.tsx';
import type { Typeface } from '../typeface.ts';
import { heightOfWords, LEADING, Words } from '../Words.tsx';

export interface SheetPart {
	of: JobOnPaper;
	/** Points. */
	width: number;
}

const TITLE = { size: 14, bold: true };
const AS = { size: 9, bold: true };
const PEN_FIELD = { size: 8, name: 40, above: 4, line: 0.5 };
const BETWEEN = 10;

/** How high it stands. */
export function headHeight({ of: { job }, width }: SheetPart, type: Typeface): number {
	const as = bentAsWords(job);
	return (
		heightOfWords(foreignName(job.name), width, TITLE, type) +
		namedValuesHeight(sheetHead(job), width, type) +
		(PEN_FIELD.above + PEN_FIELD.size * LEADING + PEN_FIELD.line) +
		(as === null ? 0 : heightOfWords(as, width, AS, type))
	);
}

/** What the sheet is of: one line a thing, its name before it. */
export function SheetHead({ of: { job }, width }: SheetPart) {
	const as = bentAsWords(job);
	return (
		<View>
			<Words text={foreignName(job.name)} width={width} {...TITLE} />
			<NamedValues values={sheetHead(job)} width={width} />
			<View style={{ flexDirection: 'row', columnGap: BETWEEN, paddingTop: PEN_FIELD.above }}>
				{PEN_FIELDS.map((name) => (
					<View key={name} style={{ flexDirection: 'row', flexGrow: 1, borderBottomWidth: PEN_FIELD.line }}>
						<Words text={name} width={PEN_FIELD.name} size={PEN_FIELD.size} />
					</View>
				))}
			</View>
			{as !== null && <Words text={as} width={width} {...AS} />}
		</View>
	);
}
