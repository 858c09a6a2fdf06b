import { statSync } from 'node:fs';
import { loadJob } from '../job/load.ts';
import { sessionsOfJob } from '../journal/find.ts';
import type { KeptRow } from '../journal/kept-row.ts';
import { countedPieces } from '../session/batch/pieces.ts';
import { beginning, growthOf } from '../session/log/start.ts';
import { openSettings } from '../settings/settings.ts';
import type { Lesson } from '../springback/history.ts';
import type { CutPiece } from '../tube/cut-list.ts';
import type { Job } from '../tube/job.ts';
import { cutLength } from '../tube/marks.ts';
import { finishedShape } from '../tube/resolve.ts';
import { convertLength } from '../units/units.ts';
import { CUT_USAGE } from '../words/usage/cut.ts';
import { jobFilesIn } from './job-folder.ts';
import { growthBefore } from './reading-logs.ts';
import { UsageError } from './usage-error.ts';

/** A job's pieces; the cut length in the job's own unit. */
export interface JobPieces extends CutPiece {
	job: Job;
	/** The file's real path. */
	file: string;
}

/** Jobs of the same tube, so of the same sticks. The unit is the first job's, and all lengths of the pieces are in it. */
export interface TubeJobs {
	tube: Job['tube'];
	units: Job['units'];
	pieces: JobPieces[];
}

/** The files meant: those given, and of a folder all its job files. Each once. @throws UsageError for an empty folder */
export function jobFiles(given: readonly string[]): string[] {
	return given.flatMap((path) => {
		if (!statSync(path, { throwIfNoEntry: false })?.isDirectory()) return [path];
		const files = jobFilesIn(path);
		if (files.length === 0) throw new UsageError(CUT_USAGE.noJobs(path));
		return files;
	});
}

/**
 * The pieces of each job, with what became of those that were cut, by its kept sessions.
 * @throws JobFileError with every fault of a file
 */
export function jobPieces(
	files: readonly string[],
	{ home, rows, lessons }: { home: string; rows: readonly KeptRow[]; lessons: readonly Lesson[] },
): JobPieces[] {
	const settings = openSettings(home);
	const loaded = files.map((file) => loadJob(file, settings.tooling));
	const once = loaded.filter(({ path }, i) => loaded.findIndex((other) => other.path === path) === i);
	return once.map(({ job, fromBender, path }) => {
		const before = growthBefore(home, rows, { path, job });
		const growth = growthOf(beginning({ job, fromBender }, lessons, before));
		const sessions = sessionsOfJob(rows, path, job.name);
		const { made, begun, scrapped } = countedPieces(sessions, job.quantity);
		return {
			job,
			file: path,
			length: cutLength(job, finishedShape(job, growth)),
			wanted: job.quantity,
			finished: made,
			begun,
			scrapped,
		};
	});
}

/** Jobs by their tube: other diameters, walls or materials are cut from other sticks. */
export function byTube(pieces: readonly JobPieces[]): TubeJobs[] {
	const groups = new Map<string, TubeJobs>();
	for (const piece of pieces) {
		const { tube, units } = piece.job;
		const mm = (length: number) => convertLength(length, units, 'mm').toFixed(3);
		const key = JSON.stringify([tube.material.name, mm(tube.od), mm(tube.wall)]);
		const group = groups.get(key) ?? { tube, units, pieces: [] };
		group.pieces.push({ ...piece, length: convertLength(piece.length, units, group.units) });
		groups.set(key, group);
	}
	return [...groups.values()];
}
