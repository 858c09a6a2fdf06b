import { ImpossiblePiece, readTestPiece, type TestPiece, type TestResult, usualScatter } from '../fit/test-piece.ts';
import type { Units } from '../tube/job.ts';
import { impossiblePieceWords, pieceToldLines } from '../words/test-piece.ts';
import { PIECE_USAGE } from '../words/usage/bender.ts';
import { type Options, optionWord, readQuantity } from './quantity.ts';
import { UsageError } from './usage-error.ts';

/** What a test piece is read with, each an option. */
const TEST_READINGS = {
	'test-angle': 'angle',
	'test-od': 'length',
	'test-before': 'length',
	'test-mark': 'length',
	'test-start-leg': 'length',
	'test-far-leg': 'length',
} as const;
const BEGIN = 'test-straight';

export const isTest = (options: Options) =>
	[...Object.keys(TEST_READINGS), BEGIN].some((name) => options[name] !== undefined) || options.keep === true;

interface KnownOfDie {
	options: Options;
	/** Of lengths written without one, and of `clr`. */
	units: Units;
	clr: number | null;
	/** Taken as known where the bend's beginning was not read. */
	stretch: number;
}

/**
 * What a test piece tells, in words and as fields to keep.
 * @throws UsageError when a reading is missing, cannot be read, or does not fit the others
 */
export function testPiece({ options, units, clr, stretch }: KnownOfDie) {
	if (clr === null) throw new UsageError(PIECE_USAGE.noRadius);
	const missing = Object.keys(TEST_READINGS).filter((name) => optionWord(options, name) === null);
	if (missing.length > 0) throw new UsageError(PIECE_USAGE.missing(missing.map((name) => `--${name}`)));
	const read = (name: keyof typeof TEST_READINGS) =>
		readQuantity(name, optionWord(options, name)!, TEST_READINGS[name], units);
	const begin = optionWord(options, BEGIN);
	const piece: TestPiece = {
		clr,
		stretch,
		angle: read('test-angle'),
		od: read('test-od'),
		before: read('test-before'),
		mark: read('test-mark'),
		startLeg: read('test-start-leg'),
		farLeg: read('test-far-leg'),
		straight: begin === null ? null : readQuantity(BEGIN, begin, 'length', units),
	};
	if (!(piece.angle > 0 && piece.angle < 180)) throw new UsageError(PIECE_USAGE.angle(piece.angle));
	const result = resultOrUsage(piece, usualScatter(units));
	return { lines: pieceToldLines(result, units, piece.stretch), told: testedFields(result), result };
}

function resultOrUsage(piece: TestPiece, scatter: Parameters<typeof readTestPiece>[1]): TestResult {
	try {
		return readTestPiece(piece, scatter);
	} catch (error) {
		if (error instanceof ImpossiblePiece) throw new UsageError(impossiblePieceWords(error));
		throw error;
	}
}

function testedFields({ growth, markOffset, stretch }: TestResult) {
	return { growth: growth.value, markOffset: markOffset.value, ...(stretch ? { stretch: stretch.value } : {}) };
}
