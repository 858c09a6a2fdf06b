import { clamp } from '../../maths/scalar.ts';
import type { Flat } from '../../tube/planes.ts';
import { POINTS } from '../page-size.ts';
import type { Typeface } from '../typeface.ts';
import type { Box, DrawnNote } from './drawing.ts';
import { isIn, type SheetRoom } from './sheets.ts';

/** Words where they are printed: their left end on the base line, in points from the drawing's top left. */
export interface PlacedNote {
	text: string;
	bold: boolean;
	x: number;
	y: number;
	width: number;
}

/** Size of the words, in points, and how far their base line lies under their middle. */
export const NOTE_SIZE = 8;
const DROP = 0.36 * NOTE_SIZE;
const HEIGHT = 1.1 * NOTE_SIZE;

/** How far words stay from a sheet's edge, points. */
const INSET = 3;

/** Which way words go from their place, for a part of a direction. */
const sideOf = (away: number, other: number) =>
	Math.abs(away) < 0.4 * Math.abs(other) || away === 0 ? 0 : Math.sign(away);

/** The words that belong to a sheet, each whole on it. `window`: what the sheet shows, in mm. */
export function placedNotes(
	notes: readonly DrawnNote[],
	{ cell, window, room, type }: { cell: Box; window: Box; room: SheetRoom; type: Typeface },
): PlacedNote[] {
	const wide = room.width * POINTS.mm;
	const high = room.height * POINTS.mm;
	return notes
		.filter(({ at }) => isIn(at, cell))
		.map(({ at, away, text, bold = false }) => {
			const width = type.width(text, { size: NOTE_SIZE, bold });
			const [x, y] = onSheet(at, window);
			const left = x - width / 2 + (sideOf(away[0], away[1]) * width) / 2;
			const middle = y - (sideOf(away[1], away[0]) * HEIGHT) / 2;
			return {
				text,
				bold,
				width,
				x: clamp(left, INSET, Math.max(INSET, wide - width - INSET)),
				y: clamp(middle, INSET + HEIGHT / 2, high - INSET - HEIGHT / 2) + DROP,
			};
		});
}

/** A place of the drawing in points from the top left of what a sheet shows. */
export const onSheet = ([x, y]: Flat, { left, high }: Box): Flat => [(x - left) * POINTS.mm, (high - y) * POINTS.mm];
