/** Reads `tube`: material, outside diameter, wall, the piece in hand and its heat number. */
import { materialByKey, materialKeys } from '../springback/materials.ts';
import { isObject } from '../tube/as-json.ts';
import { BOUNDS } from '../tube/bounds.ts';
import type { Job, Material, Units } from '../tube/job.ts';
import { type Report, valued } from './fault.ts';
import { anything, length, number, readObject, text } from './field-readers.ts';

/** Outside of these no metal is found; a modulus in the other unit is caught by it. */
const METALS = {
	in: { yield: { least: 1, most: 500 }, modulus: { least: 100, most: 100_000 } },
	mm: { yield: { least: 7, most: 3500 }, modulus: { least: 700, most: 700_000 } },
} as const;

export type ReadTube = Partial<Job['tube']>;

export function readTube(value: unknown, units: Units, report: Report): ReadTube {
	const readers = {
		material: anything,
		od: length(units, BOUNDS.od),
		wall: length(units, BOUNDS.wall),
		stock: length(units, BOUNDS.stock),
		heat: text('heat'),
	};
	const { material, ...tube } = readObject(value, 'tube', readers, ['od', 'wall'], report);
	const { od, wall } = tube;
	if (od !== undefined && wall !== undefined && wall > od / 2) {
		const right = { code: 'wall-at-most', most: od / 2 } as const;
		report({ at: 'tube.wall', found: valued((value as { wall: unknown }).wall), right });
	}
	if (!isObject(value)) return tube;
	return { ...tube, material: readMaterial(material, units, report) };
}

function readMaterial(value: unknown, units: Units, report: Report): Material | undefined {
	const at = 'tube.material';
	if (isObject(value)) {
		const stress = units === 'in' ? 'ksi' : 'MPa';
		const readers = {
			name: text('material'),
			yield: number({ strength: 'yield', in: stress }, METALS[units].yield),
			modulus: number({ strength: 'modulus', in: stress }, METALS[units].modulus),
		};
		const { name, yield: strength, modulus } = readObject(value, at, readers, ['name', 'yield', 'modulus'], report);
		if (name === undefined || strength === undefined || modulus === undefined) return undefined;
		return { name, yield: strength, modulus };
	}
	const material = typeof value === 'string' ? materialByKey(value, units) : undefined;
	if (material === undefined) {
		report({ at, found: valued(value), right: { code: 'material', keys: materialKeys } });
	}
	return material;
}
