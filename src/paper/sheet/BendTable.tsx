import { at } from '../../maths/list.ts';
import { formatAngle } from '../../units/format.ts';
import { tapeValue } from '../../words/lengths.ts';
import { about, angle, dial } from '../../words/numbers.ts';
import { onDie, SHEET, sideWords } from '../../words/sheet.ts';
import { turnWords } from '../../words/turns.ts';
import { type Column, Table } from '../Table.tsx';
import type { SheetPart } from './SheetHead.tsx';

/** Pulls that a bend has room for, and how high one is where the page is full and where it is not. */
const PULLS = 2;
const CLOSE = 12.5;
const WIDE = 16;

const { columns: C } = SHEET;
const columnsOf = (isRound: boolean): readonly Column[] => [
	{ head: C.bend, part: 28, align: 'center', bold: true, size: 10 },
	{ head: C.mark, part: 76, align: 'right', bold: true, size: 10.5 },
	{ head: C.far, part: 58, align: 'right' },
	...(isRound ? [{ head: C.side, part: 62 }] : []),
	{ head: C.turn, part: 88, bold: true, size: 7 },
	{ head: C.stop, part: 44, align: 'right', bold: true, size: 10.5 },
	{ head: C.leaves, part: 60, align: 'right' },
	{ head: C.angle, part: 48, align: 'right', bold: true, size: 9.5 },
	{ head: C.held, part: 44, pen: true },
	{ head: C.released, part: 46, pen: true },
	{ head: C.measured, part: 50, pen: true },
];

/** How high a row of the table comes out. */
export const bendRow = (bends: number): number => PULLS * (bends > CLOSE_FROM ? CLOSE : WIDE);
const CLOSE_FROM = 4;

/** A row a bend in the order in which the hands work, and boxes for what the instruments say. */
export function BendTable({ of: { job, document, stops }, width }: SheetPart) {
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
	const pen = bendRow(rows.length) / PULLS;
	return <Table columns={columnsOf(isRound)} rows={rows} width={width} size={8} lines={PULLS} pen={pen} />;
}
