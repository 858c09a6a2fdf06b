import type { PieceFigure, TestResult } from '../../fit/test-piece.ts';
import { ImpossiblePiece } from '../../fit/test-piece.ts';
import { formatAngle, formatLength, trimmed } from '../../units/format.ts';
import { understood } from '../../units/understood.ts';
import type { Units } from '../../units/units.ts';
import { giveOrTake } from '../../words/numbers.ts';
import { impossiblePieceWords } from '../../words/test-piece.ts';
import type { HomeStep, HomeView } from '../home/home-view.ts';
import type { Section } from '../session/pages/page.ts';
import { type Line, line, wrapped } from '../text/line.ts';
import {
	openReading,
	PIECE_READINGS,
	type PieceForm,
	type PieceReading,
	pieceResult,
	withReading,
} from './piece-form.ts';

/** What is asked, and what is to be done for it. */
const READINGS: Readonly<Record<PieceReading, { label: string; help: string }>> = {
	od: {
		label: 'Outside diameter of the scrap',
		help: 'Take the tube that the die is for. One bend, best of 110° or more.',
	},
	before: {
		label: 'Length of the piece before it is bent',
		help: 'Square its ends and measure it as finely as you can.',
	},
	mark: {
		label: 'From the start end to the mark',
		help: 'Mark the tube where the bend is to begin, measure the mark, and set it to the index line of the die. The start end goes through the clamp.',
	},
	angle: {
		label: 'Angle of the bend',
		help: 'Bend the piece, take it out, and read the angle finder: how far the far leg is turned from the start leg.',
	},
	startLeg: {
		label: 'From the start end to the outside corner',
		help: 'Lay straight edges along the outside of both legs. Read from the start end to where they cross.',
	},
	farLeg: { label: 'From the far end to the outside corner', help: 'The same from the other end.' },
	straight: {
		label: 'From the start end to where the bend begins',
		help: 'Where a straight edge along the tube begins to lift off. It tells the stretch; + leaves it out, and the stretch is taken as kept.',
	},
};

const SHORT: Readonly<Record<PieceReading, string>> = {
	od: 'outside diameter',
	before: 'length before',
	mark: 'mark',
	angle: 'angle',
	startLeg: 'start leg',
	farLeg: 'far leg',
	straight: 'bend begins',
};

/** The page of a test piece: one reading after the other, then what they tell. */
export function pieceView(form: PieceForm): HomeView {
	const reading = openReading(form);
	return reading === null ? resultView(form) : readingView(form, reading);
}

function pieceStep(piece: PieceForm): HomeStep {
	return { step: 'bench', at: { bench: 'piece', piece } };
}

function back(form: PieceForm): { label: string; step: HomeStep } {
	const { bender, die, given } = form;
	if (given.length === 0) return { label: 'back', step: { step: 'bench', at: { bench: 'die', bender, die } } };
	return { label: 'back', step: pieceStep({ ...form, given: given.slice(0, -1) }) };
}

function readingView(form: PieceForm, reading: PieceReading): HomeView {
	const { label, help } = READINGS[reading];
	const angle = reading === 'angle';
	return {
		title: `Test piece, ${form.given.length + 1} of ${PIECE_READINGS.length}`,
		where: `${form.bender}, die ${form.die}`,
		prompt: {
			label: `${label}, ${angle ? 'degrees' : form.units}`,
			read: (text) => pieceStep(withReading(form, text)),
			understood: (text) => understood(text, angle ? 'angle' : 'length', form.units),
			...(reading === 'straight' ? { plus: { label: 'not read', step: pieceStep(withReading(form, null)) } } : {}),
			back: back(form),
			empty: 'Write what you read and press Enter; / goes back.',
		},
		body: ({ columns }) => [{ rank: 0, lines: wrapped(help, columns) }, readSoFar(form)],
	};
}

function readSoFar({ given, units }: PieceForm): Section {
	const lines = given.map((value, at): Line => {
		const reading = PIECE_READINGS[at]!;
		const words =
			value === null ? 'not read' : reading === 'angle' ? formatAngle(value, 2) : `${trimmed(value, 4)} ${units}`;
		return line(`${SHORT[reading].padEnd(18)}${words}`, 'quiet');
	});
	return { rank: 1, lines };
}

function resultView(form: PieceForm): HomeView {
	const told = resultOf(form);
	const { bender, die, units } = form;
	if (typeof told === 'string') {
		return {
			title: 'Test piece',
			prompt: { label: '', back: back(form), empty: 'Press / to go back and read again.' },
			body: ({ columns }) => [{ rank: 0, lines: wrapped(told, columns, 'wrong') }, readSoFar(form)],
		};
	}
	const fields = {
		growth: told.growth.value,
		markOffset: told.markOffset.value,
		...(told.stretch === null ? {} : { stretch: told.stretch.value }),
	};
	const keep: HomeStep = {
		step: 'shop',
		change: { bender, die, changes: { units, fields } },
		next: { bench: 'die', bender, die },
		said: `Kept with die ${die}: what the test piece tells.`,
	};
	return {
		title: 'What the test piece tells',
		where: `${bender}, die ${die}`,
		prompt: {
			label: '',
			plus: { label: 'keep it with the die', step: keep },
			back: back(form),
			empty: 'Press + to keep it with the die, / to go back.',
		},
		body: ({ columns }) => toldSections(told, form, columns),
	};
}

function resultOf(form: PieceForm): TestResult | string {
	try {
		return pieceResult(form);
	} catch (error) {
		if (error instanceof ImpossiblePiece) return impossiblePieceWords(error);
		throw error;
	}
}

function toldSections({ growth, markOffset, stretch, on90 }: TestResult, form: PieceForm, columns: number): Section[] {
	const { units, clr } = form;
	const length = ({ value, sd }: PieceFigure) => giveOrTake(formatLength(value, units), spread(sd, units));
	const radius = { value: growth.value * clr, sd: growth.sd * clr };
	const lines = [
		`radius of the bend     ${length(radius)} (the die has ${formatLength(clr, units)})`,
		`begins                 ${length(markOffset)} past the index line`,
		`stretch of the arc     ${stretch === null ? `taken as ${trimmed(form.stretch * 100, 2)} %` : giveOrTake(`${trimmed(stretch.value * 100, 1)} %`, `${trimmed(stretch.sd * 100, 1)} %`)}`,
	];
	const mark = on90.mark;
	const tube = on90.tube;
	const says =
		`Of a bend of 90° with its corner where the drawing has it, the mark goes ${shift(mark, units)}, ` +
		`${mark.value < 0 ? 'toward' : 'away from'} the start end, and the bend takes ${tube.value < 0 ? 'less' : 'more'} tube by ${shift(tube, units)}.`;
	const coarse = 'The radius is told to worse than 1 %: a wider bend, or the mean of several pieces, tells more.';
	return [
		{ rank: 0, lines: lines.map((text) => line(text, 'strong')) },
		{ rank: 0, lines: wrapped(says, columns) },
		{ rank: 1, lines: growth.sd > 0.01 ? wrapped(coarse, columns, 'alert') : [] },
	];
}

function shift({ value, sd }: PieceFigure, units: Units): string {
	return giveOrTake(formatLength(Math.abs(value), units), spread(sd, units));
}

/** How far off a length may be: to a hundredth of an inch, never said to be nothing. */
function spread(sd: number, units: Units): string {
	const division = units === 'in' ? 0.01 : 0.1;
	return formatLength(Math.max(division, Math.round(sd / division) * division), units);
}
