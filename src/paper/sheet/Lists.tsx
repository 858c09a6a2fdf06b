import { View } from '@react-pdf/renderer';
import { GENERAL_CAUTIONS } from '../../session/protocol/facts/caution.ts';
import { cautionWords } from '../../words/caution.ts';
import { lookFirst, SHEET } from '../../words/sheet.ts';
import { warningWords } from '../../words/warnings.ts';
import { HEADING_HEIGHT, Heading } from '../Heading.tsx';
import type { Typeface } from '../typeface.ts';
import { heightOfWords, Words } from '../Words.tsx';
import type { SheetPart } from './SheetHead.tsx';

/** Sizes of the words, the one that is read with ease and the one where the page is full. */
export const LIST_SIZES = { wide: 7.5, close: 6.5 } as const;
const BETWEEN_LISTS = 12;
/** A box to tick. */
const BOX = 6;
const LEAD = BOX + 5;
const UNDER = 1;

const halfOf = (width: number): number => (width - BETWEEN_LISTS) / 2;

function listsOf({ of: { job, document } }: SheetPart): readonly { head: string; lines: readonly string[] }[] {
	const cautions = [
		...document.warnings.map((warning) => warningWords(warning, job)),
		...GENERAL_CAUTIONS.map((code) => cautionWords({ code }, job)),
	];
	return [
		{ head: SHEET.look, lines: lookFirst(job, document.bends) },
		{ head: SHEET.cautions, lines: cautions },
	];
}

/** How high the longer of them stands. */
export function listsHeight(part: SheetPart, size: number, type: Typeface): number {
	const room = halfOf(part.width) - LEAD;
	const heights = listsOf(part).map(({ lines }) =>
		lines.reduce((sum, line) => sum + heightOfWords(line, room, { size }, type) + UNDER, HEADING_HEIGHT),
	);
	return Math.max(...heights);
}

/** What to look at first where something reads wrong, and what to mind. `size`: of the words. */
export function Lists({ size, ...part }: SheetPart & { size: number }) {
	const half = halfOf(part.width);
	return (
		<View wrap={false} style={{ flexDirection: 'row', columnGap: BETWEEN_LISTS }}>
			{listsOf(part).map(({ head, lines }) => (
				<View key={head} style={{ width: half }}>
					<Heading text={head} width={half} />
					{lines.map((line) => (
						<View key={line} wrap={false} style={{ flexDirection: 'row', paddingBottom: UNDER }}>
							<View style={{ width: BOX, height: BOX, marginTop: 1.5, marginRight: LEAD - BOX, borderWidth: 0.5 }} />
							<Words text={line} width={half - LEAD} size={size} />
						</View>
					))}
				</View>
			))}
		</View>
	);
}
