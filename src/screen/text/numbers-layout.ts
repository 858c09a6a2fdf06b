import { at } from '../../maths/list.ts';
import { DEGREES } from '../../words/screen/frame.ts';
import { ARROW_COLUMNS, type ArrowWay } from '../drawing/turn-arrow.ts';
import { DIGIT_ROWS, type DigitScale, digitSize } from './digits.ts';

/** One of the numbers that the hands need now, with what it is above it and how it is meant below. */
export interface BigNumber {
	label: string;
	/** Beside the label, or beside the number where it stands among words; empty where it goes without saying. */
	unit: string;
	/** Digits, point, stroke, minus and space only. */
	value: string;
	/** In words, below the number. */
	below: string;
	/** The same shorter, for a number that stands among words. */
	brief?: string;
	/** 1 for the number that matters most, 2 for the one after it, 3 for the rest: the lower, the larger. */
	place: 1 | 2 | 3;
	/** Drawn beside the number. */
	way?: ArrowWay;
}

export interface PlacedNumber {
	number: BigNumber;
	scale: DigitScale;
	width: number;
}

/** The numbers in lines, each line's side by side, in the order given; a number without a scale stands in a line of words. */
export type NumbersLayout = readonly (readonly PlacedNumber[])[];

const NUMBER_GAP = 2;
/** Label above, words below. */
const WORD_ROWS = 2;

/** From small to large. A cell of a terminal is about twice as high as wide: the even ones are square. */
const SCALES: readonly NonNullable<DigitScale>[] = [
	{ across: 1, down: 1 },
	{ across: 2, down: 1 },
	{ across: 2, down: 2 },
	{ across: 3, down: 2 },
	{ across: 4, down: 2 },
	{ across: 4, down: 3 },
	{ across: 5, down: 3 },
	{ across: 6, down: 3 },
	{ across: 6, down: 4 },
	{ across: 8, down: 4 },
];

/** Rows that the question, its reason, the ladder and the keys want; and the part of a large window that is enough. */
const OTHER_ROWS = 16;
const PART = 0.47;

/** Rows of a window that numbers may take. */
export function rowsForNumbers(windowRows: number): number {
	const most = Math.min(windowRows - OTHER_ROWS, Math.floor(windowRows * PART));
	return Math.max(DIGIT_ROWS + WORD_ROWS + 1, most);
}

/** What a number's size is worth by its place, and what one in words is worth against the smallest digits. */
const WORTH = [3, 1, 2] as const;
const IN_WORDS = 1 / 8;

type Scales = readonly [DigitScale, DigitScale, DigitScale];

/**
 * How large each number is drawn, and in which lines: as large as all of them can be together, none as large as one that matters
 * more. Pure: of the window and the numbers alone, so that it changes only when they do.
 */
export function numbersLayout(numbers: readonly BigNumber[], columns: number, rows: number): NumbersLayout {
	let best: NumbersLayout | null = null;
	let most = Number.NEGATIVE_INFINITY;
	for (const scales of scalesToTry(numbers, rows)) {
		const worth = scalesWorth(numbers, scales);
		if (worth <= most) continue;
		const fitting = arrangements(numbers)
			.map((lines) => lines.map((line) => line.map((number) => place(number, scales[number.place - 1]!))))
			.find((lines) => fits(lines, columns, rows));
		if (fitting !== undefined) [best, most] = [fitting, worth];
	}
	// Not even the smallest digits fit: in words, a line each.
	return best ?? numbers.map((number) => [place(number, null)]);
}

/** In the order in which the hands work: all in one line, or what places the tube above what stops the pull. */
function arrangements(numbers: readonly BigNumber[]): (readonly BigNumber[])[][] {
	const chiefs = numbers.filter(({ place }) => place < 3);
	const rest = numbers.filter(({ place }) => place === 3);
	return rest.length === 0 || chiefs.length === 0 ? [[numbers]] : [[numbers], [rest, chiefs]];
}

