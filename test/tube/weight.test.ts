import { describe, expect, it } from 'vitest';
import { materialKeys } from '../../src/springback/materials.ts';
import { weightOf } from '../../src/tube/weight.ts';
import { plainJob } from '../helpers/shop/plain-job.ts';

const tube = (name: string, od: number, wall: number) => {
	const { tube } = plainJob();
	return { ...tube, material: { ...tube.material, name }, od, wall };
};

describe('the weight of a tube', () => {
	// Mass in kg/m of cold formed circular hollow sections to BS EN 10219, from the section tables of the Steel Construction Institute (P363), read
	// in the open data github.com/waynemaranga/steelsnakes, UK/data/CFCHS.json.
	it.each([
		[33.7, 3, 2.27],
		[42.4, 3, 2.91],
		[48.3, 3, 3.35],
		[48.3, 4, 4.37],
		[60.3, 4, 5.55],
		[76.1, 3, 5.41],
		[88.9, 3.5, 7.37],
		[114.3, 5, 13.5],
	])('%f x %f mm is that of the section table', (od, wall, kgPerMetre) => {
		const weight = weightOf(tube('s235jr', od, wall), 1000, 'mm')!;
		expect(Number(weight.toPrecision(3))).toBe(kgPerMetre);
	});

	// Nominal weight in lb/ft of standard and extra strong pipe, from the shapes database of the American Institute of Steel Construction, read in
	// the same open data, US/data/PIPE.json: W, of OD and tnom.
	it.each([
		[0.84, 0.109, 0.85],
		[1.05, 0.113, 1.13],
		[1.315, 0.133, 1.68],
		[1.66, 0.14, 2.27],
		[1.9, 0.145, 2.72],
		[1.9, 0.2, 3.63],
		[2.375, 0.154, 3.66],
		[2.875, 0.203, 5.8],
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
