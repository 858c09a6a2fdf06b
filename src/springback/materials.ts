/** The material table: keys a job file may name, and what each stands for. */
import type { Material } from '../tube/job.ts';
import type { Units } from '../units/units.ts';

/** One ksi in MPa (NIST SP 811, appendix B.8: 1 ksi = 6.894757 MPa). */
const MPA_PER_KSI = 6.894757;

/**
 * Yield and modulus in ksi.
 * 1020 and 1026 DOM, cold drawn and stress relieved: a tube stockist's ASTM A513 type 5 data (Team Tube, DOM technical
 * data); 1020 also as the mandrel-drawn minimum of ASTM A513. From memory, not confirmed: 4130 normalized tube (MMPDS /
 * MIL-T-6736 condition N, wall up to .188 in), 304 annealed, 6061-T6 drawn tube, and the moduli (MMPDS).
 */
const TABLE: ReadonlyMap<string, { yield: number; modulus: number }> = new Map([
	['4130-normalized', { yield: 75, modulus: 29_000 }],
	['1020-dom', { yield: 60, modulus: 29_000 }],
	['1020-dom-sr', { yield: 55, modulus: 29_000 }],
	['1026-dom', { yield: 75, modulus: 29_000 }],
	['1026-dom-sr', { yield: 70, modulus: 29_000 }],
	['304-annealed', { yield: 30, modulus: 28_000 }],
	['6061-t6', { yield: 35, modulus: 9_900 }],
]);

export const materialKeys: readonly string[] = [...TABLE.keys()];

/** The material under a key, named by it, in ksi (units in) or MPa (units mm); undefined for a key the table lacks. */
export function materialByKey(key: string, units: Units): Material | undefined {
	const row = TABLE.get(key);
	if (row === undefined) return undefined;
	const factor = units === 'mm' ? MPA_PER_KSI : 1;
	return { name: key, yield: row.yield * factor, modulus: row.modulus * factor };
}
