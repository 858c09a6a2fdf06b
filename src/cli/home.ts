import { dirname } from 'node:path';
import { realFs } from '../files/fs-port.ts';
import { loadJob } from '../job/load.ts';
import { readSession } from '../journal/catalogue.ts';
import { realPath } from '../journal/find.ts';
import { SessionCache } from '../journal/kept-sessions.ts';
import type { HomePort, SessionRow } from '../screen/home/home-port.ts';
import { startIn } from '../session/log/read-back.ts';
import { openSettings } from '../settings/settings.ts';
import { bentAsOf } from '../tube/bent-as.ts';
import type { BentAs } from '../tube/job.ts';
import { reviewText } from '../words/session-story.ts';
import { batchAt } from './batch.ts';
import { type BendRequest, newestUnfinished, openSession } from './bend.ts';
import { displayAt } from './display.ts';
import { type Io, tellOn } from './io.ts';
import { type JobFolder, listedJobs } from './job-folder.ts';
import { checkedRows, glancedRows } from './job-rows.ts';
import { keptForStart } from './reading-logs.ts';
import { openedSession } from './review-on-screen.ts';
import { livePort } from './session-on-screen.ts';
import { sessionRows } from './session-rows.ts';
import { shiftNews } from './shift-news.ts';
import { keptTooling } from './tooling-lookup.ts';
import { wallClock } from './wall-clock.ts';
import { workshopAt } from './workshop.ts';

interface HomeRequest {
	home: string;
	jobs: JobFolder;
	color: boolean;
	ascii: boolean;
}

/** The home screen over a folder of jobs. Resolves to the exit code. */
export async function runHome({ home, jobs, color, ascii }: HomeRequest) {
	const { openScreen } = await import('../screen/shell/open-screen.tsx');
	return openScreen({
		port: homePort({ home, rescue: null }, jobs, true, () => AS_DRAWN),
		display: displayAt(home),
		noColor: !color,
		ascii,
	});
}

/** The guided session of one job on the screen; offers to resume where that job was interrupted. Resolves to the exit code. */
export async function runBendScreen(request: BendRequest, io: Io): Promise<number> {
	const { file, resume, learn, rescue = null, home, color, ascii = false, as } = request;
	// What is wrong with the job file or with the wish to resume is said on the terminal as it is, before any screen is drawn.
	const opened = resume === null ? loadJob(file, keptTooling(home, tellOn(io))) : null;
	const jobPath = opened?.path ?? realPath(file);
	const session = resume === true ? newestUnfinished(home, file, tellOn(io), rescue) : resume;
	const { openScreen } = await import('../screen/shell/open-screen.tsx');
	// The other jobs that the home screen lists were not meant.
	const port = homePort({ home, rescue }, { own: dirname(file), samples: null }, learn, (path) =>
		realPath(path) === jobPath ? as : AS_DRAWN,
	);
	const look = { display: displayAt(home), noColor: !color, ascii };
	const of = { jobPath, ...(opened !== null && { jobName: opened.job.name }) };
	return openScreen({ port, ...look, ...of, ...(session === null ? {} : { resume: session }) });
}

const AS_DRAWN: BentAs = { mirror: false, from: 'start' };

/** Where sessions are kept, and where they go on when that disk refuses. */
interface Places {
	home: string;
	rescue: string | null;
}

/** What the screen needs, over the sessions and jobs of these places. */
export function homePort(places: Places, jobs: JobFolder, learn: boolean, asOf: (path: string) => BentAs): HomePort {
	const { home } = places;
	const sessions = new SessionCache(home);
	const kept = keptRows(home, sessions);
	const batch = batchAt(home, () => keptForStart(home, () => {}, sessions));
	const openedAs = (request: Parameters<typeof openSession>[0]) => {
		// The screen is up: what there is to tell goes there, not under it.
		const problems: string[] = [];
		const session = openSession(request, (problem) => problems.push(problem), sessions);
		return livePort(session, problems, batch);
	};
	return {
		jobs: () => glancedRows(listedJobs(jobs), kept.rows()),
		// The list beside them is of the last look: both are to tell the same.
		checkedJobs: () => checkedRows(listedJobs(jobs), kept.known(), openSettings(home).tooling),
		sessions: () => kept.rows(),
		notice: kept.notice,
		async openSession(jobPathOrId, resume, as) {
			const request = resume
				? { file: jobFileOf(home, jobPathOrId), resume: jobPathOrId, learn, ...places, as: AS_DRAWN }
				: { file: jobPathOrId, resume: null, learn, ...places, as: as ?? asOf(jobPathOrId) };
			return openedAs(request);
		},
		async another(id) {
			const { jobFile, job } = startIn(readSession(home, id, realFs, places.rescue).first!);
			return openedAs({ file: jobFile, resume: null, learn, ...places, as: bentAsOf(job), another: true });
		},
		story: (id) => openedSession(home, id, () => sessions.read().rows),
		review: (id) => reviewText(readSession(home, id), wallClock).split('\n'),
		benders: async () => (await import('./bender.ts')).benderLines(home, sessions),
		printSheet: async (path, sample) => (await import('./paper.ts')).saveSheet(path, sample ? '.' : null, home),
		printRecord: async (id) => (await import('./paper-record.ts')).saveRecord(id, home),
		workshop: workshopAt(home, jobs),
	};
}

/** The job file that a session was started from. */
function jobFileOf(home: string, id: string): string {
	const { first } = readSession(home, id);
	return first ? startIn(first).jobFile : '';
}

/**
 * The kept sessions as the home screen lists them. Its jobs and its list come in one turn, so that they are looked at once for both; `known` are
 * those of the last look.
 */
function keptRows(home: string, kept: SessionCache) {
	let last: { rows: readonly SessionRow[]; notice: string | null } | null = null;
	let isNow = false;
	const look = () => {
		if (isNow && last !== null) return last;
		const sentences: string[] = [];
		const rows = keptForStart(home, (sentence) => sentences.push(sentence), kept);
		const notice = [...sentences, ...shiftNews(home, rows)][0] ?? null;
		last = { rows: sessionRows(rows), notice };
		isNow = true;
		queueMicrotask(() => {
			isNow = false;
		});
		return last;
	};
	return { rows: () => look().rows, known: () => (last ?? look()).rows, notice: () => look().notice };
}
