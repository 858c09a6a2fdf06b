/** The material table: keys a job file may name, and what each stands for. */
import type { Material } from '../tube/job.ts';
import type { Units } from '../units/units.ts';

/** One ksi in MPa (NIST SP 811, appendix B.8: 1 ksi = 6.894757 MPa). */
const MPA_PER_KSI = 6.894757;

/** A row of the table: yield and modulus as its source has them, and that source, to stand after a number. */
export interface MaterialRow {
	yield: number;
	modulus: number;
	in: 'ksi' | 'MPa';
	source: string;
}

const ksi = (strength: number, modulus: number, source: string): MaterialRow => ({
	yield: strength,
	modulus,
	in: 'ksi',
	source,
});
const mpa = (strength: number, modulus: number, source: string): MaterialRow => ({
	yield: strength,
	modulus,
	in: 'MPa',
	source,
});

/**
 * Least yield strengths of the standards named. Read in tables of them: A513 as welded and A500 round (Boyer Steel, ASTM specifications), A513
 * type 5 (Team Tube, DOM technical data), S235 and S355 up to 16 mm (AZoM article 6022), E235 and E355 by the name of the steel. From memory, not
 * confirmed: 4130 (MMPDS, MIL-T-6736 condition N, wall up to .188 in), 304, 316L, 6061-T6 drawn, 6063-T52, titanium, and every modulus
 * (MMPDS; EN 1993-1-1 for the metric steels). A500 is as in editions up to 2018: later ones ask for more.
 */
const TABLE: ReadonlyMap<string, MaterialRow> = new Map([
	['4130-normalized', ksi(75, 29_000, 'MIL-T-6736 condition N')],
	['1020-dom', ksi(60, 29_000, 'ASTM A513 type 5')],
	['1020-dom-sr', ksi(55, 29_000, 'ASTM A513 type 5, stress relieved')],
	['1026-dom', ksi(75, 29_000, 'ASTM A513 type 5')],
	['1026-dom-sr', ksi(70, 29_000, 'ASTM A513 type 5, stress relieved')],
	['erw', ksi(38, 29_000, 'ASTM A513 type 2, 1020 as welded')],
	['hrew', ksi(32, 29_000, 'ASTM A513 type 1, 1010 as welded')],
	['a500-b', ksi(42, 29_000, 'ASTM A500 grade B, round')],
	['a500-c', ksi(46, 29_000, 'ASTM A500 grade C, round')],
	['s235jr', mpa(235, 210_000, 'EN 10025-2')],
	['s355j2h', mpa(355, 210_000, 'EN 10210-1')],
	['e235', mpa(235, 210_000, 'EN 10305-1, +N')],
	['e355', mpa(355, 210_000, 'EN 10305-1, +N')],
	['304-annealed', ksi(30, 28_000, 'ASTM A269')],
	['316l-annealed', ksi(25, 28_000, 'ASTM A269')],
	['6061-t6', ksi(35, 9_900, 'ASTM B210')],
	['6063-t52', ksi(16, 10_000, 'ASTM B221')],
	['ti-grade2', ksi(40, 15_000, 'ASTM B338')],
]);

export const materialKeys: readonly string[] = [...TABLE.keys()];

/** The row under a key; undefined for a key the table lacks. */
export const materialRow = (key: string): MaterialRow | undefined => TABLE.get(key);

/** The material under a key, named by it, in ksi (units in) or MPa (units mm); undefined for a key the table lacks. */
export function materialByKey(key: string, units: Units): Material | undefined {
	const row = TABLE.get(key);
	if (row === undefined) return undefined;
	const wanted = units === 'mm' ? 'MPa' : 'ksi';
	const factor = row.in === wanted ? 1 : wanted === 'MPa' ? MPA_PER_KSI : 1 / MPA_PER_KSI;
	return { name: key, yield: row.yield * factor, modulus: row.modulus * factor };
}
