import { randomBytes } from 'node:crypto';
import { realFs } from '../files/fs-port.ts';
import { loadJob, rawJob } from '../job/load.ts';
import { readSession } from '../journal/catalogue.ts';
import { JournalError } from '../journal/errors.ts';
import { damagedAfter, sessionsOfJob } from '../journal/find.ts';
import type { KeptRow } from '../journal/kept-row.ts';
import { SessionCache } from '../journal/kept-sessions.ts';
import { LiveSession } from '../journal/live.ts';
import { newPieceOf, piecesOfJob } from '../journal/pieces.ts';
import type { Surroundings } from '../journal/surroundings.ts';
import { startIn } from '../session/log/read-back.ts';
import type { BentAs } from '../tube/job.ts';
import { asBent } from '../tube/turned-job.ts';
import { noJobNowWords, nothingToResumeWords } from '../words/usage/screen.ts';
import { EXIT } from './exit.ts';
import { type Io, tellOn } from './io.ts';
import { lessonsFor } from './lessons-for.ts';
import { runLines } from './lines.ts';
import { announcesLongRead, keptForStart } from './reading-logs.ts';
import { shiftNews } from './shift-news.ts';
import { keptTooling } from './tooling-lookup.ts';
import { UsageError } from './usage-error.ts';
import { VERSION } from './version.ts';

export interface BendRequest {
	file: string;
	/** The id of a session to go on with, true for the newest unfinished one, null for a new one. */
	resume: string | true | null;
	learn: boolean;
	/** The folder in which the session goes on when its own disk refuses. */
	rescue?: string | null;
	home: string;
	color: boolean;
	/** Only ASCII on the screen. */
	ascii?: boolean;
	/** Hand and end of a new session. */
	as: BentAs;
	/** Another of the same, also where the job wants one. */
	another?: boolean;
}

export function surroundingsAt(home: string, rescue: string | null = null): Surroundings {
	return { home, rescue, program: VERSION, now: () => new Date(), random: () => randomBytes(4).toString('hex') };
}

/** The guided session, line by line. Resolves to the exit code. */
export async function runBend(request: BendRequest, io: Io): Promise<number> {
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

/** Begins or resumes as asked; `kept`: what is remembered of sessions already. Throws where there is nothing to resume, or the job file is wrong. */
export function openSession(
	{ file, resume, learn, rescue = null, home, as, another = false }: Omit<BendRequest, 'color'>,
	tell: (problem: string) => void,
	kept?: SessionCache,
): LiveSession {
	const world = surroundingsAt(home, rescue);
	if (resume === null) {
		const read = loadJob(file, keptTooling(home, tell));
		const loaded = { ...read, job: asBent(read.job, as) };
		const rows = keptForStart(home, tell, kept);
		const ofJob = sessionsOfJob(rows, loaded.path, loaded.job.name);
		const others = ofJob.filter(mayGoOnHere).map(({ id }) => id);
		if (learn) for (const sentence of shiftNews(home, rows, loaded.job.tooling.bender)) tell(sentence);
		const one = { path: loaded.path, name: loaded.job.name, as };
		const isOfSeveral = another || loaded.job.quantity > 1;
		const piece = isOfSeveral ? newPieceOf({ home, rescue }, piecesOfJob(ofJob, one), loaded.job) : {};
		return LiveSession.begin(world, loaded, learn, others, learn ? lessonsFor(home, rows) : [], piece);
	}
	const now = jobNow(file);
	if (now.source === undefined) tell(noJobNowWords(file));
	const id = resume === true ? newestUnfinished(home, file, tell, rescue) : resume;
	const rows = keptForStart(home, tell, kept, id);
	const others = unfinished(rows, file, jobNameOf(home, id, rescue)).map((other) => other.id);
	return LiveSession.resume(world, id, now.source, others, ({ at }) => (learn ? lessonsFor(home, rows, at) : []));
}

/**
 * The job's unfinished session with the newest record. Throws UsageError where there is none, JournalError where a newer log is damaged so
 * that nobody can tell whose it is: it may be the one that is meant.
 */
export function newestUnfinished(
	home: string,
	file: string,
	tell: (sentence: string) => void,
	rescue: string | null = null,
): string {
	const { rows } = new SessionCache(home, realFs, rescue).read(announcesLongRead(tell));
	const [newest] = unfinished(rows, file, jobNow(file).name);
	const unknown = damagedAfter(rows, newest?.touched ?? '');
	if (unknown !== null) throw new JournalError(unknown, EXIT.damaged);
	if (newest !== undefined) return newest.id;
	throw new UsageError(nothingToResumeWords(file));
}

function unfinished(rows: readonly KeptRow[], file: string, name: string): KeptRow[] {
	return sessionsOfJob(rows, file, name).filter(mayGoOnHere);
}

/** What was taken over from another bench may be bent there still: it is gone on with only where it is named. */
const mayGoOnHere = ({ status, isImported }: KeptRow): boolean => status === 'open' && !isImported;

function jobNameOf(home: string, id: string, rescue: string | null): string {
	const { first } = readSession(home, id, realFs, rescue);
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
