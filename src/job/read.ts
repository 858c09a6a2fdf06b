import { hasKey, isObject } from '../tube/as-json.ts';
/** From a parsed job file to a job, or to every fault in it at once. */
import { BOUNDS } from '../tube/bounds.ts';
import { trimWithCopes } from '../tube/cope.ts';
import { furtherPlace } from '../tube/dies.ts';
import type { Job, Units } from '../tube/job.ts';
import { wholeTolerance } from '../tube/tolerance.ts';
import { UNSAID } from '../tube/whole-job.ts';
import { readChecks } from './checks.ts';
import { dieNames } from './dies.ts';
import { readEnds } from './end-fits.ts';
import type { Fault } from './facts/index.ts';
import { FaultList, type Report, valued } from './fault.ts';
import { anything, count, length, notes, number, readObject, such, text, yesOrNo } from './field-readers.ts';
import { type Radii, readShape } from './shape.ts';
import { reportSpringsBack } from './springs-back.ts';
import { type ReadTooling, readTooling, type ToolingLookup } from './tooling.ts';
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
	pullbook: such((value) => value === JOB_FORMAT, { code: 'format', format: JOB_FORMAT }),
	name: text('part'),
	units: such((value): value is Units => value === 'in' || value === 'mm', { code: 'units' }),
	tube: anything,
	tooling: anything,
	shape: anything,
	trim: anything,
	tolerance: anything,
	risk: number('risk', BOUNDS.risk),
	mayOpen: yesOrNo('may-open'),
	quantity: count('tubes', MOST_TUBES),
	ends: anything,
	checks: anything,
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
	// Without units the rest is read as millimeters, which can be the larger numbers, for its other faults.
	const units = top.units ?? 'mm';
	const tube = readTube(value.tube, units, report);
	const { tooling, fromBender } = readTooling(value.tooling, tube.od, units, lookup, report);
	reportSpringsBack(tube, tooling.clr, 'tooling.clr', report);
	for (const [name, { clr }] of Object.entries(tooling.dies ?? {}))
		reportSpringsBack(tube, clr ?? undefined, furtherPlace(name, 'clr'), report);
	const radii = radiiOf(tooling);
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

/** The radii that dies and, as far as it is stated, their growth give; undefined where the job's own is not known. */
function radiiOf({ clr: die, growth = null, dies = {} }: ReadTooling): Radii | undefined {
	if (die === undefined) return undefined;
	const further = Object.entries(dies).map(([name, own]) => {
		const { clr, growth: grown } = { clr: die, growth, ...own };
		return [name, { die: clr, finished: clr * (grown ?? 1) }] as const;
	});
	return { die, finished: die * (growth ?? 1), further: new Map(further) };
}

function readTrim(value: unknown, units: Units, report: Report): Job['trim'] {
	const room = length(units, BOUNDS.trim);
	const read = value === undefined ? {} : readObject(value, 'trim', { start: room, end: room }, [], report);
	return { start: 0, end: 0, ...read };
}

/** `length` is undefined where it was given but is faulty. */
function readTolerance(value: unknown, units: Units, report: Report): Partial<Job['tolerance']> {
	if (value === undefined) return wholeTolerance(TOLERANCE[units]);
	const readers = {
		under: number('angle-tolerance', BOUNDS.band),
		over: number('angle-tolerance', BOUNDS.band),
		length: length(units, BOUNDS.lengthTolerance),
		rotation: number('angle-tolerance', BOUNDS.angleTolerance),
		shape: length(units, BOUNDS.shapeTolerance),
		direction: number('angle-tolerance', BOUNDS.angleTolerance),
	};
	const read = readObject(value, 'tolerance', readers, [], report);
	if (read.under === 0 && read.over === 0) {
		report({ at: 'tolerance', found: valued(value), right: { code: 'some-tolerance' } });
	}
	const faulty = hasKey(value, 'length') && read.length === undefined;
	return { ...wholeTolerance({ ...TOLERANCE[units], ...read }), ...(faulty ? { length: undefined } : {}) };
}
