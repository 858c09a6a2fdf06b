import { readdirSync } from 'node:fs';
import { basename, join } from 'node:path';
import { JobFileError } from '../job/fault.ts';
import { jobText } from '../job/job-text.ts';
import { loadJob } from '../job/load.ts';
import type { ToolingLookup } from '../job/tooling.ts';
import { realPath } from '../journal/find.ts';
import type { JobRow, SessionRow } from '../screen/home/home-port.ts';
import { nameWillDo } from '../tube/names.ts';
import { parseLength } from '../units/parse.ts';
import type { Listed } from './job-folder.ts';

/** The job files of a folder, by name. */
function jobFiles(folder: string): string[] {
	return readdirSync(folder)
		.filter((name) => name.endsWith('.json'))
		.sort()
		.map((name) => join(folder, name));
}

/** Each job file's newest session that was interrupted, and its newest of all. */
type Bent = (path: string) => Pick<JobRow, 'open' | 'latest'>;

function bentIn(sessions: readonly SessionRow[]): Bent {
	// The newest comes first, and is to stand last under its path.
	const newest = (rows: readonly SessionRow[]) => new Map(rows.toReversed().map((row) => [row.path ?? '', row]));
	const [open, latest] = [
		newest(sessions.filter(({ status, imported }) => status === 'open' && !imported)),
		newest(sessions),
	];
	return (path) => {
		const real = realPath(path);
		const [left, last] = [open.get(real), latest.get(real)];
		return { ...(left && { open: left.id }), ...(last && { latest: last }) };
	};
}

/**
 * The job files of a folder as they read at a glance: what a sound file says of itself. Checking them all takes longer than drawing the
 * first screen; `checkedRows` does it.
 */
export function glancedRows({ folder, samples }: Listed, sessions: readonly SessionRow[]): JobRow[] {
	const bent = bentIn(sessions);
	return jobFiles(folder).map((path) => ({
		path,
		...(atAGlance(path) ?? { name: basename(path), summary: '' }),
		...bent(path),
		...(samples && { sample: true }),
	}));
}

interface Glanced {
	name: string;
	units: 'in' | 'mm';
	tube: { od: string | number; wall: string | number; material: string | { name: string } };
	shape: { bends?: unknown[]; points?: unknown[] };
}

/** Null where the file is not what it should be: what is wrong with it is for the check to say. */
function atAGlance(path: string): Pick<JobRow, 'name' | 'summary' | 'tube'> | null {
	try {
		const { name, units, tube, shape } = JSON.parse(jobText(path)) as Glanced;
		const [od, wall] = [parseLength(tube.od, units), parseLength(tube.wall, units)];
		const material = typeof tube.material === 'string' ? tube.material : tube.material.name;
		const bends = shape.bends?.length ?? (shape.points?.length ?? 0) - 2;
		return typeof name !== 'string' || !nameWillDo(name)
			? null
			: { name, ...summed({ bends, od, wall, units, material }) };
	} catch {
		return null;
	}
}

interface Summed {
	bends: number;
	od: number;
	wall: number;
	units: string;
	material: string;
}

function summed({ bends, od, wall, units, material }: Summed): Pick<JobRow, 'summary' | 'tube'> {
	const tube = `${od} x ${wall} ${units}`;
	return { tube, summary: `${bends === 1 ? '1 bend' : `${bends} bends`}, ${tube}, ${material}` };
}

/** The job files of a folder, each read through: one that cannot be bent says why. */
export function checkedRows(
	{ folder, samples }: Listed,
	sessions: readonly SessionRow[],
	lookup: ToolingLookup,
): JobRow[] {
	const bent = bentIn(sessions);
	return jobFiles(folder).map((path) => ({
		path,
		...checked(path, lookup),
		...bent(path),
		...(samples && { sample: true }),
	}));
}

function checked(path: string, lookup: ToolingLookup): Pick<JobRow, 'name' | 'summary' | 'tube' | 'faults'> {
	try {
		const { name, units, tube, shape } = loadJob(path, lookup).job;
		const bends = shape.kind === 'bends' ? shape.bends.length : shape.points.length - 2;
		return { name, ...summed({ bends, od: tube.od, wall: tube.wall, units, material: tube.material.name }) };
	} catch (error) {
		if (!(error instanceof JobFileError)) throw error;
		return { name: basename(path), summary: '', faults: error.fact.faults };
	}
}
