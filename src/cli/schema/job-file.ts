import * as z from 'zod/mini';
import { LONGEST_NAME, LONGEST_NOTES } from '../../tube/names.ts';
import { endType, flagType, numberType, ordinalType, pairType, unitsType } from './schema-parts.ts';

/** A length: a number in the job's units, or as a fabricator writes it: "9 3/8", "2' 6 1/2\"", "362 mm". */
const lengthType = z.union([numberType, z.string()]);
const nameType = z.string().check(z.minLength(1), z.maxLength(LONGEST_NAME));

const dieTypes = {
	clr: z.optional(lengthType),
	growth: z.optional(numberType),
	stretch: z.optional(numberType),
	clamp: z.optional(lengthType),
	follow: z.optional(lengthType),
	markOffset: z.optional(lengthType),
	maxAngle: z.optional(numberType),
	floor: z.optional(lengthType),
};

const straightType = z.strictObject({ straight: ordinalType });
const bendType = z.strictObject({ bend: ordinalType });
const cornerType = z.union([bendType, z.strictObject({ end: endType })]);
const checkTypes = { name: nameType, tolerance: z.optional(lengthType) };
const checkType = z.union([
	z.strictObject({
		...checkTypes,
		drop: z.strictObject({
			from: ordinalType,
			to: z.union([bendType, straightType]),
			surface: z.optional(z.enum(['across', 'centre'])),
		}),
	}),
	z.strictObject({ ...checkTypes, angle: z.strictObject({ between: pairType }) }),
	z.strictObject({ ...checkTypes, span: z.strictObject({ from: cornerType, to: cornerType }) }),
	z.strictObject({ ...checkTypes, out: z.strictObject({ plane: pairType, to: straightType }) }),
	z.strictObject({
		...checkTypes,
		width: z.strictObject({ between: pairType, surface: z.optional(z.enum(['outside', 'inside', 'center'])) }),
	}),
	z.strictObject({ ...checkTypes, overall: z.strictObject({ axis: z.enum(['x', 'y', 'z']) }) }),
	z.strictObject({ ...checkTypes, ovality: bendType }),
]);

const endFitType = z.strictObject({
	cope: z.strictObject({
		od: lengthType,
		angle: numberType,
		offset: z.optional(lengthType),
		turn: z.optional(numberType),
	}),
});

const materialType = z.union([z.string(), z.strictObject({ name: nameType, yield: numberType, modulus: numberType })]);
const pointType = z.union([z.tuple([lengthType, lengthType]), z.tuple([lengthType, lengthType, lengthType])]);

/** A job file, version 1. What is read of one beyond its form (whether a check can be measured, a wall fits its tube) `pullbook check` says. */
export const jobFile = z.strictObject({
	pullbook: z.literal('job/1'),
	name: nameType,
	units: unitsType,
	tube: z.strictObject({
		material: materialType,
		od: lengthType,
		wall: lengthType,
		stock: z.optional(lengthType),
		heat: z.optional(nameType),
	}),
	tooling: z.optional(
		z.strictObject({
			bender: z.optional(nameType),
			die: z.optional(nameType),
			...dieTypes,
			dialStep: z.optional(numberType),
			tape: z.optional(lengthType),
			dies: z.optional(z.record(nameType, z.strictObject(dieTypes))),
		}),
	),
	shape: z.union([
		z.strictObject({
			bends: z.array(
				z.strictObject({ straight: lengthType, angle: numberType, rotation: numberType, die: z.optional(nameType) }),
			),
			last: lengthType,
			radius: z.optional(lengthType),
		}),
		z.strictObject({ points: z.array(pointType) }),
	]),
	trim: z.optional(z.strictObject({ start: z.optional(lengthType), end: z.optional(lengthType) })),
	tolerance: z.optional(
		z.strictObject({
			under: z.optional(numberType),
			over: z.optional(numberType),
			length: z.optional(lengthType),
			rotation: z.optional(numberType),
			shape: z.optional(lengthType),
			direction: z.optional(numberType),
		}),
	),
	risk: z.optional(numberType),
	mayOpen: z.optional(flagType),
	quantity: z.optional(ordinalType),
	ends: z.optional(z.strictObject({ start: z.optional(endFitType), far: z.optional(endFitType) })),
	checks: z.optional(z.array(checkType)),
	notes: z.optional(z.string().check(z.maxLength(LONGEST_NOTES))),
});
