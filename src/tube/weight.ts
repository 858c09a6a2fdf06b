import { convertLength, type Units } from '../units/units.ts';
import type { Job } from './job.ts';

/**
 * Densities in kg/dm3 by what a material's key begins with. Steel: EN 10220 and EN 10305 reckon masses with 7.85. Stainless, EN 10088-1,
 * table of physical properties: 1.4301 (304) 7.9, 1.4404 (316L) 8.0. Aluminum: Aluminum Association, nominal densities: 6061 and 6063
 * 2.70. Titanium grade 2: ASTM B338 grades reckoned with 4.51. All from memory, not confirmed.
 */
const DENSITIES: readonly (readonly [RegExp, number])[] = [
	[/^(1020|1026|4130|erw|hrew|a500|s235|s355|e235|e355)/, 7.85],
	[/^304/, 7.9],
	[/^316/, 8.0],
	[/^606[13]/, 2.7],
	[/^ti-/, 4.51],
];

/** One pound in kg, exactly (NIST SP 811, appendix B.8). */
const KG_PER_POUND = 0.45359237;

const MM3_PER_DM3 = 1e6;

/** What a length of the tube weighs, in kg (mm) or lb (in); null where the density of its material is not known. */
export function weightOf({ material, od, wall }: Job['tube'], length: number, units: Units): number | null {
	const density = DENSITIES.find(([key]) => key.test(material.name))?.[1];
	if (density === undefined) return null;
	const mm = (value: number) => convertLength(value, units, 'mm');
	const volume = Math.PI * mm(od - wall) * mm(wall) * mm(length);
	const kg = (volume / MM3_PER_DM3) * density;
	return units === 'mm' ? kg : kg / KG_PER_POUND;
}
