import { View } from '@react-pdf/renderer';
import { copedEnds } from '../../tube/cope.ts';
import { bentAsWords } from '../../words/bent-as.ts';
import { copeDoubts, copeWords } from '../../words/cope.ts';
import { foreignName } from '../../words/foreign.ts';
import { tapeValue } from '../../words/lengths.ts';
import { cutWords, PEN_FIELDS, SHEET, sheetHead } from '../../words/sheet.ts';
import { Heading } from '../Heading.tsx';
import type { JobOnPaper } from '../job-on-paper.ts';
import { NamedValues } from '../NamedValues.tsx';
import { Words } from '../Words.tsx';
import { TapeStrip } from './TapeStrip.tsx';

export interface SheetPart {
	of: JobOnPaper;
	/** Points. */
	width: number;
}

/** What the sheet is of: one line a thing, its name before it. */
export function SheetHead({ of: { job }, width }: SheetPart) {
	const as = bentAsWords(job);
	return (
		<View>
			<Words text={foreignName(job.name)} width={width} size={14} bold />
			<NamedValues values={sheetHead(job)} width={width} />
			<View style={{ flexDirection: 'row', columnGap: BETWEEN, paddingTop: 4 }}>
				{PEN_FIELDS.map((name) => (
					<View key={name} style={{ flexDirection: 'row', flexGrow: 1, borderBottomWidth: 0.5 }}>
						<Words text={name} width={PEN_NAME} size={8} />
					</View>
				))}
			</View>
			{as !== null && <Words text={as} width={width} size={9} bold />}
		</View>
	);
}

const PEN_NAME = 40;
const BETWEEN = 10;

/** The straight tube with its marks. */
export function CutAndMark({ of: { job, document, said }, width }: SheetPart) {
	const marks = document.bends.map(({ bend, mark }) => {
		return { at: mark.fromStart, bend, reading: tapeValue(mark.fromStart, job) };
	});
	const copes = copedEnds(job).flatMap((end) => [copeWords(end, job), ...copeDoubts(end, job)]);
	return (
		<View wrap={false}>
			<Heading text={SHEET.mark} width={width} />
			<Words text={cutWords(document.cutLength, job)} width={width} size={8.5} />
			<TapeStrip length={document.cutLength} trim={job.trim} marks={marks} width={width} ends={['START', 'FAR END']} />
			{[...said, ...copes].map((sentence) => (
				<Words key={sentence} text={sentence} width={width} size={7} />
			))}
		</View>
	);
}
