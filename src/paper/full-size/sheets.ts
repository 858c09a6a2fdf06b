import { clamp } from '../../maths/scalar.ts';
import type { Flat } from '../../tube/planes.ts';
import { pieceLetter } from '../../words/cut-list.ts';
import { type Box, boxOf, type Drawing, moved, placesAlong, strokeLength, turning } from './drawing.ts';

/** One sheet of a drawing: `cell` is its own part, in mm of the turned drawing; it shows a little more all round, to be laid over. */
export interface Sheet {
	/** Row from the top as a letter, column as a number. */
	name: string;
	column: number;
	row: number;
	cell: Box;
	/** Names of the sheets that join it. */
	beside: { left: string | null; right: string | null; over: string | null; under: string | null };
}

/** A drawing laid over sheets. */
export interface Sheets {
	/** Turned so that it takes fewest sheets. */
	drawing: Drawing;
	/** Those that have something on them, row by row. */
	sheets: readonly Sheet[];
}

/** How far a sheet shows its neighbors' parts, mm. */
export const OVERLAP = 5;

/** How near to each other the places lie by which it is known what a sheet has on it, mm; of a long drawing so many of them. */
const FINE = 1;
const MOST_PLACES = 20_000;

/** Sheets that one drawing is printed on at most: beyond that it is quicker drawn on the bench. */
export const MOST_SHEETS = 100;

/** The room on a sheet, mm. */
export interface SheetRoom {
	width: number;
	height: number;
}

/**
 * The drawing over as few sheets as any of the given turns (degrees) takes; of turns that take as many the first. A drawing that fits on one
 * sheet takes all of its room, since nothing is laid over.
 */
export function laidOnSheets(drawing: Drawing, room: SheetRoom, turns: readonly number[] = [0]): Sheets {
	const length = drawing.strokes.reduce((sum, stroke) => sum + strokeLength(stroke), 0);
	const places = drawing.strokes.flatMap((stroke) => placesAlong(stroke, Math.max(FINE, length / MOST_PLACES)));
	const laid = turns.map((degrees) => {
		const turn = turning(degrees);
		return { turn, grid: gridOver(places.map(turn), room) };
	});
	const { turn, grid } = laid.reduce((best, next) => (next.grid.sheets.length < best.grid.sheets.length ? next : best));
	return { drawing: moved(drawing, turn), ...grid };
}

function gridOver(places: readonly Flat[], room: SheetRoom): Omit<Sheets, 'drawing'> {
	const box = boxOf(places);
	const size = { width: box.right - box.left, height: box.high - box.low };
	const isWhole = size.width <= room.width && size.height <= room.height;
	const lap = isWhole ? 0 : 2 * OVERLAP;
	const [wide, tall] = [room.width - lap, room.height - lap];
	const columns = Math.max(1, Math.ceil(size.width / wide));
	const rows = Math.max(1, Math.ceil(size.height / tall));
	// In the middle of the sheets.
	const left = (box.left + box.right - columns * wide) / 2;
	const high = (box.low + box.high + rows * tall) / 2;
	const within = (count: number, at: number) => clamp(Math.floor(at), 0, count - 1);
	const taken = new Set(
		places.map(([x, y]) => within(rows, (high - y) / tall) * columns + within(columns, (x - left) / wide)),
	);
	const name = (row: number, column: number): string | null =>
		row >= 0 && row < rows && column >= 0 && column < columns && taken.has(row * columns + column)
			? `${pieceLetter(row)}${column + 1}`
			: null;
	const sheets = [...taken]
		.sort((a, b) => a - b)
		.map((at): Sheet => {
			const [row, column] = [Math.floor(at / columns), at % columns];
			return {
				name: name(row, column)!,
				row,
				column,
				cell: {
					left: left + column * wide,
					right: left + (column + 1) * wide,
					low: high - (row + 1) * tall,
					high: high - row * tall,
				},
				beside: {
					left: name(row, column - 1),
					right: name(row, column + 1),
					over: name(row - 1, column),
					under: name(row + 1, column),
				},
			};
		});
	return { sheets };
}

/** Whether a place lies in a box. */
export const isIn = ([x, y]: Flat, { left, right, low, high }: Box): boolean =>
	x >= left && x < right && y > low && y <= high;
