import { describe, expect, it } from 'vitest';
import { materialKeys } from '../../src/springback/materials.ts';
import { weightOf } from '../../src/tube/weight.ts';
import { plainJob } from '../helpers/shop/plain-job.ts';

const tube = (name: string, od: number, wall: number) => {
	const { tube } = plainJob();
	return { ...tube, material: { ...tube.material, name }, od, wall };
};

describe('the weight of a tube', () => {
	// EN 10220:2002, table 1, mass per unit length in kg/m (from memory).
	it.each([
		[21.3, 2, 0.952],
		[33.7, 2.6, 1.99],
		[42.4, 2.6, 2.55],
		[48.3, 3.2, 3.56],
		[60.3, 2.9, 4.11],
		[88.9, 3.2, 6.76],
		[114.3, 3.6, 9.83],
	])('%f x %f mm is that of the section table', (od, wall, kgPerMetre) => {
		const weight = weightOf(tube('s235jr', od, wall), 1000, 'mm')!;
		expect(Number(weight.toPrecision(3))).toBe(kgPerMetre);
	});

	// ASME B36.10M, table 1, schedule 40, plain-end weight in lb/ft (from memory).
	it.each([
		[0.84, 0.109, 0.85],
		[1.315, 0.133, 1.68],
		[1.9, 0.145, 2.72],
		[2.375, 0.154, 3.66],
		[4.5, 0.237, 10.8],
	])('%f x %f in is that of the section table', (od, wall, poundsPerFoot) => {
		const weight = weightOf(tube('1020-dom', od, wall), 12, 'in')!;
		expect(Math.abs(weight - poundsPerFoot)).toBeLessThanOrEqual(0.006);
	});

	it('is known of every material of the table, and of no other', () => {
		for (const key of materialKeys) expect([key, weightOf(tube(key, 2, 0.1), 12, 'in')]).not.toContain(null);
		expect(weightOf(tube('unobtainium', 2, 0.1), 12, 'in')).toBeNull();
	});
});
