import { at } from '../../maths/list.ts';
import type { Job } from '../../tube/job.ts';
import { formatAngle } from '../../units/format.ts';
import { tapeValue } from '../../words/lengths.ts';
import { about, angle, dial } from '../../words/numbers.ts';
import { inUnit, onDie, SHEET, sideWords } from '../../words/sheet.ts';
import { turnWords } from '../../words/turns.ts';
import type { PaperColumn, TableProps } from '../Table.tsx';
import type { SheetPart } from './SheetHead.tsx';

/** Pulls that a bend has room for. */
const PULLS_EACH = 2;
/** How high the room of a pull is: where there are few bends, where there are many, and where the page would not hold them else. */
const PULL_HEIGHT = { wide: 16, close: 12.5, least: 10 } as const;
const CLOSE_FROM = 4;

const { columns: C } = SHEET;
/** In points of A4, the narrower paper, no word of any of them broken. */
const bendColumns = (isRound: boolean, job: Job): readonly PaperColumn[] => [
	{ head: C.bend, part: 24.2, align: 'center', bold: true, size: 10 },
	{ head: inUnit(C.mark, job), part: 62.4, align: 'right', bold: true, size: 9.9 },
	{ head: C.far, part: 48.6, align: 'right' },
	...(isRound ? [{ head: C.side, part: 62, size: 6.4 }] : []),
	{ head: C.turn, part: 71.5, bold: true, size: 6.4 },
	{ head: C.stop, part: 45.1, align: 'right', bold: true, size: 10.5 },
	{ head: C.leaves, part: 50, align: 'right', size: 7.5 },
	{ head: C.angle, part: 48, align: 'right', bold: true, size: 9.5 },
	{ head: C.held, part: 36, pen: true },
	{ head: C.released, part: 34, pen: true },
	{ head: C.measured, part: 41.7, pen: true },
];

/** A row a bend in the order in which the hands work, and boxes for what the instruments say. `isClose`: the page has no more room. */
export function bendTable({ of: { job, document, stops }, width }: SheetPart, isClose: boolean): TableProps {
	const isRound = document.bends.some(({ face }) => face !== 'same');
	const rows = document.bends.map((bend, i) => {
		const { stop, expect } = at(stops, i);
		const { fromStart, fromFarEnd } = bend.mark;
		return [
			`${bend.bend}`,
			tapeValue(fromStart, job),
			tapeValue(fromFarEnd, job),
			...(isRound ? [sideWords(bend, job)] : []),
			bend.die === undefined ? turnWords(bend.tubeTurn) : `${turnWords(bend.tubeTurn)}, ${onDie(bend.die)}`,
			dial(stop),
			`${angle(expect.angle)}, ${about(expect.sd)}`,
			formatAngle(bend.angle, 2),
			'',
			'',
			'',
		];
	});
	const usual = rows.length > CLOSE_FROM ? PULL_HEIGHT.close : PULL_HEIGHT.wide;
	return {
		columns: bendColumns(isRound, job),
		rows,
		width,
		size: 8,
		lines: PULLS_EACH,
		pen: isClose ? PULL_HEIGHT.least : usual,
	};
}
