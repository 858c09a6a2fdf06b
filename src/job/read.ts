/** From a parsed job file to a job, or to every fault in it at once. */
import * as z from 'zod/mini';
import { BOUNDS } from '../tube/bounds.ts';
import { trimWithCopes } from '../tube/cope.ts';
import type { Job, Units } from '../tube/job.ts';
import { wholeTolerance } from '../tube/tolerance.ts';
import { UNSAID } from '../tube/whole-job.ts';
import { readChecks } from './checks.ts';
import { dieNames } from './dies.ts';
import { readEnds } from './ends.ts';
import { type Fault, FaultList, type Report, show } from './fault.ts';
import { count, isObject, length, notes, number, readObject, text, yesOrNo } from './fields.ts';
import { readShape } from './shape.ts';
import { reportSpringsBack } from './springs-back.ts';
import { readTooling, type ToolingLookup } from './tooling.ts';
import { readTube } from './tube.ts';

export const JOB_FORMAT = 'job/1';

export interface GoodJob {
	job: Job;
	/** The place of each value that the job leaves to the bender and die as kept, e.g. `tooling.clamp`. */
	fromBender: string[];
}

/** Nothing is kept under any name. */
const NO_TOOLING: ToolingLookup = () => undefined;

const TOLERANCE: Readonly<Record<Units, Omit<Job['tolerance'], 'shape' | 'direction'>>> = {
	in: { under: 0.5, over: 0.5, length: 1 / 16, rotation: 1 },
	mm: { under: 0.5, over: 0.5, length: 1.5, rotation: 1 },
};

/** More of one tube than any shop bends for one job. */
const MOST_TUBES = 10_000;

const TOP = {
	pullbook: z.literal(JOB_FORMAT, { error: `"${JOB_FORMAT}", the format that this program reads` }),
	name: text('a name for the part'),
	units: z.enum(['in', 'mm'], { error: '"in" or "mm"' }),
	tube: z.unknown(),
	tooling: z.unknown(),
	shape: z.unknown(),
	trim: z.unknown(),
	tolerance: z.unknown(),
	risk: number('the part of bends that may come out over', BOUNDS.risk),
	mayOpen: yesOrNo('whether a bend may be worked back'),
	quantity: count('how many of this tube are wanted', MOST_TUBES),
	ends: z.unknown(),
	checks: z.unknown(),
	notes: notes(),
};

/**
 * The job that a parsed file holds. What the file leaves open comes from `lookup` (benders and dies as kept), then from the
 * defaults. With faults there is no job; all of them are given.
 */
export function readJob(value: unknown, lookup: ToolingLookup = NO_TOOLING): GoodJob | { faults: Fault[] } {
	const list = new FaultList();
	const { report, faults } = list;
	const top = readObject(value, 'job', TOP, ['pullbook', 'name', 'units'], report);
	if (!isObject(value)) return { faults: list.told() };
	// Without units the rest is read as millimetres, which can be the larger numbers, for its other faults.
	const units = top.units ?? 'mm';
	const tube = readTube(value.tube, units, report);
	const { tooling, fromBender } = readTooling(value.tooling, tube.od, units, lookup, report);
	reportSpringsBack(tube, tooling.clr, 'tooling.clr', report);
	const { clr, growth } = tooling;
	const radii = clr === undefined ? undefined : { die: clr, finished: clr * (growth ?? 1) };
	const shape = readShape(value.shape, { units, radii, dies: dieNames(value.tooling, tooling.die), report });
	const trim = readTrim(value.trim, units, report);
	const ends = readEnds(value.ends, tube.od, units, report);
	const tolerance = readTolerance(value.tolerance, units, report);
	const measurable = { bends: shape.bends, directions: shape.directions, units, length: tolerance.length };
	const checks = readChecks(value.checks, measurable, report);
	if (faults.length > 0 || shape.source === null) return { faults: list.told() };
	const job = {
		name: top.name,
		units,
		tube: { ...tube, stock: tube.stock ?? null },
		tooling,
		shape: shape.source,
		trim: trimWithCopes(trim, { tube: tube as Job['tube'], ends }),
		tolerance,
		risk: top.risk ?? 0.02,
		mayOpen: top.mayOpen ?? UNSAID.mayOpen,
		quantity: top.quantity ?? UNSAID.quantity,
		...(ends && { ends }),
		checks,
		notes: top.notes ?? '',
	};
	// Every field that could be missing has been reported above.
	return { job: job as Job, fromBender };
}

function readTrim(value: unknown, units: Units, report: Report): Job['trim'] {
	const room = length(units, BOUNDS.trim);
	const read = value === undefined ? {} : readObject(value, 'trim', { start: room, end: room }, [], report);
	return { start: 0, end: 0, ...read };
}

/** `length` is undefined where it was given but is faulty. */
function readTolerance(value: unknown, units: Units, report: Report): Partial<Job['tolerance']> {
	if (value === undefined) return wholeTolerance(TOLERANCE[units]);
	const schemas = {
		under: number('a tolerance in degrees', BOUNDS.band),
		over: number('a tolerance in degrees', BOUNDS.band),
		length: length(units, BOUNDS.lengthTolerance),
		rotation: number('a tolerance in degrees', BOUNDS.angleTolerance),
		shape: length(units, BOUNDS.shapeTolerance),
		direction: number('a tolerance in degrees', BOUNDS.angleTolerance),
	};
	const read = readObject(value, 'tolerance', schemas, [], report);
	if (read.under === 0 && read.over === 0) {
		report({ at: 'tolerance', found: show(value), right: 'some room under or over the angle: not both 0' });
	}
	const faulty = isObject(value) && Object.hasOwn(value, 'length') && read.length === undefined;
	return { ...wholeTolerance({ ...TOLERANCE[units], ...read }), ...(faulty ? { length: undefined } : {}) };
}
