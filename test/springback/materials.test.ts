import { describe, expect, it } from 'vitest';
import { materialByKey, materialKeys } from '../../src/springback/materials.ts';

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
	])('%s: yield %d ksi, modulus %d ksi', (key, strength, modulus) => {
		expect(materialByKey(key, 'in')).toEqual({ name: key, yield: strength, modulus });
	});

	it('is in MPa for a job in mm', () => {
		// Source: NIST SP 811 (from memory): 1 ksi = 6.894757 MPa; so 60 ksi are 413.685 MPa and 29 000 ksi are 199.948 GPa.
		const metric = materialByKey('1020-dom', 'mm');
		expect(metric?.yield).toBeCloseTo(413.685, 3);
		expect(metric?.modulus).toBeCloseTo(199_947.95, 2);
	});

	it('knows each of its keys and no other', () => {
		expect(materialKeys).toHaveLength(7);
		for (const key of materialKeys) expect(materialByKey(key, 'in')?.name).toBe(key);
		for (const key of ['', 'steel', 'constructor']) expect(materialByKey(key, 'in')).toBeUndefined();
	});
});
