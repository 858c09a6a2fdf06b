import { View } from '@react-pdf/renderer';
import { diesOf } from '../../tube/dies.ts';
import { drawingAxes } from '../../tube/drawing-axes.ts';
import { cornersOn, frames } from '../../tube/frames.ts';
import { isFlat, workshopViews } from '../../tube/principal-views.ts';
import { tape } from '../../words/numbers.ts';
import { SHEET } from '../../words/sheet.ts';
import { sizesOf, TubeViews } from '../drawing/TubeViews.tsx';
import { Heading } from '../Heading.tsx';
import { bendRow } from './BendTable.tsx';
import type { SheetPart } from './SheetHead.tsx';

/** Points that the drawing may take: less where the page is full, but never so little that nothing is seen. */
const ROOM = { most: 170, least: 74, alone: 320 };
/** What of a page the rest of the sheet takes, its tables and warnings not counted. */
const REST = 392;
const CHECK_ROW = 17;
const WARNING = 19;
/** What each further die adds: its line in the head, what its marks are for, and its name in the rows. */
const FURTHER_DIE = 70;
/** With more bends the drawing comes on a page after the table's. */
const ONE_PAGE = 8;

function roomFor(page: number, bends: number, checks: number, warnings: number, dies: number): number {
	if (bends > ONE_PAGE) return ROOM.alone;
	const tables = bends * bendRow(bends) + checks * CHECK_ROW;
	const left = page - REST - tables - warnings * WARNING - (dies - 1) * FURTHER_DIE;
	return Math.min(ROOM.most, Math.max(ROOM.least, left));
}

/** The tube as it should come out, from the front, from above and from aside. `page`: points from its top to its foot. */
export function FinishedTube({ of: { job, document, shape }, width, page }: SheetPart & { page: number }) {
	const at = frames(shape);
	const { od } = job.tube;
	const axes = drawingAxes(job.shape, shape);
	const { front, top, oblique } = workshopViews(axes);
	const sized = [front, top].map((view) => ({ view, sizes: sizesOf(at, od, view, (length) => tape(length, job)) }));
	const flat = isFlat(cornersOn(at), axes);
	const views = flat ? sized.slice(0, 1) : [...sized, { view: oblique, sizes: null }];
	const room = roomFor(page, at.arcs.length, job.checks.length, document.warnings.length, diesOf(job).length);
	return (
		<View wrap={false}>
			<Heading text={flat ? `${SHEET.shape}. ${SHEET.flat}` : SHEET.shape} width={width} />
			<TubeViews at={at} od={od} views={views} room={{ width, height: room }} />
		</View>
	);
}
