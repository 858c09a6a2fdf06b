import type { Units } from '../tube/job.ts';
import { convertLength } from '../units/units.ts';

/** Sheets that a printer has. */
export type PageName = 'letter' | 'a4';

/** A sheet upright, in points of 1/72 in. Sources: ANSI/ASME Y14.1 size A (8.5 x 11 in), ISO 216 A4 (210 x 297 mm). */
export interface Paper {
	name: PageName;
	width: number;
	height: number;
}

/** Points in one unit of length. */
export const POINTS: Readonly<Record<Units, number>> = {
	in: 72,
	mm: 72 * convertLength(1, 'mm', 'in'),
};

export const PAPERS: Readonly<Record<PageName, Paper>> = {
	letter: { name: 'letter', width: 8.5 * POINTS.in, height: 11 * POINTS.in },
	a4: { name: 'a4', width: 210 * POINTS.mm, height: 297 * POINTS.mm },
};

/** White at the sides: more than any printer needs, and a place for the holes. */
export const MARGIN = 36;

/** From the edge to what stands on every page at its head and foot, and from there to the page's own. */
export const EDGE = 22;
export const HEAD = 20;

/** The room that a page has for its own. */
export const insideOf = ({ width, height }: Paper): { width: number; height: number } => ({
	width: width - 2 * MARGIN,
	height: height - 2 * (EDGE + HEAD),
});

/** The sheet that goes with a job. */
export const usualPaper = (units: Units): PageName => (units === 'in' ? 'letter' : 'a4');
