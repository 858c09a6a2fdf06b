import * as z from 'zod/mini';
import { bentAs, countType, end, flag, mark, number, ordinal, text, turn, units, warning } from './parts.ts';

const growthFrom = { value: number, from: z.enum(['job', 'die', 'expected']) };

const bend = z.strictObject({
	bend: ordinal,
	angle: number,
	rotation: number,
	straight: number,
	arc: number,
	setback: number,
	external: number,
	radius: number,
	die: z.optional(text),
	mark: z.strictObject(mark),
	face: z.enum(['same', 'opposite', 'other']),
	around: z.strictObject({ degrees: number, length: number }),
	tubeTurn: turn,
	swing: z.strictObject({ reach: number, above: number, below: number }),
});

const choice = z.strictObject({ possible: flag, hindrances: z.array(warning), left: number });

/** What `layout JOB --json` prints. */
export const layoutDocument = z.strictObject({
	job: text,
	units,
	growth: z.strictObject({ ...growthFrom, dies: z.optional(z.record(text, z.strictObject(growthFrom))) }),
	developedLength: number,
	cutLength: number,
	bends: z.array(bend),
	corners: z.array(z.tuple([number, number, number])),
	overall: z.strictObject({ x: number, y: number, z: number }),
	checks: z.array(z.strictObject({ name: text, kind: text, design: number, tolerance: number, after: countType })),
	warnings: z.array(warning),
	bentAs: z.optional(bentAs),
	ends: z.strictObject({ start: choice, far: choice, better: z.nullable(end) }),
	copes: z.optional(z.array(z.looseObject({ end, od: number, angle: number, depth: number }))),
	chalk: z.optional(z.array(z.looseObject({}))),
});
