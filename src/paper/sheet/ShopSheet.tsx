import { View } from '@react-pdf/renderer';
import { foreignName } from '../../words/foreign.ts';
import { SHEET, stopsKnown } from '../../words/sheet.ts';
import { Heading } from '../Heading.tsx';
import type { PartProps } from '../job-on-paper.ts';
import { PaperPage } from '../PaperPage.tsx';
import { inside } from '../page-size.ts';
import { Words } from '../Words.tsx';
import { BendTable } from './BendTable.tsx';
import { CheckTable } from './CheckTable.tsx';
import { FinishedTube } from './FinishedTube.tsx';
import { Lists } from './Lists.tsx';
import { CutAndMark, SheetHead } from './SheetHead.tsx';

/** Between two parts of the sheet. */
const GAP = 7;

/** One page to bend by with a pen in hand, in the order of the work; more pages beyond eight bends or so. */
export function ShopSheet({ of, paper }: PartProps) {
	const { job } = of;
	const { width, height } = inside(paper);
	const part = { of, width };
	return (
		<PaperPage paper={paper} title={`${foreignName(job.name)}: ${SHEET.title}`} foot={of.foot}>
			<View style={{ rowGap: GAP }}>
				<SheetHead {...part} />
				<CutAndMark {...part} />
				<View>
					<Heading text={SHEET.bend} width={width} />
					<BendTable {...part} />
					<Words text={`${SHEET.rows} ${stopsKnown(of.known)} ${SHEET.short}`} width={width} size={7} />
				</View>
				<CheckTable {...part} />
				<FinishedTube {...part} page={height} />
				<Lists {...part} />
			</View>
		</PaperPage>
	);
}
