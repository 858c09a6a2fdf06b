import { randomBytes } from 'node:crypto';
import { loadBendable, rawJob } from '../job/load.ts';
import { readSession } from '../journal/catalogue.ts';
import { sessionsOfJob } from '../journal/find.ts';
import type { KeptRow } from '../journal/kept-row.ts';
import { SessionCache } from '../journal/kept-sessions.ts';
import { LiveSession } from '../journal/live.ts';
import type { Surroundings } from '../journal/surroundings.ts';
import { startIn } from '../session/log/read-back.ts';
import type { BentAs } from '../tube/job.ts';
import { asBent } from '../tube/turned-job.ts';
import { type Io, tellOn } from './io.ts';
import { announced, keptForStart, lessonsFor } from './kept.ts';
import { keptTooling } from './kept-tooling.ts';
import { runLines } from './lines.ts';
import { UsageError } from './usage-error.ts';
import { VERSION } from './version.ts';

export interface BendRequest {
	file: string;
	lines: boolean;
	/** The id of a session to go on with, true for the newest unfinished one, null for a new one. */
	resume: string | true | null;
	learn: boolean;
	home: string;
	color: boolean;
	/** Only ASCII on the screen. */
	ascii?: boolean;
	/** Hand and end of a new session. */
	as: BentAs;
}

export function worldAt(home: string): Surroundings {
	return { home, program: VERSION, now: () => new Date(), random: () => randomBytes(4).toString('hex') };
}

/** The guided session, on the screen or line by line. Resolves to the exit code. */
export async function runBend(request: BendRequest, io: Io): Promise<number> {
	if (!request.lines) {
		const { runBendScreen } = await import('./home.ts');
		return runBendScreen(request, io);
	}
	const session = openSession(request, tellOn(io));
	const ends = (['SIGHUP', 'SIGINT', 'SIGTERM'] as const).map((signal) => [signal, endBy(signal, session)] as const);
	for (const [signal, end] of ends) process.once(signal, end);
	try {
		return await runLines(session, io);
	} finally {
		session.close();
		for (const [signal, end] of ends) process.removeListener(signal, end);
	}
}

const SIGNAL_NUMBERS = { SIGHUP: 1, SIGINT: 2, SIGTERM: 15 } as const;

/** Every answer acknowledged is on disk already: only the lock is left to give back. */
function endBy(signal: keyof typeof SIGNAL_NUMBERS, session: LiveSession): () => void {
	return () => {
		session.close();
		process.exit(128 + SIGNAL_NUMBERS[signal]);
	};
}

/** Begins or resumes as asked. Throws where there is nothing to resume, or the job file is wrong. */
export function openSession(
	{ file, resume, learn, home, as }: Omit<BendRequest, 'lines' | 'color'>,
	tell: (problem: string) => void,
): LiveSession {
	const world = worldAt(home);
	if (resume === null) {
		const read = loadBendable(file, keptTooling(home, tell));
		const loaded = { ...read, job: asBent(read.job, as) };
		const rows = keptForStart(home, tell);
		const others = unfinished(rows, loaded.path, loaded.job.name);
		return LiveSession.begin(world, loaded, learn, others, learn ? lessonsFor(home, rows) : []);
	}
	const now = jobNow(file);
	if (now.source === undefined) tell(`${file} cannot be read as a job any more: the job kept in the log governs.`);
	const id = resume === true ? newestUnfinished(home, file, tell) : resume;
	const rows = keptForStart(home, tell);
	const others = unfinished(rows, file, jobNameOf(home, id)).filter((other) => other !== id);
	return LiveSession.resume(world, id, now.source, others, ({ at }) => (learn ? lessonsFor(home, rows, at) : []));
}

/** The job's unfinished session with the newest record. Throws UsageError where there is none. */
export function newestUnfinished(home: string, file: string, tell: (sentence: string) => void): string {
	const { rows } = new SessionCache(home).read(announced(tell));
	const [newest] = unfinished(rows, file, jobNow(file).name);
	if (newest !== undefined) return newest;
	throw new UsageError(
		`No unfinished session of ${file} is kept: start one without --resume. pullbook log lists all sessions.`,
	);
}

function unfinished(rows: readonly KeptRow[], file: string, name: string): string[] {
	return sessionsOfJob(rows, file, name)
		.filter((session) => session.status === 'open')
		.map((session) => session.id);
}

function jobNameOf(home: string, id: string): string {
	const { first } = readSession(home, id);
	return first ? startIn(first).job.name : '';
}

/** The job file as it is now, only to say what differs from the job kept: it may have become wrong, or be gone. */
function jobNow(file: string): { source: unknown; name: string } {
	try {
		const source = rawJob(file);
		const name = typeof source === 'object' && source !== null && 'name' in source ? String(source.name) : '';
		return { source, name };
	} catch {
		return { source: undefined, name: '' };
	}
}