function scalesToTry(numbers: readonly BigNumber[], rows: number): Scales[] {
	const has = (wanted: number) => numbers.some(({ place }) => place === wanted);
	const low = SCALES.filter(({ down }) => down * DIGIT_ROWS + WORD_ROWS <= rows);
	const under = (most: number, any: boolean): (DigitScale | undefined)[] =>
		any ? [...low.slice(0, Math.max(1, most)), null] : [null];
	return low.flatMap((first, at) =>
		under(at, has(2)).flatMap((second) => {
			// Larger than the rest, wherever there are sizes left for that.
			const below = second == null ? at : SCALES.indexOf(second);
			const thirds = second === null && has(2) ? [null] : under(below, has(3));
			return thirds.map((third): Scales => [first, second ?? null, third ?? null]);
		}),
	);
}

function scalesWorth(numbers: readonly BigNumber[], scales: Scales): number {
	const size = (scale: DigitScale) => (scale === null ? IN_WORDS : scale.across * scale.down);
	return scales.reduce((sum, scale, at) => {
		const counted = numbers.some(({ place }) => place === at + 1);
		return counted ? sum + WORTH[at]! * Math.log(size(scale)) : sum;
	}, 0);
}

function place(number: BigNumber, scale: DigitScale): PlacedNumber {
	const { below } = number;
	if (scale === null) return { number, scale, width: inWords(number).length };
	return { number, scale, width: Math.max(labelOf(number).length, drawnWidth({ number, scale }), below.length) };
}

/** Digits and arrow, without the words above and below. */
function drawnWidth({ number: { value, way }, scale }: Omit<PlacedNumber, 'width'>): number {
	const arrow = way === undefined || scale === null ? 0 : (ARROW_COLUMNS + 1) * scale.across;
	return digitSize(value, scale).width + arrow;
}

/** A number that stands among words: `TURN 90° clockwise`, `MARK 39 5/8 in from FAR`. */
export function inWords({ label, value, unit, below, brief = below }: BigNumber): string {
	const glued = unit === '°' || unit === '' ? unit : ` ${unit}`;
	return `${label} ${value}${glued} ${brief}`;
}

export function labelOf({ label, unit }: BigNumber): string {
	if (unit === '') return label;
	return `${label}, ${unit === '°' ? DEGREES : unit}`;
}

function fits(lines: NumbersLayout, columns: number, rows: number): boolean {
	return (
		lines.reduce((sum, line) => sum + heightOf(line), 0) <= rows && lines.every((line) => numbersWidth(line) <= columns)
	);
}

/** What stands before each number of a line: twice what lies between two digits where the window is wide enough, so that 15.5 beside 18.5 never reads as one. */
export function gapsOf(line: readonly PlacedNumber[], columns: number): number[] {
	let spare = columns - numbersWidth(line);
	return line.map((placed, i) => {
		if (i === 0) return 0;
		const left = at(line, i - 1);
		const apart = 2 * Math.max(left.scale?.across ?? 1, placed.scale?.across ?? 1);
		const more = Math.min(spare, Math.max(0, apart - NUMBER_GAP - (left.width - drawnWidth(left))));
		spare -= more;
		return NUMBER_GAP + more;
	});
}

/** Numbers in digits stand side by side; those in words all in one line under them. */
function numbersWidth(line: readonly PlacedNumber[]): number {
	const wide = (placed: readonly PlacedNumber[]) =>
		placed.reduce((sum, { width }) => sum + width, NUMBER_GAP * Math.max(0, placed.length - 1));
	return Math.max(wide(line.filter(({ scale }) => scale !== null)), wide(line.filter(({ scale }) => scale === null)));
}

export function heightOf(line: readonly PlacedNumber[]): number {
	const digits = line.filter(({ scale }) => scale !== null);
	const words = digits.length < line.length ? 1 : 0;
	if (digits.length === 0) return words;
	return WORD_ROWS + Math.max(...digits.map(({ number, scale }) => digitSize(number.value, scale).height)) + words;
}
