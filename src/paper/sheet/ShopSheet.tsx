import { View } from '@react-pdf/renderer';
import { foreignName } from '../../words/foreign.ts';
import { rowsWords, SHEET, shortWords, stopsKnown } from '../../words/sheet.ts';
import { HEADING_HEIGHT, Heading } from '../Heading.tsx';
import type { PartProps } from '../job-on-paper.ts';
import { PaperPage } from '../PaperPage.tsx';
import { insideOf } from '../page-size.ts';
import { Table, tableHeight } from '../Table.tsx';
import type { Typeface } from '../typeface.ts';
import { heightOfWords, useTypeface, Words } from '../Words.tsx';
import { bendTable } from './bend-table.ts';
import { CutAndMark, cutHeight } from './CutAndMark.tsx';
import { checkTable } from './check-table.ts';
import { FinishedTube } from './FinishedTube.tsx';
import { LIST_SIZES, Lists, listsHeight } from './Lists.tsx';
import { headHeight, SheetHead, type SheetPart } from './SheetHead.tsx';

/** Between two parts of the sheet, and over the words under a table. */
const BETWEEN_PARTS = 7;
const OVER_WORDS = 2;
const ROWS_SIZE = 7;

/** Points that the drawing may take: what the page has left, within bounds; `alone` where it comes on a page after the table's. */
const DRAWING_ROOM = { most: 300, least: 60, alone: 320 };
/** The words of the lists are as large as they should be where this is left for the drawing. */
const ENOUGH = 150;
/** What rounding may add. */
const SLACK = 4;

/** One page to bend by with a pen in hand, in the order of the work; more pages beyond eight bends or so. */
export function ShopSheet({ of, paper, alone }: PartProps) {
	const { job } = of;
	const { width, height } = insideOf(paper);
	const part = { of, width };
	const { room, size, isClose, fits } = sheetFit(part, height, useTypeface());
	return (
		<PaperPage
			paper={paper}
			title={`${foreignName(job.name)}: ${SHEET.title}`}
			foot={of.foot}
			fits={fits}
			only={fits && alone}
		>
			<View style={{ rowGap: BETWEEN_PARTS }}>
				<SheetHead {...part} />
				<CutAndMark {...part} />
				<View>
					<Heading text={SHEET.bend} width={width} />
					<Table {...bendTable(part, isClose)} />
					<View style={{ paddingTop: OVER_WORDS }}>
						<Words text={saidUnder(part)} width={width} size={ROWS_SIZE} />
					</View>
				</View>
				{job.checks.length > 0 && (
					<View>
						<Heading text={SHEET.check} width={width} />
						<Table {...checkTable(part, isClose)} />
					</View>
				)}
				<FinishedTube {...part} room={room} />
				<Lists {...part} size={size} />
			</View>
		</PaperPage>
	);
}

const saidUnder = ({ of }: SheetPart): string =>
	`${rowsWords(of.document.bends, of.job)} ${stopsKnown(of.known)} ${shortWords(of.job)}`;

/** What gives way so that all of it is one page. */
interface SheetFit {
	room: number;
	/** Of the words of the lists. */
	size: number;
	/** Rows for the pen are as low as one can write in. */
	isClose: boolean;
	fits: boolean;
}

/** The drawing takes what the words leave of the page. Before it gets too small the lists are set smaller, then the rows for the pen lower. */
function sheetFit(part: SheetPart, page: number, type: Typeface): SheetFit {
	const { of, width } = part;
	const rows = heightOfWords(saidUnder(part), width, { size: ROWS_SIZE }, type);
	const { checks } = of.job;
	const left = (size: number, isClose: boolean) => {
		const parts = [
			headHeight(part, type),
			cutHeight(part, type),
			HEADING_HEIGHT + tableHeight(bendTable(part, isClose), type) + OVER_WORDS + rows,
			...(checks.length > 0 ? [HEADING_HEIGHT + tableHeight(checkTable(part, isClose), type)] : []),
			HEADING_HEIGHT,
			listsHeight(part, size, type),
		];
		return parts.reduce((sum, height) => sum - height, page) - (parts.length - 1) * BETWEEN_PARTS - SLACK;
	};
	const size = left(LIST_SIZES.wide, false) >= ENOUGH ? LIST_SIZES.wide : LIST_SIZES.close;
	const isClose = left(size, false) < DRAWING_ROOM.least;
	const room = left(size, isClose);
	if (room >= DRAWING_ROOM.least) return { size, isClose, room: Math.min(DRAWING_ROOM.most, room), fits: true };
	return { size, isClose: false, room: DRAWING_ROOM.alone, fits: false };
}
