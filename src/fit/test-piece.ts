import { changeBy } from '../maths/differences.ts';
import { radians } from '../tube/angles.ts';
import { arcLength, rawArc, setback } from '../tube/arcs.ts';
import { BOUNDS } from '../tube/bounds.ts';
import { isWithin } from '../units/range.ts';
import { convertLength, type Units } from '../units/units.ts';

/** What is read on a piece of scrap with one bend. Lengths in one unit, the angle in degrees as the angle finder shows it. */
export interface TestPiece {
	od: number;
	/** Center-line radius of the die. */
	clr: number;
	angle: number;
	/** The piece before it was bent. */
	before: number;
	/** From the start end to the mark that was set at the die's index line. */
	mark: number;
	/** From each end to where straight edges along the outside of both legs cross. */
	startLeg: number;
	farLeg: number;
	/** From the start end to where the bend begins; null: not read, and `stretch` is taken as known. */
	straight: number | null;
	stretch: number;
}

export interface PieceFigure {
	value: number;
	/** Standard deviation that comes from the readings. */
	sd: number;
}

export interface TestResult {
	growth: PieceFigure;
	markOffset: PieceFigure;
	/** Null where it was taken as known. */
	stretch: PieceFigure | null;
	/**
	 * What that does to a bend of 90 degrees whose sharp corner stays where the drawing has it, against a bend of the die's own radius that
	 * starts at the index line and stretches nothing: how far its mark goes (positive: away from the start end), how much more raw tube it takes.
	 */
	on90: { mark: PieceFigure; tube: PieceFigure };
}

/** Standard deviations of a length by tape, of the place where a bend begins (found by eye), and of the angle finder. */
export interface ReadingScatter {
	tape: number;
	begin: number;
	angle: number;
}

interface Values {
	growth: number;
	markOffset: number;
	stretch: number;
}

/**
 * Along the center line: leg = straight + R tan(angle / 2) on both sides, and before = both straights + R angle / (1 + stretch).
 * The outside corner lies OD/2 tan(angle / 2) further from the ends than the center line's.
 */
function pieceValues({ od, clr, angle, before, mark, startLeg, farLeg, straight, stretch }: TestPiece): Values {
	const outside = setback(angle, od / 2);
	const [start, far] = [startLeg - outside, farLeg - outside];
	const factor = setback(angle, 1);
	if (straight === null) {
		const radius = (start + far - before) / (2 * factor - radians(angle) / (1 + stretch));
		return { growth: radius / clr, markOffset: start - radius * factor - mark, stretch };
	}
	const radius = (start - straight) / factor;
	const raw = before - straight - (far - radius * factor);
	return { growth: radius / clr, markOffset: straight - mark, stretch: (radius * radians(angle)) / raw - 1 };
}

/** Readings of a test piece that cannot all be right, by the growth and the stretch that they would give. */
export class ImpossiblePiece extends RangeError {
	readonly growth: number;
	readonly stretch: number;

	constructor(growth: number, stretch: number) {
		super('the readings of a test piece cannot all be right');
		this.growth = growth;
		this.stretch = stretch;
	}
}

/**
 * What one bend in scrap tells of the die: growth and mark offset, and stretch where the bend's beginning was read too; each with
 * the scatter that the readings leave (first order, by central differences).
 * @throws ImpossiblePiece when the readings cannot all be right
 */
export function readTestPiece(piece: TestPiece, scatter: ReadingScatter): TestResult {
	const values = pieceValues(piece);
	const { growth, stretch } = values;
	if (!(isWithin(growth, BOUNDS.growth) && isWithin(stretch, BOUNDS.stretch))) {
		throw new ImpossiblePiece(growth, stretch);
	}
	const told = (of: (values: Values) => number): PieceFigure => ({
		value: of(values),
		sd: figureSd(piece, scatter, of),
	});
	return {
		growth: told((each) => each.growth),
		markOffset: told((each) => each.markOffset),
		stretch: piece.straight === null ? null : told((each) => each.stretch),
		on90: { mark: told((each) => markOf90(each, piece.clr)), tube: told((each) => tubeOf90(each, piece.clr)) },
	};
}

/** The mark of a bend of 90 degrees: its tangent goes back by what the setback grows, and the bend starts past the index line. */
function markOf90({ growth, markOffset }: Values, clr: number): number {
	return -setback(90, clr * (growth - 1)) - markOffset;
}

/** The raw tube of a bend of 90 degrees, from a place before it to one behind it, both counted from its sharp corner. */
function tubeOf90({ growth, stretch }: Values, clr: number): number {
	return rawArc(90, clr * growth, stretch) - arcLength(90, clr) - 2 * setback(90, clr * (growth - 1));
}

/** Common practice, no source: a tape is read to 1/32 in, the beginning of a bend seen to twice that, an angle finder to .25 degrees. */
export function usualScatter(units: Units): ReadingScatter {
	const tape = convertLength(1 / 32, 'in', units);
	return { tape, begin: 2 * tape, angle: 0.25 };
}

function figureSd(piece: TestPiece, { tape, begin, angle }: ReadingScatter, of: (values: Values) => number): number {
	const readings = { before: tape, mark: tape, startLeg: tape, farLeg: tape, straight: begin, angle };
	const parts = Object.entries(readings).map(([key, sd]) => {
		const at = piece[key as keyof typeof readings];
		if (at === null) return 0;
		return changeBy((value) => of(pieceValues({ ...piece, [key]: value })), at, sd);
	});
	return Math.hypot(...parts);
}
