import { describe, expect, it } from 'vitest';
import { normalizeRotation } from '../../src/tube/angles.ts';
import { around, tubeTurn } from '../../src/tube/turns.ts';
import { plainJob } from '../helpers/shop/plain-job.ts';

describe('rotations', () => {
	it.each([
		[0, 0],
		[180, 180],
		[-180, 180],
		[190, -170],
		[-190, 170],
		[540, 180],
		[720.5, 0.5],
		[-0, 0],
		[-360, 0],
	])('%d is told as %d', (rotation, told) => {
		expect(Object.is(normalizeRotation(rotation), told)).toBe(true);
	});

	it('are not told as -180 through rounding', () => {
		expect(normalizeRotation(-179.99999999999997)).toBe(180);
		expect(normalizeRotation(-179.9)).toBe(-179.9);
	});
});

describe('the turn of the tube in the machine', () => {
	// Which of the two words is right is shown in kernel.test.ts; here the edges.
	it.each([
		[30, 2, 30, 'counterclockwise'],
		[-30, 2, 30, 'clockwise'],
		[330, 2, 30, 'clockwise'],
		[0, 2, 0, 'none'],
		[0.05, 2, 0.05, 'none'],
		[-0.06, 2, 0.06, 'clockwise'],
		[180, 2, 180, 'either'],
		[-179.96, 3, 179.96, 'either'],
		[179.9, 3, 179.9, 'counterclockwise'],
		[45, 1, 45, 'none'],
	])('of %d before bend %d is %d %s', (rotation, bend, degrees, way) => {
		expect(tubeTurn(rotation, bend)).toEqual({ degrees: expect.closeTo(degrees, 9), way });
	});
});

describe('where the mark goes round the tube', () => {
	const job = plainJob({ tolerance: { rotation: 1 } });

	it('sums the rotations since bend 1, whose own does not count', () => {
		const rotations = [25, 30, 60, 90.5, 179.5];
		expect(around(job, rotations, 1)).toEqual({ face: 'same', around: { degrees: 0, length: 0 } });
		expect(around(job, rotations, 3).around.degrees).toBe(90);
		expect(around(job, rotations, 4)).toMatchObject({ face: 'opposite', around: { degrees: -179.5 } });
		expect(around(job, rotations, 5)).toMatchObject({ face: 'same', around: { degrees: 0 } });
	});

	it('gives the way round on the outside, half of it for half a turn', () => {
		// Circumference of a 1.5 in tube 4.71239 in, by formula.
		expect(around(job, [0, 180], 2).around.length).toBeCloseTo(4.71239 / 2, 5);
		expect(around(job, [0, -90], 2)).toEqual({
			face: 'other',
			around: { degrees: -90, length: expect.closeTo(-4.71239 / 4, 5) },
		});
	});

	it('calls a face by the rotation tolerance', () => {
		const loose = plainJob({ tolerance: { rotation: 2.5 } });
		expect(around(job, [0, 2], 2).face).toBe('other');
		expect(around(loose, [0, 2], 2).face).toBe('same');
		expect(around(loose, [0, -178], 2).face).toBe('opposite');
	});
});
