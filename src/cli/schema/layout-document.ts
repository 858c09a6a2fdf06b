import * as z from 'zod/mini';
import {
	bentAs,
	countType,
	end,
	flag,
	mark,
	numberType,
	ordinalType,
	textType,
	turn,
	units,
	warning,
} from './schema-parts.ts';

const growthFrom = { value: numberType, from: z.enum(['job', 'die', 'expected']) };

const bend = z.strictObject({
	bend: ordinalType,
	angle: numberType,
	rotation: numberType,
	straight: numberType,
	arc: numberType,
	setback: numberType,
	external: numberType,
	radius: numberType,
	die: z.optional(textType),
	mark: z.strictObject(mark),
	face: z.enum(['same', 'opposite', 'other']),
	around: z.strictObject({ degrees: numberType, length: numberType }),
	tubeTurn: turn,
	swing: z.strictObject({ reach: numberType, above: numberType, below: numberType }),
});

const choice = z.strictObject({ possible: flag, hindrances: z.array(warning), left: numberType });

/** What `layout JOB --json` prints. */
export const layoutDocument = z.strictObject({
	job: textType,
	units,
	growth: z.strictObject({ ...growthFrom, dies: z.optional(z.record(textType, z.strictObject(growthFrom))) }),
	developedLength: numberType,
	cutLength: numberType,
	bends: z.array(bend),
	corners: z.array(z.tuple([numberType, numberType, numberType])),
	overall: z.strictObject({ x: numberType, y: numberType, z: numberType }),
	checks: z.array(
		z.strictObject({ name: textType, kind: textType, design: numberType, tolerance: numberType, after: countType }),
	),
	warnings: z.array(warning),
	bentAs: z.optional(bentAs),
	ends: z.strictObject({ start: choice, far: choice, better: z.nullable(end) }),
	copes: z.optional(z.array(z.looseObject({ end, od: numberType, angle: numberType, depth: numberType }))),
	chalk: z.optional(z.array(z.looseObject({}))),
});
