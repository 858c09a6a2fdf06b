import { View } from '@react-pdf/renderer';
import { GENERAL_CAUTIONS } from '../../session/protocol/facts/caution.ts';
import { cautionWords } from '../../words/caution.ts';
import { lookFirst, SHEET } from '../../words/sheet.ts';
import { warningWords } from '../../words/warnings.ts';
import { Heading } from '../Heading.tsx';
import { Words } from '../Words.tsx';
import type { SheetPart } from './SheetHead.tsx';

const SIZE = 6.5;
const BETWEEN = 12;
/** A box to tick. */
const BOX = 6;
const LEAD = BOX + 5;

/** What to look at first where something reads wrong, and what to mind. */
export function Lists({ of: { job, document }, width }: SheetPart) {
	const half = (width - BETWEEN) / 2;
	const cautions = [
		...document.warnings.map((warning) => warningWords(warning, job)),
		...GENERAL_CAUTIONS.map((code) => cautionWords({ code }, job)),
	];
	return (
		<View style={{ flexDirection: 'row', columnGap: BETWEEN }}>
			<List head={SHEET.look} lines={lookFirst(job, document.bends)} width={half} />
			<List head={SHEET.cautions} lines={cautions} width={half} />
		</View>
	);
}

function List({ head, lines, width }: { head: string; lines: readonly string[]; width: number }) {
	return (
		<View style={{ width }}>
			<Heading text={head} width={width} />
			{lines.map((line) => (
				<View key={line} wrap={false} style={{ flexDirection: 'row', paddingBottom: 1 }}>
					<View style={{ width: BOX, height: BOX, marginTop: 1.5, marginRight: LEAD - BOX, borderWidth: 0.5 }} />
					<Words text={line} width={width - LEAD} size={SIZE} />
				</View>
			))}
		</View>
	);
}
