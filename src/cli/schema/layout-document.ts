import * as z from 'zod/mini';
import {
	bentAsType,
	countType,
	endType,
	flagType,
	markTypes,
	numberType,
	ordinalType,
	textType,
	turnType,
	unitsType,
	warningType,
} from './schema-parts.ts';

const growthFieldsShown = { value: numberType, from: z.enum(['job', 'die', 'expected']) };

const bendShown = z.strictObject({
	bend: ordinalType,
	angle: numberType,
	rotation: numberType,
	straight: numberType,
	arc: numberType,
	setback: numberType,
	external: numberType,
	radius: numberType,
	die: z.optional(textType),
	mark: z.strictObject(markTypes),
	face: z.enum(['same', 'opposite', 'other']),
	around: z.strictObject({ degrees: numberType, length: numberType }),
	tubeTurn: turnType,
	swing: z.strictObject({ reach: numberType, above: numberType, below: numberType }),
});

const choiceShown = z.strictObject({ possible: flagType, hindrances: z.array(warningType), left: numberType });

/** What `layout JOB --json` prints. */
export const layoutDocument = z.strictObject({
	job: textType,
	units: unitsType,
	growth: z.strictObject({
		...growthFieldsShown,
		dies: z.optional(z.record(textType, z.strictObject(growthFieldsShown))),
	}),
	developedLength: numberType,
	cutLength: numberType,
	bends: z.array(bendShown),
	corners: z.array(z.tuple([numberType, numberType, numberType])),
	overall: z.strictObject({ x: numberType, y: numberType, z: numberType }),
	checks: z.array(
		z.strictObject({ name: textType, kind: textType, design: numberType, tolerance: numberType, after: countType }),
	),
	warnings: z.array(warningType),
	bentAs: z.optional(bentAsType),
	ends: z.strictObject({ start: choiceShown, far: choiceShown, better: z.nullable(endType) }),
	copes: z.optional(z.array(z.looseObject({ end: endType, od: numberType, angle: numberType, depth: numberType }))),
	chalk: z.optional(z.array(z.looseObject({}))),
});
