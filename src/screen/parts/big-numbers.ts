import { type Line, type Span, span } from '../line.ts';
import { type DigitScale, digitRows, digitWidth } from './digits.ts';

/** One of the numbers that the hands need now, with what it is above it and how it is meant below. */
export interface BigNumber {
	label: string;
	/** Digits, point, stroke, minus and space only. */
	value: string;
	/** In words, below the number. */
	below: string;
	/** The number that matters most keeps its size longest. */
	chief?: boolean;
}

const GAP = 3;

/** Scales in the order in which they are tried: of the chief number, of the others. */
const TRIES: readonly (readonly [DigitScale, DigitScale])[] = [
	['large', 'large'],
	['large', 'medium'],
	['medium', 'medium'],
	['large', 'plain'],
	['medium', 'plain'],
	['plain', 'plain'],
];

/** The numbers side by side in the order given, as large as `width` allows; 7 rows high, unless all are plain. */
export function bigNumbers(numbers: readonly BigNumber[], width: number, ink: string): Line[] {
	const scales = TRIES.map(([chief, others]) => numbers.map((number) => (number.chief ? chief : others)));
	const chosen = scales.find((each) => total(numbers, each) <= width) ?? scales.at(-1)!;
	const columns = numbers.map((number, at) => column(number, chosen[at]!, ink));
	const height = Math.max(...columns.map((rows) => rows.length));
	return Array.from({ length: height }, (_, row) => joined(columns, row));
}

function total(numbers: readonly BigNumber[], scales: readonly DigitScale[]): number {
	const widths = numbers.map((number, at) => columnWidth(number, scales[at]!));
	return widths.reduce((sum, each) => sum + each, GAP * (numbers.length - 1));
}

function columnWidth({ label, value, below }: BigNumber, scale: DigitScale): number {
	return Math.max(label.length, digitWidth(value, scale), below.length);
}

function column(number: BigNumber, scale: DigitScale, ink: string): Span[] {
	const width = columnWidth(number, scale);
	const rows = digitRows(number.value, scale, ink);
	// A plain number stands in the middle row, level with the block digits beside it.
	const body = rows.length === 1 ? ['', '', ...rows, '', ''] : rows;
	return [
		span(number.label.padEnd(width), 'quiet'),
		...body.map((row) => span(row.padEnd(width), 'strong')),
		span(number.below.padEnd(width)),
	];
}

function joined(columns: readonly Span[][], row: number): Line {
	return columns.flatMap((rows, at) => {
		const cell = rows[row] ?? span('');
		return at === 0 ? [cell] : [span(' '.repeat(GAP)), cell];
	});
}
