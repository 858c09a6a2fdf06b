import { readTestPiece, type TestPiece, type TestResult, usualScatter } from '../../fit/test-piece.ts';
import { parseQuantity, type Quantity } from '../../units/parse.ts';
import type { Units } from '../../units/units.ts';
import { type PieceFault, type PieceReading, pieceFaultWords } from '../../words/test-piece.ts';
import { NotTaken } from '../shell/prompt.ts';

/** What is read of a test piece, in the order in which the hands come to it. */
export const PIECE_READINGS = [
	'od',
	'before',
	'mark',
	'angle',
	'startLeg',
	'farLeg',
	'straight',
] as const satisfies PieceReading[];

export const quantityOf = (reading: PieceReading): Quantity => (reading === 'angle' ? 'angle' : 'length');

/** A test piece that is being read: one bend in scrap. */
export interface PieceForm {
	bender: string;
	die: string;
	units: Units;
	/** Of the die, and its stretch as kept. */
	clr: number;
	stretch: number;
	/** The readings so far, in their order; null: not read. */
	given: readonly (number | null)[];
}

/** The reading that is asked for now; null when all are there. */
export function nextPieceReading({ given }: PieceForm): PieceReading | null {
	return PIECE_READINGS[given.length] ?? null;
}

/**
 * The form with one reading more, as typed; null: where a bend begins need not be read.
 * @throws UnitsError for what is no such number, NotTaken for one that does not go with the readings before it
 */
export function withReading(form: PieceForm, text: string | null): PieceForm {
	const reading = nextPieceReading(form);
	if (reading === null) throw new RangeError('All of a test piece is read.');
	const value = text === null ? null : parseQuantity(text, quantityOf(reading), form.units);
	const right = value === null ? null : wrongReading(form, reading, value);
	if (right !== null) throw new NotTaken(text ?? '', pieceFaultWords(right));
	return { ...form, given: [...form.given, value] };
}

/** What would be right instead; null where nothing is wrong. */
function wrongReading({ given, clr }: PieceForm, reading: PieceReading, value: number): PieceFault | null {
	const [od = 0, before = 0, mark = 0] = given as number[];
	if (reading === 'angle') return value > 0 && value < 180 ? null : { code: 'angle' };
	if (!(value > 0)) return { code: 'above-nothing' };
	if (reading === 'od') return value <= 2 * clr ? null : { code: 'at-most-two-radii', value: 2 * clr };
	if (reading === 'mark') return value < before ? null : { code: 'under-the-length', value: before };
	if (reading === 'straight') return Math.abs(value - mark) <= clr ? null : { code: 'near-the-mark', value: mark };
	if (reading === 'startLeg' || reading === 'farLeg')
		return value < before + od + 2 * clr ? null : { code: 'shorter-than-the-piece', value: before };
	return null;
}

/**
 * What the test piece tells.
 * @throws RangeError when the readings cannot all be right
 */
export function pieceResult({ clr, stretch, units, given }: PieceForm): TestResult {
	const [od, before, mark, angle, startLeg, farLeg, straight] = given;
	const piece = { clr, stretch, od, before, mark, angle, startLeg, farLeg, straight } as TestPiece;
	return readTestPiece(piece, usualScatter(units));
}
