import type { Units } from '../tube/job.ts';

/** Sheets that a printer has. */
export type PageName = 'letter' | 'a4';

/** A sheet upright, in points of 1/72 in. Sources: ANSI/ASME Y14.1 size A (8.5 x 11 in), ISO 216 A4 (210 x 297 mm). */
export interface Paper {
	name: PageName;
	width: number;
	height: number;
}

/** Points in one unit of length. */
export const POINTS: Readonly<Record<Units, number>> = { in: 72, mm: 72 / 25.4 };

export const PAPERS: Readonly<Record<PageName, Paper>> = {
	letter: { name: 'letter', width: 8.5 * POINTS.in, height: 11 * POINTS.in },
	a4: { name: 'a4', width: 210 * POINTS.mm, height: 297 * POINTS.mm },
};

/** What every printer leaves white, and a finger's width for the holes. */
export const MARGIN = 36;

/** Lines at the top and the foot of every page, with what keeps them apart from the rest. */
export const HEAD = 26;
export const FOOT = 22;

/** The room that a page has for its own. */
export const inside = ({ width, height }: Paper): { width: number; height: number } => ({
	width: width - 2 * MARGIN,
	height: height - 2 * MARGIN - HEAD - FOOT,
});

/** The sheet that goes with a job. */
export const usualPaper = (units: Units): PageName => (units === 'in' ? 'letter' : 'a4');
