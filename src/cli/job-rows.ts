import { basename } from 'node:path';
import { JobFileError } from '../job/fault.ts';
import { jobText } from '../job/job-text.ts';
import { loadJob } from '../job/load.ts';
import type { ToolingLookup } from '../job/tooling.ts';
import { realPath } from '../journal/find.ts';
import type { JobRow, SessionRow } from '../screen/home/home-port.ts';
import { countedPieces, type Pieces } from '../session/batch/pieces.ts';
import { nameWillDo } from '../tube/names.ts';
import { parseLength } from '../units/parse.ts';
import { jobSummary } from '../words/job-summary.ts';
import { jobFilesIn, type ListedJobs } from './job-folder.ts';

/** A job file's newest session that was interrupted, its newest of all, and how many of its pieces are made, where several are wanted. */
type Bent = (path: string, name: string, quantity: number) => Pick<JobRow, 'open' | 'latest' | 'pieces'>;

const BENT = new WeakMap<readonly SessionRow[], Bent>();

/** Looked through once for a list: there may be thousands, and the jobs are told twice of one look. */
function bentAmong(sessions: readonly SessionRow[]): Bent {
	const bent = BENT.get(sessions) ?? bentIn(sessions);
	BENT.set(sessions, bent);
	return bent;
}

/** A job's sessions are those started from its file, and where there are none, those of a job of its name, as for `--resume`. */
function bentIn(sessions: readonly SessionRow[]): Bent {
	const going = sessions.filter(({ status, imported }) => status === 'open' && !imported);
	const by = (of: (row: SessionRow) => string | undefined) => ({
		of,
		open: newestBy(going, of),
		latest: newestBy(sessions, of),
	});
	const byPath = by(({ path }) => path);
	let byName: typeof byPath | null = null;
	const named = () => {
		byName ??= by(({ job }) => job);
		return byName;
	};
	return (path, name, quantity) => {
		const real = realPath(path);
		const found = byPath.latest.has(real) ? byPath : named();
		const key = found === byPath ? real : name;
		const [left, last] = [found.open.get(key), found.latest.get(key)];
		const own = () => sessions.filter((row) => found.of(row) === key);
		const pieces = quantity > 1 ? { pieces: piecesIn(own(), quantity) } : {};
		return { ...(left && { open: left.id }), ...(last && { latest: last }), ...pieces };
	};
}

/** The newest of each key; `rows` come newest first. */
function newestBy<K>(rows: readonly SessionRow[], of: (row: SessionRow) => K): ReadonlyMap<K, SessionRow> {
	const newest = new Map<K, SessionRow>();
	for (const row of rows) {
		const key = of(row);
		if (!newest.has(key)) newest.set(key, row);
	}
	return newest;
}

/** Of the hand that was bent last: the other one is another part. */
function piecesIn(own: readonly SessionRow[], wanted: number): Pieces {
	const mirror = own[0]?.bentAs?.mirror ?? false;
	const rows = own.flatMap(({ status, piece, bentAs, imported }) =>
		status === 'damaged' || (status === 'open' && imported) || (bentAs?.mirror ?? false) !== mirror
			? []
			: [{ status, ...(piece !== undefined && { piece }) }],
	);
	return countedPieces(rows, wanted);
}

/**
 * The job files of a folder as they read at a glance: what a sound file says of itself. Checking them all takes longer than drawing the
 * first screen; `checkedRows` does it.
 */
export function glancedRows({ folder, samples }: ListedJobs, sessions: readonly SessionRow[]): JobRow[] {
	const bent = bentAmong(sessions);
	return jobFilesIn(folder).map((path) => {
		const { quantity = 1, ...glanced } = atAGlance(path) ?? { name: basename(path), summary: '' };
		return { path, ...glanced, ...bent(path, glanced.name, quantity), ...(samples && { sample: true }) };
	});
}

/** What a file says of itself. */
type ToldOfFile = Pick<JobRow, 'name' | 'summary' | 'bends' | 'tube' | 'faults'> & { quantity?: number };

interface Glanced {
	name: string;
	units: 'in' | 'mm';
	tube: { od: string | number; wall: string | number; material: string | { name: string } };
	shape: { bends?: unknown[]; points?: unknown[] };
	quantity?: number;
}

/** Null where the file is not what it should be: what is wrong with it is for the check to say. */
function atAGlance(path: string): ToldOfFile | null {
	try {
		const { name, units, tube, shape, quantity = 1 } = JSON.parse(jobText(path)) as Glanced;
		const [od, wall] = [parseLength(tube.od, units), parseLength(tube.wall, units)];
		const material = typeof tube.material === 'string' ? tube.material : tube.material.name;
		const bends = shape.bends?.length ?? (shape.points?.length ?? 0) - 2;
		return typeof name !== 'string' || !nameWillDo(name)
			? null
			: { name, quantity, ...jobSummary({ bends, od, wall, units, material }) };
	} catch {
		return null;
	}
}

/** The job files of a folder, each read through: one that cannot be bent says why. */
export function checkedRows(
	{ folder, samples }: ListedJobs,
	sessions: readonly SessionRow[],
	lookup: ToolingLookup,
): JobRow[] {
	const bent = bentAmong(sessions);
	return jobFilesIn(folder).map((path) => {
		const { quantity = 1, ...told } = checked(path, lookup);
		return { path, ...told, ...bent(path, told.name, quantity), ...(samples && { sample: true }) };
	});
}

function checked(path: string, lookup: ToolingLookup): ToldOfFile {
	try {
		const { name, units, tube, shape, quantity } = loadJob(path, lookup).job;
		const bends = shape.kind === 'bends' ? shape.bends.length : shape.points.length - 2;
		return {
			name,
			quantity,
			...jobSummary({ bends, od: tube.od, wall: tube.wall, units, material: tube.material.name }),
		};
	} catch (error) {
		if (!(error instanceof JobFileError)) throw error;
		return { name: basename(path), summary: '', faults: error.fact.faults };
	}
}
