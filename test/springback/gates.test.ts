import { describe, expect, it } from 'vitest';
import { filterPrior, newBend, newSeat, pull, relieved } from '../../src/springback/filter.ts';
import { doubtLoaded, doubtReading } from '../../src/springback/gates.ts';
import { observe } from '../../src/springback/reading.ts';

const cold = filterPrior(0.021);
const pulled = pull(cold, 60, 60);
const known = observe(observe(pulled, 'released', 53), 'angle', 51.5);

describe('doubtLoaded', () => {
	it('lets a degree pass either way and says what lies further off', () => {
		expect(doubtLoaded(60, 61)).toBeNull();
		expect(doubtLoaded(60, 59)).toBeNull();
		expect(doubtLoaded(60, 61.5)).toEqual({ by: 'stop', stop: 60 });
	});
});

describe('doubt of the finder', () => {
	it('takes what a bender can do', () => {
		for (const value of [57, 55, 50, 48, 47]) expect(doubtReading(pulled, 'angle', value)).toBeNull();
	});

	it('asks again above what the dial ever showed and far below it', () => {
		expect(doubtReading(pulled, 'angle', 61)).toEqual({ by: 'above-the-dial', held: 60 });
		expect(doubtReading(pulled, 'angle', 38)).toEqual({ by: 'below-the-dial', held: 60 });
		expect(doubtReading(pulled, 'angle', 515)?.by).toBe('above-the-dial');
	});

	it('takes a bend that was opened far below the dial, and asks again above it', () => {
		const open = relieved(known, 14);
		expect(doubtReading(known, 'angle', 38)?.by).toBe('below-the-dial');
		expect(doubtReading(open, 'angle', 38)).toBeNull();
		expect(doubtReading(open, 'angle', 61)?.by).toBe('above-the-dial');
	});

	it('asks whether it was read on the inside when the rest to 180 would pass', () => {
		expect(doubtReading(pulled, 'angle', 128.5)).toMatchObject({ inside: 51.5 });
		expect(doubtReading(pulled, 'angle', 100)).not.toHaveProperty('inside');
	});

	it('asks again where a blunder is likelier than the reading', () => {
		const next = observe(pull(newBend(known), 60, 60), 'released', 53);
		expect(doubtReading(next, 'angle', 52)).toBeNull();
		expect(doubtReading(next, 'angle', 57)?.by).toBe('expectation');
	});
});

describe('doubt of the dial', () => {
	it('asks again after release when it shows more than under load, or little likely', () => {
		expect(doubtReading(pulled, 'released', 52.5)).toBeNull();
		expect(doubtReading(pulled, 'released', 61)?.by).toBe('above-the-dial');
		expect(doubtReading(pulled, 'released', 25)?.by).toBe('expectation');
	});

	it('asks again when the pointer is far from where the seated tube puts it', () => {
		expect(doubtReading(cold, 'pointer', 0.5)).toBeNull();
		expect(doubtReading(cold, 'pointer', 53)).toMatchObject({ by: 'expectation', expected: 0 });
		expect(doubtReading(newSeat(known), 'pointer', 53)).toBeNull();
		expect(doubtReading(newSeat(known), 'pointer', 35)?.by).toBe('expectation');
	});

	it('asks again what it would hardly use: five degrees off, where nobody has read the dial after release yet', () => {
		const short = newSeat(observe(pull(cold, 18.5, 18.5), 'angle', 14.5));
		expect(doubtReading(short, 'pointer', 12.5)).toBeNull();
		expect(doubtReading(short, 'pointer', 10)).toMatchObject({ by: 'expectation' });
		const long = newSeat(observe(pulled, 'angle', 51.5));
		expect(doubtReading(long, 'pointer', 57.7)).toMatchObject({ by: 'expectation' });
	});

	it('takes one two degrees off, and one after release eight off, though they count for less than half', () => {
		expect(doubtReading(newSeat(known), 'pointer', 50.9)).toBeNull();
		expect(doubtReading(pulled, 'released', 45.5)).toBeNull();
	});
});
