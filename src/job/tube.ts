/** Reads `tube`: material, outside diameter, wall, the piece in hand and its heat number. */
import * as z from 'zod/mini';
import { materialByKey, materialKeys } from '../springback/materials.ts';
import type { Job, Material, Units } from '../tube/job.ts';
import { type Report, show } from './fault.ts';
import { isObject, length, number, readObject, text } from './fields.ts';

/** Above these no metal is found; a modulus in the other unit is caught by it. */
const MOST = { in: { yield: 500, modulus: 100_000 }, mm: { yield: 3500, modulus: 700_000 } } as const;

export type ReadTube = Partial<Job['tube']>;

export function readTube(value: unknown, units: Units, report: Report): ReadTube {
	const positive = length(units, { above: 0 });
	const heat = text('the heat, lot or certificate number');
	const schemas = { material: z.unknown(), od: positive, wall: positive, stock: positive, heat };
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
			yield: number(`the yield strength in ${stress}`, { above: 0, most: MOST[units].yield }),
			modulus: number(`the elastic modulus in ${stress}`, { above: 0, most: MOST[units].modulus }),
		};
		const { name, yield: strength, modulus } = readObject(value, at, schemas, ['name', 'yield', 'modulus'], report);
		if (name === undefined || strength === undefined || modulus === undefined) return undefined;
		return { name, yield: strength, modulus };
	}
	const material = typeof value === 'string' ? materialByKey(value, units) : undefined;
	if (material === undefined) {
		const right = `one of ${materialKeys.join(', ')}, or { "name", "yield", "modulus" }`;
		report({ at, found: show(value), right });
	}
	return material;
}
