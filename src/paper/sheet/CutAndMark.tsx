import { View } from '@react-pdf/renderer';
import { sumOf } from '../../maths/list.ts';
import { copedEnds } from '../../tube/cope.ts';
import { copeDoubts, copeWords } from '../../words/cope.ts';
import { tapeValue } from '../../words/lengths.ts';
import { SHEET, SHEET_ENDS, tapeCutWords } from '../../words/sheet.ts';
import { HEADING_HEIGHT, Heading } from '../Heading.tsx';
import { Sentences } from '../Sentences.tsx';
import type { Typeface } from '../typeface.ts';
import { heightOfWords, Words } from '../Words.tsx';
import type { SheetPart } from './SheetHead.tsx';
import { stripHeight, TapeStrip, type TapeStripProps } from './TapeStrip.tsx';

const CUT = 8.5;
const SAID = 7;

function stripOf({ of: { job, document }, width }: SheetPart): TapeStripProps {
	const marks = document.bends.map(({ bend, mark }) => {
		return { at: mark.fromStart, bend, reading: tapeValue(mark.fromStart, job) };
	});
	return { length: document.cutLength, trim: job.trim, marks, width, ends: SHEET_ENDS };
}

/** What the numbers rest on, and how the ends are cut. */
function saidLines({ of: { job, said } }: SheetPart): readonly string[] {
	return [...said, ...copedEnds(job).flatMap((end) => [copeWords(end, job), ...copeDoubts(end, job)])];
}

/** How high it stands. */
export function cutHeight(part: SheetPart, type: Typeface): number {
	const { width, of } = part;
	const words = [
		heightOfWords(tapeCutWords(of.document.cutLength, of.job), width, { size: CUT }, type),
		...saidLines(part).map((sentence) => heightOfWords(sentence, width, { size: SAID }, type)),
	];
	return HEADING_HEIGHT + stripHeight(stripOf(part), type) + sumOf(words);
}

/** The straight tube with its marks. */
export function CutAndMark(part: SheetPart) {
	const { width, of } = part;
	return (
		<View wrap={false}>
			<Heading text={SHEET.mark} width={width} />
			<Words text={tapeCutWords(of.document.cutLength, of.job)} width={width} size={CUT} />
			<TapeStrip {...stripOf(part)} />
			<Sentences lines={saidLines(part)} width={width} size={SAID} />
		</View>
	);
}
