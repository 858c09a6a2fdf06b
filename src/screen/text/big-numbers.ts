import { at } from '../../maths/list.ts';
import { arrowRows } from '../drawing/turn-arrow.ts';
import { digitRows } from './digits.ts';
import { type Line, type Span, span } from './line.ts';
import {
	type BigNumber,
	gapsOf,
	inWords,
	labelOf,
	numbersLayout,
	type PlacedNumber,
	rowsForNumbers,
} from './numbers-layout.ts';

export type { BigNumber };

/** The numbers in block digits, as large as a window of that size allows; where they are read out, in words. */
export function bigNumbers(
	numbers: readonly BigNumber[],
	{ columns, window, ink, spoken }: { columns: number; window: number; ink: string; spoken: boolean },
): Line[] {
	if (spoken) return numbers.map(({ brief: _, ...whole }) => [span(inWords(whole), 'strong')]);
	return numbersLayout(numbers, columns, rowsForNumbers(window)).flatMap((line) => drawn(line, ink, columns));
}

function drawn(line: readonly PlacedNumber[], ink: string, room: number): Line[] {
	const digits = line.filter(({ scale }) => scale !== null);
	const words = line.filter(({ scale }) => scale === null);
	const columns = digits.map((placed) => column(placed, ink));
	const most = Math.max(0, ...columns.map(({ body }) => body.length));
	const gaps = gapsOf(digits, room);
	const above = (rows: readonly Span[]): Line => spaced(rows, gaps);
	const lines =
		digits.length === 0
			? []
			: [
					above(columns.map(({ label }) => label)),
					// Digits of different sizes stand on one line.
					...Array.from({ length: most }, (_, row) =>
						above(columns.map(({ body, blank }) => body[row - most + body.length] ?? blank)),
					),
					above(columns.map(({ below }) => below)),
				];
	const inLine = words.map(({ number }) => span(inWords(number), 'strong'));
	return words.length === 0 ? lines : [...lines, spaced(inLine, gapsOf(words, room))];
}

function column({ number, scale, width }: PlacedNumber, ink: string) {
	const { value, below, way } = number;
	const digits = digitRows(value, scale, ink);
	const arrow = way === undefined || scale === null ? [] : arrowRows(way, scale, ink);
	const gap = ' '.repeat(scale?.across ?? 1);
	const body = digits.map((row, i) =>
		span((arrow.length === 0 ? row : row + gap + at(arrow, i)).padEnd(width), 'strong'),
	);
	const blank = span(' '.repeat(width));
	return { label: span(labelOf(number).padEnd(width), 'quiet'), body, blank, below: span(below.padEnd(width)) };
}

function spaced(cells: readonly Span[], gaps: readonly number[]): Line {
	return cells.flatMap((cell, i) => (i === 0 ? [cell] : [span(' '.repeat(at(gaps, i))), cell]));
}
