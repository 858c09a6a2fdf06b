import { clamp } from '../../maths/scalar.ts';
import { END_LABELS } from '../../words/round.ts';
import { type Line, line } from '../text/line.ts';
import { centeredStart } from '../text/window.ts';

/** A mark on the straight tube: where it lies from the start end, what bend it is for, and what the tape reads there. */
export interface StripMark {
	at: number;
	bend: number;
	reading: string;
}

/** The straight tube to scale with its marks as a tape along it shows them, in so many columns; readings in two rows where one is too narrow. */
export function tapeStrip(length: number, marks: readonly StripMark[], columns: number): Line[] {
	const column = (at: number) => clamp(Math.round((at / length) * (columns - 1)), 0, columns - 1);
	const tube = Array<string>(columns).fill('─');
	tube[0] = '├';
	tube[columns - 1] = '┤';
	for (const { at } of marks) tube[column(at)] = '┼';
	const { start, far } = END_LABELS;
	const ends = `${start}${' '.repeat(Math.max(1, columns - start.length - far.length))}${far}`;
	const bends = rowsOf(marks.map(({ at, bend }) => ({ at: column(at), text: String(bend) })));
	const readings = rowsOf(marks.map(({ at, reading }) => ({ at: column(at), text: reading })));
	return [
		line(ends, 'quiet'),
		line(tube.join('')),
		...bends.map((row) => line(row, 'strong')),
		...readings.map((row) => line(row)),
	];

	/** Texts centered under their places; one that would touch its neighbor goes into the next row. */
	function rowsOf(texts: readonly { at: number; text: string }[]): string[] {
		const rows: string[] = [];
		for (const { at, text } of texts) {
			const start = centeredStart(at, text, columns);
			const free = rows.findIndex((row) => row.length === 0 || row.length < start);
			const row = free < 0 ? rows.push('') - 1 : free;
			rows[row] = rows[row]!.padEnd(start) + text;
		}
		return rows;
	}
}
