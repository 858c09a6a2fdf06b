import { at } from '../../maths/list.ts';
import { checkWords } from '../../words/checks.ts';
import { checkValueWords } from '../../words/doubt.ts';
import { foreignName } from '../../words/foreign.ts';
import { SHEET } from '../../words/sheet.ts';
import type { PaperColumn, TableProps } from '../Table.tsx';
import type { SheetPart } from './SheetHead.tsx';

const { columns: C } = SHEET;
const COLUMNS: readonly PaperColumn[] = [
	{ head: C.after, part: 44, align: 'center' },
	{ head: C.check, part: 320 },
	{ head: C.should, part: 76, align: 'right', bold: true, size: 9 },
	{ head: C.within, part: 52, align: 'right' },
	{ head: C.read, part: 58, pen: true },
];

/** How high a box for the pen is where the page has no more room. */
const LEAST_PEN = 11;

/** What is read on the tube itself, and what it should be; in the order in which it can be. */
export function checkTable({ of: { job, document }, width }: SheetPart, isClose: boolean): TableProps {
	const due = document.checks.map((check, i) => ({ ...check, of: at(job.checks, i) }));
	const inOrder = due.sort((one, other) => one.after - other.after);
	const rows = inOrder.map(({ after, name, kind, design, tolerance, of }) => [
		`${after}`,
		`${foreignName(name)}: ${checkWords(of)}`,
		checkValueWords(design, kind, job),
		`±${checkValueWords(tolerance, kind, job)}`,
		'',
	]);
	return { columns: COLUMNS, rows, width, size: 7.5, ...(isClose && { pen: LEAST_PEN }) };
}
