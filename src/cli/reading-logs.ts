import type { KeptRow } from '../journal/kept-row.ts';
import { type MayGoOn, SessionCache } from '../journal/kept-sessions.ts';
import { newPieceOf, piecesOfJob } from '../journal/pieces.ts';
import { bentAsOf } from '../tube/bent-as.ts';
import type { PlannedGrowth } from '../tube/growth.ts';
import type { Job } from '../tube/job.ts';
import { journalWords } from '../words/journal.ts';
import { READING_LOGS } from '../words/usage/log.ts';
import { type Io, tellOn } from './io.ts';

/** Fewer are read while one still looks at the screen. */
const MANY = 100;
/** As long as a person waits for the first question without wondering. */
const START_MS = 2000;

/** All is read, however long it takes; where it may take long that is said once. */
export function announcesLongRead(tell: (sentence: string) => void): MayGoOn {
	let isSaid = false;
	return (remaining) => {
		if (remaining > MANY && !isSaid) {
			tell(READING_LOGS.begins(remaining));
			isSaid = true;
		}
		return true;
	};
}

/** Takes away what stands behind the cursor on its line. */
const ERASED = '\x1b[K';
/** How often the line that says how far it is changes. */
const LINE_MS = 200;

/** As announced; on a terminal with a line that says how far it is, and goes when all is read. */
export function shownReading(io: Pick<Io, 'stderr'>): MayGoOn {
	const tell = announcesLongRead(tellOn(io));
	const progress = progressOn(io);
	return (remaining) => {
		tell(remaining);
		progress(remaining);
		return true;
	};
}

/** On a terminal a line that says how far it is, of the many logs that are read; it goes when all are. */
export function progressOn({ stderr }: Pick<Io, 'stderr'>): (remaining: number) => void {
	if (!stderr.isTTY) return () => {};
	let all = 0;
	let shown = 0;
	return (remaining) => {
		all = Math.max(all, remaining);
		const now = performance.now();
		if (all <= MANY || (now - shown < LINE_MS && remaining > 1)) return;
		shown = now;
		// The last one has nothing after it that would take the line away.
		stderr.write(remaining > 1 ? `\r${READING_LOGS.progress(all - remaining, all)}` : `\r${ERASED}`);
	};
}

/** What can be read in the time that a start may take, the newest first. */
function withinTime(): MayGoOn {
	let end = Number.POSITIVE_INFINITY;
	return () => {
		const now = performance.now();
		if (end === Number.POSITIVE_INFINITY) end = now + START_MS;
		return now < end;
	};
}

/** The kept sessions for a start that cannot wait, but the one `apart`; says when some are left out. */
export function keptForStart(
	home: string,
	tell: (sentence: string) => void,
	kept = new SessionCache(home),
	apart: string | null = null,
): readonly KeptRow[] {
	const { rows, left } = kept.read(withinTime(), apart);
	if (left > 0) tell(READING_LOGS.leftOut(left));
	return rows;
}

/** Says which of these logs could not be read whole, and why. */
export function tellProblems(rows: readonly KeptRow[], tell: (sentence: string) => void): void {
	for (const { id, problem } of rows) if (problem !== null) tell(`${id}: ${journalWords(problem)}`);
}

/** The growth that the pieces of this job are laid out with, where several are wanted and one was begun; undefined: by what is expected now. */
export function growthBefore(
	home: string,
	rows: readonly KeptRow[],
	{ path, job }: { path: string; job: Job },
): PlannedGrowth | undefined {
	if (job.quantity === 1) return undefined;
	const sessions = piecesOfJob(rows, { path, name: job.name, as: bentAsOf(job) });
	return newPieceOf({ home }, sessions, job).growth;
}
