import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatAngle, formatLength, trimmed } from '../../src/units/format.ts';
import { parseAngle, parseLength } from '../../src/units/parse.ts';
import { formatTape } from '../../src/units/tape.ts';

describe('on the tape', () => {
	// Source: NJATC, Conduit Fabrication, Level II, Lesson 4, example for questions 34-43: to the nearest sixteenth.
	it.each([
		[22.8125, '22 13/16'],
		[18.8125, '18 13/16'],
		[37.68, '37 11/16'],
		[79.305, '79 5/16'],
	])('%d in reads %s in sixteenths', (length, text) => {
		expect(formatTape(length, 1 / 16, 'in')).toBe(text);
	});

	it.each([
		[10.375, 1 / 16, 'in', '10 3/8'],
		[0.375, 1 / 16, 'in', '3/8'],
		[-10.375, 1 / 16, 'in', '-10 3/8'],
		[-0.02, 1 / 16, 'in', '0'],
		[8.999, 1 / 16, 'in', '9'],
		[3.515625, 1 / 64, 'in', '3 33/64'],
		[3.51, 1 / 32, 'in', '3 1/2'],
		[7.3, 1, 'in', '7'],
		[3.14, 0.1, 'in', '3.1'],
		[0.3, 3 / 16, 'in', '3/8'],
		[587.4, 1, 'mm', '587'],
		[587.3, 0.5, 'mm', '587.5'],
		[587.1, 0.5, 'mm', '587'],
		[-587.3, 0.5, 'mm', '-587.5'],
		[1250, 10, 'mm', '1250'],
		[1e300, 1 / 16, 'in', '1e+300'],
		[-1.5e300, 0.5, 'mm', '-1.5e+300'],
		[Number.MAX_VALUE, 1 / 64, 'in', '1.7976931348623157e+308'],
	] as const)('%d at %d %s reads %s', (length, division, units, text) => {
		expect(formatTape(length, division, units)).toBe(text);
	});

	it('refuses a division that is none', () => {
		expect(() => formatTape(1, 0, 'in')).toThrow('must be above 0');
	});
});

describe('what is written is read back', () => {
	const divisions = { in: [1 / 64, 1 / 32, 1 / 16, 1 / 8, 0.1], mm: [0.5, 1, 2, 5] } as const;
	const written = fc.constantFrom('in' as const, 'mm' as const).chain((units) =>
		fc.record({
			units: fc.constant(units),
			division: fc.constantFrom(...divisions[units]),
			length: fc.double({ min: -5000, max: 5000, noNaN: true }),
		}),
	);

	it('from the tape, to half a division, and the same again', () => {
		fc.assert(
			fc.property(written, ({ units, division, length }) => {
				const text = formatTape(length, division, units);
				const read = parseLength(text, units);
				expect(Math.abs(read - length)).toBeLessThanOrEqual(division / 2 + 1e-9);
				expect(formatTape(read, division, units)).toBe(text);
			}),
		);
	});

	it('from a length with its unit, in a job of either unit', () => {
		fc.assert(
			fc.property(written, fc.constantFrom('in' as const, 'mm' as const), ({ units, length }, into) => {
				const read = parseLength(formatLength(length, units), into);
				const exact = parseLength(length, units) * (into === units ? 1 : into === 'mm' ? 25.4 : 1 / 25.4);
				const half = (units === 'in' ? 0.0005 : 0.05) * (into === units ? 1 : into === 'mm' ? 25.4 : 1 / 25.4);
				expect(Math.abs(read - exact)).toBeLessThanOrEqual(half * (1 + 1e-9));
			}),
		);
	});

	it('from an angle', () => {
		fc.assert(
			fc.property(fc.double({ min: -360, max: 360, noNaN: true }), (angle) => {
				expect(Math.abs(parseAngle(formatAngle(angle, 2)) - angle)).toBeLessThanOrEqual(0.005 * (1 + 1e-9));
			}),
		);
	});
});

describe('short decimals', () => {
	it('drop trailing zeros and the minus before 0', () => {
		expect([trimmed(2.5, 3), trimmed(100, 0), trimmed(-0.0001, 2), trimmed(10, 2)]).toEqual(['2.5', '100', '0', '10']);
		expect([trimmed(1e300, 2), trimmed(-1.5e30, 1)]).toEqual(['1e+300', '-1.5e+30']);
		expect([formatLength(10.375, 'in'), formatLength(587.25, 'mm'), formatAngle(22.54)]).toEqual([
			'10.375 in',
			'587.3 mm',
			'22.5°',
		]);
	});
});
