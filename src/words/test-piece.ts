import type { ImpossiblePiece, PieceFigure, TestResult } from '../fit/test-piece.ts';
import { nearestTo } from '../maths/scalar.ts';
import { formatAngle, formatLength, trimmed } from '../units/format.ts';
import type { Units } from '../units/units.ts';
import { giveOrTake, percent } from './numbers.ts';

/** What is read of a test piece, in the order in which the hands come to it. */
export type PieceReading = 'od' | 'before' | 'mark' | 'angle' | 'startLeg' | 'farLeg' | 'straight';

interface ReadingWords {
	/** What is asked, and what is to be done for it. */
	label: string;
	help: string;
	/** As it stands in a list. */
	short: string;
}

export const PIECE_WORDS: Readonly<Record<PieceReading, ReadingWords>> = {
	od: {
		label: 'Outside diameter of the scrap',
		help: 'Take the tube that the die is for. One bend, best of 110° or more.',
		short: 'outside diameter',
	},
	before: {
		label: 'Length of the piece before it is bent',
		help: 'Square its ends and measure it as finely as you can.',
		short: 'length before',
	},
	mark: {
		label: 'From the start end to the mark',
		help: 'Mark the tube where the bend is to begin, measure the mark, and set it to the index line of the die. The start end goes through the clamp.',
		short: 'mark',
	},
	angle: {
		label: 'Angle of the bend',
		help: 'Bend the piece, take it out, and read the angle finder: how far the far leg is turned from the start leg.',
		short: 'angle',
	},
	startLeg: {
		label: 'From the start end to the outside corner',
		help: 'Lay straight edges along the outside of both legs. Read from the start end to where they cross.',
		short: 'start leg',
	},
	farLeg: {
		label: 'From the far end to the outside corner',
		help: 'The same from the other end.',
		short: 'far leg',
	},
	straight: {
		label: 'From the start end to where the bend begins',
		help: 'Where a straight edge along the tube begins to lift off. It tells the stretch; + leaves it out, and the stretch is taken as kept.',
		short: 'bend begins',
	},
};

/** The pages of a test piece. */
export const PIECE = {
	title: 'Test piece',
	step: (step: number, of: number): string => `Test piece, ${step} of ${of}`,
	empty: 'Write what you read and press Enter; / goes back.',
	notRead: 'not read',
	again: 'Press / to go back and read again.',
	told: 'What the test piece tells',
	keep: 'keep it with the die',
	keepEmpty: 'Press + to keep it with the die, / to go back.',
	kept: (die: string): string => `Kept with die ${die}: what the test piece tells.`,
} as const;

/** A reading in the list of those so far. */
export function pieceReadWords(reading: PieceReading, value: number | null, units: Units): string {
	const read = reading === 'angle' ? formatAngle(value ?? 0, 2) : `${trimmed(value ?? 0, 4)} ${units}`;
	return `${PIECE_WORDS[reading].short.padEnd(18)}${value === null ? PIECE.notRead : read}`;
}

/** What a reading may be instead; lengths in the unit of the die. */
export type PieceFault =
	| { code: 'angle' | 'above-nothing' }
	| { code: 'at-most-two-radii' | 'under-the-length' | 'near-the-mark' | 'shorter-than-the-piece'; value: number };

export function pieceFaultWords(fault: PieceFault): string {
	switch (fault.code) {
		case 'angle':
			return 'an angle above 0 and below 180';
		case 'above-nothing':
			return 'a length above 0';
		case 'at-most-two-radii':
			return `at most twice the radius of the die, ${fault.value}`;
		case 'under-the-length':
			return `less than the length of the piece, ${fault.value}`;
		case 'near-the-mark':
			return `near the mark, ${fault.value}`;
		case 'shorter-than-the-piece':
			return `less than the piece is long, ${fault.value}`;
	}
}

/** Why a test piece tells nothing, and how its legs are read. */
export function impossiblePieceWords({ growth, stretch }: ImpossiblePiece): string {
	return (
		`These readings cannot all be right: they give a radius of ${percent(growth, 0)} of the die's and a stretch of ` +
		`${percent(stretch, 0)}. The legs are read on the outside, from each end to where the straight edges cross.`
	);
}

/** The radius is told to worse than one part in a hundred. */
const COARSE = 0.01;
const MORE_TELLS = 'is told to worse than 1 %: a wider bend, or the mean of several pieces, tells more.';

/** What a test piece tells, as the bench wants it: the figures, what they do to a bend of 90°, and that they are coarse, else ''. */
export function pieceToldWords(
	{ growth, markOffset, stretch, on90 }: TestResult,
	of: { clr: number; stretch: number; units: Units },
) {
	const { clr, units } = of;
	const length = ({ value, sd }: PieceFigure) =>
		giveOrTake(formatLength(nearestTo(value, DIVISION[units]), units), spreadWords(sd, units));
	const shift = ({ value, sd }: PieceFigure) => length({ value: Math.abs(value), sd });
	const arc =
		stretch === null
			? `taken as ${percent(of.stretch, 2)}`
			: giveOrTake(percent(stretch.value, 1), percent(stretch.sd, 1));
	return {
		figures: [
			`radius of the bend     ${length({ value: growth.value * clr, sd: growth.sd * clr })} (the die has ${formatLength(clr, units)})`,
			`begins                 ${length(markOffset)} past the index line`,
			`stretch of the arc     ${arc}`,
		],
		on90:
			`Of a bend of 90° with its corner where the drawing has it, the mark goes ${shift(on90.mark)}, ${towardOrAway(on90.mark)} the start end, ` +
			`and the bend takes ${more(on90.tube)} tube by ${shift(on90.tube)}.`,
		coarse: growth.sd > COARSE ? `The radius ${MORE_TELLS}` : '',
	};
}

const towardOrAway = ({ value }: PieceFigure): string => (value < 0 ? 'toward' : 'away from');
const more = ({ value }: PieceFigure): string => (value < 0 ? 'less' : 'more');

/** As finely as a test piece tells a length. */
const DIVISION: Readonly<Record<Units, number>> = { in: 0.01, mm: 0.1 };

/** How far off a length may be: never said to be nothing. */
function spreadWords(sd: number, units: Units): string {
	return formatLength(Math.max(DIVISION[units], nearestTo(sd, DIVISION[units])), units);
}

/** The same for a command line: each figure under the option that keeps it. `known`: the stretch where the piece does not tell it. */
export function pieceToldLines(
	{ growth, markOffset, stretch, on90 }: TestResult,
	units: Units,
	known: number,
): string[] {
	const places = units === 'in' ? 3 : 1;
	const told = ({ value, sd }: PieceFigure, digits: number) => giveOrTake(trimmed(value, digits), trimmed(sd, digits));
	const shift = ({ value, sd }: PieceFigure) =>
		giveOrTake(`${trimmed(Math.abs(value), places)} ${units}`, `${trimmed(sd, places)} ${units}`);
	return [
		'The test piece tells:',
		`  growth       ${told(growth, 3)}`,
		`  mark-offset  ${told(markOffset, places)} ${units}`,
		stretch
			? `  stretch      ${told(stretch, 4)}`
			: `  stretch      taken as ${trimmed(known, 4)}; --test-straight tells it`,
		`  On a 90° the mark goes ${shift(on90.mark)}, ${towardOrAway(on90.mark)} the start end.`,
		`  It takes ${shift(on90.tube)}, ${more(on90.tube)} tube.`,
		...(growth.sd > COARSE ? [`  Growth ${MORE_TELLS}`] : []),
	];
}
