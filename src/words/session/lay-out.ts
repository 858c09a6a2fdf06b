import type { Around } from '../../tube/turns.ts';
import { bendsNamed } from '../bend-name.ts';
import { type Ruled, shownUnits, unitName } from '../lengths.ts';
import { angle, fine, tape } from '../numbers.ts';

/** What the page says on which the straight tube is laid out. */
export const LAY_OUT = {
	title: 'Lay out the tube',
	plus: 'laid out, go on',
	empty: 'Press + to go on.',
	/** Common practice, no source. */
	ends: 'Write START and FAR on the ends. Draw one straight line along the tube. Marks go round from it, clockwise (cw) or counterclockwise (ccw) as seen from START to FAR.',
	seam: 'A welded seam goes to the side of bend 1, neither inside nor outside of the bend.',
	moved: "! These are the drawing's marks; each bend's page has the one to use.",
	heads: ['START', 'FAR', 'round', 'turn'],
} as const;

/** How long the tube is cut, and in what the table's marks are. */
export const cutWords = (cut: number, job: Ruled): string =>
	`Cut length ${tape(cut, job)}, both trims in it. Marks in ${unitName(shownUnits(job))}.`;

/** Behind a row of the table: where the bend goes to. */
export const bendTo = (degrees: number): string => `to ${angle(degrees)}`;

/** How far round the tube a mark lies, in as few letters as a table has room for; its unit stands elsewhere. */
export function roundBrief({ face, around }: Around, job: Ruled): string {
	if (face === 'same') return 'on the line';
	if (face === 'opposite') return 'opposite';
	const length = fine(Math.abs(around.length), job).replace(/ \w+$/, '');
	return `${length} ${around.degrees > 0 ? 'cw' : 'ccw'}`;
}

/** At which bends a welded seam comes to lie where it must not. */
export function seamAt(bends: readonly number[]): string {
	return `At the side of bend 1 it comes to the inside or outside of ${bendsNamed(bends)}.`;
}
