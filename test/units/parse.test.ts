import { describe, expect, it } from 'vitest';
import { parseAngle, parseLength, parseNumber } from '../../src/units/parse.ts';
import { convertLength } from '../../src/units/units.ts';
import { UnitsError } from '../../src/units/units-error.ts';
import { unitsErrorWords as words } from '../../src/words/units.ts';

/** What a parser says of a text that it refuses. */
function refusal(read: () => number): UnitsError {
	try {
		read();
	} catch (error) {
		if (error instanceof UnitsError) return error;
		throw error;
	}
	throw new Error('The text was read.');
}

describe('a length in inches', () => {
	it.each([
		[12.5, 12.5],
		['31 1/2', 31.5],
		['9-3/8', 9.375],
		['3/8', 0.375],
		[`2' 6 1/2"`, 30.5],
		[`2'-6 1/2"`, 30.5],
		[`2' 6`, 30],
		[`2'`, 24],
		['2 ft 6 in', 30],
		[`1 1/2'`, 18],
		['9.375 in', 9.375],
		['5 in.', 5],
		['25.4 mm', 1],
		['2.54 cm', 1],
		['12 7/16 - 1', 11.4375],
		['12 7/16-1/2', 11.9375],
		['9 - 3/8', 8.625],
		['12-1', 11],
		['9,375', 9.375],
		['.5', 0.5],
		['+012.50', 12.5],
		['-9-3/8', -9.375],
		['3 * 2 1/2', 7.5],
		['2 * 6 in', 12],
		['(12 - 1) / 2', 5.5],
		['1 1/2 / 2', 0.75],
		['6 / (1/2)', 12],
		['10 - 2 * 3', 4],
		['6 1/2 in + 25.4 mm', 7.5],
		[`2' - (6")`, 18],
	])('reads %j as %d', (text, inches) => {
		expect(parseLength(text, 'in')).toBe(inches);
	});

	it.each([
		['9½', 9.5],
		['½', 0.5],
		['9-⅜', 9.375],
		['3⁄8', 0.375],
		['2′ 6½″', 30.5],
		['2’ 6 1/2”', 30.5],
		["6''", 6],
		['12 7/16 − 1', 11.4375],
		['9–3/8', 9.375],
		['31\u00a01/2', 31.5],
		['2 × 6', 12],
		['7 ÷ 2', 3.5],
	])('reads the typographic %j as %d', (text, inches) => {
		expect(parseLength(text, 'in')).toBe(inches);
	});
});

describe('a length in millimetres', () => {
	// Source: NIST SP 811 (from memory): 1 in = 25.4 mm exactly; so 1/64 in = 0.396875 mm.
	it.each([
		['1 in', 25.4],
		['1/64 in', 0.396875],
		[`2' 6 1/2"`, 774.7],
		[`1'`, 304.8],
		['9.375 in', 238.125],
		['362 mm', 362],
		['362', 362],
		['36,2 cm', 362],
		['0.362 m', 362],
		['10 + 1 mm', 11],
		['6 in - 2.4 mm', 150],
	])('reads %j as %d', (text, millimetres) => {
		expect(parseLength(text, 'mm')).toBeCloseTo(millimetres, 12);
	});

	it('converts both ways by the inch', () => {
		// Source: NIST SP 811 (from memory): 1 in = 25.4 mm exactly.
		expect([convertLength(1, 'in', 'mm'), convertLength(25.4, 'mm', 'in'), convertLength(7, 'mm', 'mm')]).toEqual([
			25.4, 1, 7,
		]);
	});
});

describe('a text with two meanings or none is refused with what would be right', () => {
	it.each([
		['9 -3/8', 'write 9-3/8 for a mixed number, 9 - 3/8 for a difference'],
		['9- 3/8', 'write 9-3/8 for a mixed number, 9 - 3/8 for a difference'],
		['9-11/8', 'in a mixed number the fraction is under 1'],
		['9 8/8', 'in a mixed number the fraction is under 1'],
		[`2' - 6"`, 'a spaced hyphen after feet has two meanings'],
		[`2' 30 mm`, 'after feet only inches can follow'],
		['6 / 1/2', 'dividing by a fraction has two meanings'],
		['6/1/2', 'two fraction strokes in a row'],
		['10 + 1 mm', 'one number has a unit and one has none'],
		['2 in * 3 in', 'cannot be multiplied'],
		['3 / 2 in', 'a divisor has no unit'],
		['31 5', 'a mixed number 31 1/2'],
		['½3', 'stands beside a number'],
		['1,250.5', 'is not understood'],
		['1,250,000', 'is not understood'],
		['12--1', 'a number is missing before "-"'],
		['3 +', 'it ends too soon'],
		['(12', 'a bracket is not closed'],
		['12)', 'a bracket is closed that was not opened'],
		['in', 'a number is missing before "in"'],
		['5 furlongs', 'the unit "furlongs" is not known here'],
		['1e5', 'the unit "e" is not known here'],
		['5 deg', 'the unit "deg" is not known here'],
		['1/0', 'is a divisor 0?'],
		['5 / 0', 'is a divisor 0?'],
		['', 'nothing is written'],
		['  ', 'nothing is written'],
		['9 $', '"$" is not understood'],
	])('%j', (text, right) => {
		const error = refusal(() => parseLength(text, 'in'));
		expect(words(error)).toContain(right);
		expect(words(error)).toContain(`"${text}"`);
	});

	it('refuses numbers that are not finite', () => {
		expect(words(refusal(() => parseLength(Number.NaN, 'in')))).toContain('NaN');
		expect(words(refusal(() => parseLength('9'.repeat(400), 'mm')))).toContain('no finite number');
		expect(words(refusal(() => parseAngle(Number.POSITIVE_INFINITY)))).toContain('Infinity');
	});

	it('keeps an inch term apart from a bare one where the job is in mm', () => {
		// 31 1/2 - 1 in could mean inches all through.
		expect(words(refusal(() => parseLength('31 1/2 - 1 in', 'mm')))).toContain('write the unit after each');
		expect(parseLength('31 1/2 - 1 in', 'in')).toBe(30.5);
	});
});

describe('angles and plain numbers', () => {
	it.each([
		[45, 45],
		['22 1/2', 22.5],
		['22,5°', 22.5],
		['45 deg', 45],
		['90 - 12.5', 77.5],
		['90° - 12.5°', 77.5],
		['-1/2', -0.5],
	])('reads the angle %j as %d', (text, angle) => {
		expect(parseAngle(text)).toBe(angle);
	});

	it.each(['12 in', `5'`, '3 mm'])('refuses the angle %j', (text) => {
		expect(words(refusal(() => parseAngle(text)))).toContain('an angle in degrees such as 45');
	});

	it('reads ratios, and no unit with them', () => {
		expect([parseNumber('15/16'), parseNumber('0,93'), parseNumber(1)]).toEqual([0.9375, 0.93, 1]);
		expect(words(refusal(() => parseNumber('0.93 in')))).toContain('a number such as 0.93');
	});
});
