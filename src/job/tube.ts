/** Reads `tube`: material, outside diameter, wall, the piece in hand and its heat number. */
import * as z from 'zod/mini';
import { materialByKey, materialKeys } from '../springback/materials.ts';
import { BOUNDS } from '../tube/bounds.ts';
import type { Job, Material, Units } from '../tube/job.ts';
import { type Report, show } from './fault.ts';
import { isObject, length, number, readObject, text } from './fields.ts';

/** Outside of these no metal is found; a modulus in the other unit is caught by it. */
const METALS = {
	in: { yield: { least: 1, most: 500 }, modulus: { least: 100, most: 100_000 } },
	mm: { yield: { least: 7, most: 3500 }, modulus: { least: 700, most: 700_000 } },
} as const;

export type ReadTube = Partial<Job['tube']>;

export function readTube(value: unknown, units: Units, report: Report): ReadTube {
	const heat = text('the heat, lot or certificate number');
	const schemas = {
		material: z.unknown(),
		od: length(units, BOUNDS.od),
		wall: length(units, BOUNDS.wall),
		stock: length(units, BOUNDS.stock),
		heat,
	};
	const { material, ...tube } = readObject(value, 'tube', schemas, ['od', 'wall'], report);
	const { od, wall } = tube;
	if (od !== undefined && wall !== undefined && wall > od / 2) {
		const right = `a wall of at most half the outside diameter, ${od / 2}`;
		report({ at: 'tube.wall', found: show((value as { wall: unknown }).wall), right });
	}
	if (!isObject(value)) return tube;
	return { ...tube, material: readMaterial(material, units, report) };
}

function readMaterial(value: unknown, units: Units, report: Report): Material | undefined {
	const at = 'tube.material';
	if (isObject(value)) {
		const stress = units === 'in' ? 'ksi' : 'MPa';
		const schemas = {
			name: text("the material's name"),
			yield: number(`the yield strength in ${stress}`, METALS[units].yield),
			modulus: number(`the elastic modulus in ${stress}`, METALS[units].modulus),
		};
		const { name, yield: strength, modulus } = readObject(value, at, schemas, ['name', 'yield', 'modulus'], report);
		if (name === undefined || strength === undefined || modulus === undefined) return undefined;
		return { name, yield: strength, modulus };
	}
	const material = typeof value === 'string' ? materialByKey(value, units) : undefined;
	if (material === undefined) {
		const right = `one of ${materialKeys.join(', ')}, or { "name", "yield", "modulus" } as the certificate of the tube has them`;
		report({ at, found: show(value), right });
	}
	return material;
}
