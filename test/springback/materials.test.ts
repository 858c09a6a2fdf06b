import { describe, expect, it } from 'vitest';
import { materialByKey, materialKeys, materialRow } from '../../src/springback/materials.ts';

describe('the material table', () => {
	it.each([
		// Source: ASTM A513 type 5 data of a tube stockist (Team Tube, DOM technical data): cold drawn 60 and 75 ksi, stress
		// relieved 55 and 70; moduli from memory (MMPDS).
		['1020-dom', 60, 29_000],
		['1020-dom-sr', 55, 29_000],
		['1026-dom', 75, 29_000],
		['1026-dom-sr', 70, 29_000],
		// From memory (MMPDS / MIL-HDBK-5).
		['4130-normalized', 75, 29_000],
		['304-annealed', 30, 28_000],
		['6061-t6', 35, 9_900],
		// Source: ASTM A513 types 1 and 2 as welded (Boyer Steel, ASTM specifications): 1010 at least 32 ksi, 1020 at least 38.
		['erw', 38, 29_000],
		['hrew', 32, 29_000],
		// Source: ASTM A500, round structural tubing (the same; also Wikipedia, ASTM A500): grade B 42 ksi, grade C 46.
		['a500-b', 42, 29_000],
		['a500-c', 46, 29_000],
		// From memory: ASTM A269 TP316L, B221 6063-T52 up to 1/2 in, B338 grade 2.
		['316l-annealed', 25, 28_000],
		['6063-t52', 16, 10_000],
		['ti-grade2', 40, 15_000],
	])('%s: yield %d ksi, modulus %d ksi', (key, strength, modulus) => {
		expect(materialByKey(key, 'in')).toEqual({ name: key, yield: strength, modulus });
	});

	it.each([
		// Source: the name of a steel in EN 10027-1 has its least yield strength in MPa; EN 1993-1-1 takes 210 GPa for all of them (from memory).
		['s235jr', 235],
		['s355j2h', 355],
		['e235', 235],
		['e355', 355],
	])('%s: yield %d MPa, and in ksi the same', (key, strength) => {
		expect(materialByKey(key, 'mm')).toEqual({ name: key, yield: strength, modulus: 210_000 });
		// 1 ksi is 6.894757 MPa.
		expect(materialByKey(key, 'in')!.yield * 6.894757).toBeCloseTo(strength, 9);
	});

	it('names a source for each', () => {
		for (const key of materialKeys)
			expect(materialRow(key)!.source).toMatch(/^(ASTM [AB]\d{3}|EN 10\d{3}-\d|MIL-T-\d{4})/);
	});

	it('is in MPa for a job in mm', () => {
		// Source: NIST SP 811 (from memory): 1 ksi = 6.894757 MPa; so 60 ksi are 413.685 MPa and 29 000 ksi are 199.948 GPa.
		const metric = materialByKey('1020-dom', 'mm');
		expect(metric?.yield).toBeCloseTo(413.685, 3);
		expect(metric?.modulus).toBeCloseTo(199_947.95, 2);
	});

	it('knows each of its keys and no other', () => {
		expect(materialKeys).toHaveLength(18);
		for (const key of materialKeys) expect(materialByKey(key, 'in')?.name).toBe(key);
		for (const key of ['', 'steel', 'constructor']) expect(materialByKey(key, 'in')).toBeUndefined();
	});
});
