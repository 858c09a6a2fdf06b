import type { Units } from '../units/units.ts';
import { counted } from './counted.ts';
import { tubeSize } from './tube-size.ts';

interface Summed {
	bends: number;
	od: number;
	wall: number;
	units: Units;
	material: string;
}

/** A job in a few words, as lists have it; and of that how many bends, and the tube: diameter and wall. */
export function jobSummary(of: Summed): { bends: string; tube: string; summary: string } {
	const bends = counted(of.bends, 'bend');
	const tube = `${tubeSize(of)} ${of.units}`;
	return { bends, tube, summary: `${bends}, ${tube}, ${of.material}` };
}
