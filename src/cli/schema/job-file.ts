import * as z from 'zod/mini';
import { LONGEST_NAME, LONGEST_NOTES } from '../../tube/names.ts';
import { end, flag, numberType, ordinalType, pair, units } from './schema-parts.ts';

/** A length: a number in the job's units, or as a fabricator writes it: "9 3/8", "2' 6 1/2\"", "362 mm". */
const length = z.union([numberType, z.string()]);
const name = z.string().check(z.minLength(1), z.maxLength(LONGEST_NAME));

const dieFields = {
	clr: z.optional(length),
	growth: z.optional(numberType),
	stretch: z.optional(numberType),
	clamp: z.optional(length),
	follow: z.optional(length),
	markOffset: z.optional(length),
	maxAngle: z.optional(numberType),
	floor: z.optional(length),
};

const straight = z.strictObject({ straight: ordinalType });
const bend = z.strictObject({ bend: ordinalType });
const corner = z.union([bend, z.strictObject({ end })]);
const ofCheck = { name, tolerance: z.optional(length) };
const check = z.union([
	z.strictObject({
		...ofCheck,
		drop: z.strictObject({
			from: ordinalType,
			to: z.union([bend, straight]),
			surface: z.optional(z.enum(['across', 'centre'])),
		}),
	}),
	z.strictObject({ ...ofCheck, angle: z.strictObject({ between: pair }) }),
	z.strictObject({ ...ofCheck, span: z.strictObject({ from: corner, to: corner }) }),
	z.strictObject({ ...ofCheck, out: z.strictObject({ plane: pair, to: straight }) }),
	z.strictObject({
		...ofCheck,
		width: z.strictObject({ between: pair, surface: z.optional(z.enum(['outside', 'inside', 'center'])) }),
	}),
	z.strictObject({ ...ofCheck, overall: z.strictObject({ axis: z.enum(['x', 'y', 'z']) }) }),
	z.strictObject({ ...ofCheck, ovality: bend }),
]);

const endFit = z.strictObject({
	cope: z.strictObject({ od: length, angle: numberType, offset: z.optional(length), turn: z.optional(numberType) }),
});

const material = z.union([z.string(), z.strictObject({ name, yield: numberType, modulus: numberType })]);
const point = z.union([z.tuple([length, length]), z.tuple([length, length, length])]);

/** A job file, version 1. What is read of one beyond its form (whether a check can be measured, a wall fits its tube) `pullbook check` says. */
export const jobFile = z.strictObject({
	pullbook: z.literal('job/1'),
	name,
	units,
	tube: z.strictObject({
		material,
		od: length,
		wall: length,
		stock: z.optional(length),
		heat: z.optional(name),
	}),
	tooling: z.optional(
		z.strictObject({
			bender: z.optional(name),
			die: z.optional(name),
			...dieFields,
			dialStep: z.optional(numberType),
			tape: z.optional(length),
			dies: z.optional(z.record(name, z.strictObject(dieFields))),
		}),
	),
	shape: z.union([
		z.strictObject({
			bends: z.array(
				z.strictObject({ straight: length, angle: numberType, rotation: numberType, die: z.optional(name) }),
			),
			last: length,
			radius: z.optional(length),
		}),
		z.strictObject({ points: z.array(point) }),
	]),
	trim: z.optional(z.strictObject({ start: z.optional(length), end: z.optional(length) })),
	tolerance: z.optional(
		z.strictObject({
			under: z.optional(numberType),
			over: z.optional(numberType),
			length: z.optional(length),
			rotation: z.optional(numberType),
			shape: z.optional(length),
			direction: z.optional(numberType),
		}),
	),
	risk: z.optional(numberType),
	mayOpen: z.optional(flag),
	quantity: z.optional(ordinalType),
	ends: z.optional(z.strictObject({ start: z.optional(endFit), far: z.optional(endFit) })),
	checks: z.optional(z.array(check)),
	notes: z.optional(z.string().check(z.maxLength(LONGEST_NOTES))),
});
