import { readdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { JobFileError } from '../job/fault.ts';
import { loadJob } from '../job/load.ts';
import type { ToolingLookup } from '../job/tooling.ts';
import { type KeptSession, listSessions, readSession } from '../journal/catalogue.ts';
import { realPath } from '../journal/find.ts';
import { listed } from '../review/list.ts';
import { reviewText } from '../review/text.ts';
import type { HomePort, JobRow, SessionRow } from '../screen/home-port.ts';
import { startIn } from '../session/read-back.ts';
import { openSettings } from '../settings/settings.ts';
import { type BendRequest, newestUnfinished, openSession } from './bend.ts';
import { benderLines } from './bender.ts';
import { type Io, tellOn } from './io.ts';
import { keptTooling } from './kept-tooling.ts';
import { livePort } from './live-port.ts';

/** The home screen over a folder of jobs. Resolves to the exit code. */
export async function runHome({ home, folder, color }: { home: string; folder: string; color: boolean }) {
	const { openScreen } = await import('../screen/open-screen.tsx');
	return openScreen({ port: homePort(home, folder, true), noColour: !color });
}

/** The guided session of one job on the screen; offers to resume where that job was interrupted. Resolves to the exit code. */
export async function runBendScreen({ file, resume, learn, home, color }: BendRequest, io: Io): Promise<number> {
	// What is wrong with the job file or with the wish to resume is said on the terminal as it is, before any screen is drawn.
	const jobPath = resume === null ? loadJob(file, keptTooling(home, tellOn(io))).path : realPath(file);
	const session = resume === true ? newestUnfinished(home, file) : resume;
	const { openScreen } = await import('../screen/open-screen.tsx');
	const port = homePort(home, dirname(file), learn);
	return openScreen({ port, noColour: !color, jobPath, ...(session === null ? {} : { resume: session }) });
}

function homePort(home: string, folder: string, learn: boolean): HomePort {
	return {
		jobs: () => jobRows(home, folder),
		sessions: () => listSessions(home).map(sessionRow),
		async openSession(jobPathOrId, resume) {
			const request = resume
				? { file: pathOf(home, jobPathOrId), resume: jobPathOrId, learn, home }
				: { file: jobPathOrId, resume: null, learn, home };
			// The screen is up: what there is to tell goes there, not under it.
			const problems: string[] = [];
			const session = openSession(request, (problem) => problems.push(problem));
			session.messages.push(...problems);
			return livePort(session);
		},
		review: (id) => reviewText(readSession(home, id)).split('\n'),
		benders: () => benderLines(home),
	};
}

/** The job file that a session was started from. */
function pathOf(home: string, id: string): string {
	const { first } = readSession(home, id);
	return first ? startIn(first).jobFile : '';
}

function jobRows(home: string, folder: string): JobRow[] {
	const open = new Map(
		listSessions(home)
			.map(sessionRow)
			.filter((row) => row.status === 'open')
			.reverse()
			.map((row) => [row.path ?? '', row.id]),
	);
	const lookup = openSettings(home).tooling;
	return readdirSync(folder)
		.filter((name) => name.endsWith('.json'))
		.sort()
		.map((name) => jobRow(join(folder, name), open, lookup));
}

function jobRow(path: string, open: ReadonlyMap<string, string>, lookup: ToolingLookup): JobRow {
	try {
		const { job, path: real } = loadJob(path, lookup);
		const { od, wall, material } = job.tube;
		const count = job.shape.kind === 'bends' ? job.shape.bends.length : job.shape.points.length - 2;
		const bends = count === 1 ? '1 bend' : `${count} bends`;
		const id = open.get(real);
		const summary = `${bends}, ${od} x ${wall} ${job.units}, ${material.name}`;
		return { path, name: job.name, summary, ...(id === undefined ? {} : { open: id }) };
	} catch (error) {
		if (!(error instanceof JobFileError)) throw error;
		return { path, name: path, summary: '', fault: error.message };
	}
}

function sessionRow(kept: KeptSession): SessionRow {
	const start = kept.first?.start as { jobFile?: string; at?: string; job?: { name?: string } } | undefined;
	const path = start?.jobFile === undefined ? {} : { path: realPath(start.jobFile) };
	const started = (start?.at ?? '').slice(0, 16).replace('T', ' ');
	const row = listed(kept);
	if ('problem' in row) return { ...damagedRow(kept, start?.job?.name), ...path, started };
	const { job, status, bendsDone, bends, fits } = row.summary;
	return { id: kept.id, job, ...path, status, started, bendsDone, bends, fits };
}

function damagedRow(kept: KeptSession, job: string | undefined): Omit<SessionRow, 'started'> {
	return { id: kept.id, job: job ?? kept.id, status: 'damaged', bendsDone: 0, bends: 0, fits: null };
}
