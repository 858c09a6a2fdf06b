import { describe, expect, it } from 'vitest';
import { filterPrior, newBend, newSeat, pull, relieved } from '../../src/springback/filter.ts';
import { doubt, doubtLoaded } from '../../src/springback/gates.ts';
import { observe } from '../../src/springback/reading.ts';

const cold = filterPrior(0.021);
const pulled = pull(cold, 60, 60);
const known = observe(observe(pulled, 'released', 53), 'angle', 51.5);

describe('doubtLoaded', () => {
	it('lets a degree pass either way and says what lies further off', () => {
		expect(doubtLoaded(60, 61)).toBeNull();
		expect(doubtLoaded(60, 59)).toBeNull();
		expect(doubtLoaded(60, 61.5)?.why).toBe('The stop was 60 degrees, and 61.5 degrees is 1.5 degrees away from it.');
	});
});

describe('doubt of the finder', () => {
	it('takes what a bender can do', () => {
		for (const value of [57, 55, 50, 48, 47]) expect(doubt(pulled, 'angle', value)).toBeNull();
	});

	it('asks again above what the dial ever showed and far below it', () => {
		expect(doubt(pulled, 'angle', 61)?.why).toBe(
			'61 degrees is more than the dial ever showed under load (60 degrees).',
		);
		expect(doubt(pulled, 'angle', 38)?.why).toBe(
			'38 degrees is far below what the dial showed under load (60 degrees).',
		);
		expect(doubt(pulled, 'angle', 515)?.why).toContain('515');
	});

	it('takes a bend that was opened far below the dial, and asks again above it', () => {
		const open = relieved(known, 14);
		expect(doubt(known, 'angle', 38)?.why).toContain('far below');
		expect(doubt(open, 'angle', 38)).toBeNull();
		expect(doubt(open, 'angle', 61)?.why).toContain('more than the dial ever showed');
	});

	it('asks whether it was read on the inside when the rest to 180 would pass', () => {
		expect(doubt(pulled, 'angle', 128.5)?.why).toContain('Was it read on the inside? Then it is 51.5 degrees.');
		expect(doubt(pulled, 'angle', 100)?.why).not.toContain('inside');
	});

	it('asks again where a blunder is likelier than the reading', () => {
		const next = observe(pull(newBend(known), 60, 60), 'released', 53);
		expect(doubt(next, 'angle', 52)).toBeNull();
		expect(doubt(next, 'angle', 57)?.why).toContain('was expected, within about');
	});
});

describe('doubt of the dial', () => {
	it('asks again after release when it shows more than under load, or little likely', () => {
		expect(doubt(pulled, 'released', 52.5)).toBeNull();
		expect(doubt(pulled, 'released', 61)?.why).toContain('more than the dial ever showed');
		expect(doubt(pulled, 'released', 25)?.why).toContain('was expected');
	});

	it('asks again when the pointer is far from where the seated tube puts it', () => {
		expect(doubt(cold, 'pointer', 0.5)).toBeNull();
		expect(doubt(cold, 'pointer', 53)?.why).toContain('0 degrees was expected');
		expect(doubt(newSeat(known), 'pointer', 53)).toBeNull();
		expect(doubt(newSeat(known), 'pointer', 35)?.why).toContain('was expected');
	});
});
