import type { Job } from '../../tube/job.ts';
import { changedPlaces } from '../log/changed-places.ts';
import type { Start } from '../log/start.ts';
import type { SessionStatus } from '../report/views.ts';

/** One session among those of a job: how it stands, and which piece it was begun as, where its first record says. */
export interface PieceRow {
	status: SessionStatus;
	piece?: number;
}

/** How the pieces of a job stand. A scrapped one counts for nothing: its number is free again. */
export interface Pieces {
	/** How many the job wants. */
	wanted: number;
	made: number;
	/** Begun and not finished: each keeps its number until it is scrapped. */
	begun: number;
	scrapped: number;
	/** The number of the next piece that is begun: the first that no finished or begun piece has. */
	next: number;
}

/** Counts the sessions of one job and hand, in any order. Those begun without a number take the first numbers that are free. */
export function countedPieces(sessions: readonly PieceRow[], wanted: number): Pieces {
	const many = (status: SessionStatus) => sessions.filter((each) => each.status === status).length;
	return { wanted, made: many('done'), begun: many('open'), scrapped: many('scrapped'), next: nextNumber(sessions) };
}

function nextNumber(sessions: readonly PieceRow[]): number {
	const standing = sessions.filter(({ status }) => status !== 'scrapped');
	const taken = new Set(standing.flatMap(({ piece }) => piece ?? []));
	let unnumbered = standing.filter(({ piece }) => piece === undefined).length;
	for (let number = 1; ; number++) {
		if (taken.has(number)) continue;
		if (unnumbered === 0) return number;
		unnumbered--;
	}
}

/** What moves no mark: a job that differs in these alone is laid out as before. */
const MOVES_NOTHING = [
	'name',
	'notes',
	'quantity',
	'checks',
	'tolerance',
	'risk',
	'mayOpen',
	'tube.stock',
	'tube.heat',
	'tooling.maxAngle',
	'tooling.dialStep',
	'tooling.tape',
	'tooling.floor',
] as const;

/** Whether a job is cut and marked as a session was that began before. */
export function isLaidOutAlike(before: Pick<Start, 'job'>, job: Job): boolean {
	return changedPlaces(before.job, job).every((place) =>
		MOVES_NOTHING.some((name) => place === name || place.startsWith(`${name}.`) || place.startsWith(`${name}[`)),
	);
}
