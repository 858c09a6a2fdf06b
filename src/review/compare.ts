import { meanOf } from '../maths/list.ts';
/** Two sessions of one job beside each other. */
import { changedPlaces } from '../session/log/changed-places.ts';
import type { AngleEstimate } from '../session/protocol/asks.ts';
import type { PullView } from '../session/report/set-ups.ts';
import type { SessionView } from '../session/report/views.ts';

/** One bend of one session. Angles in degrees, lengths in the job's unit; null where it did not come to that. */
export interface ComparedBend {
	target: number;
	/** Where the mark was for its first pull. */
	mark: number | null;
	/** The first stop, and what the dial was held at. */
	stop: number | null;
	held: number | null;
	/** Of the last pull that was measured: held less measured. */
	springback: number | null;
	pulls: number;
	setUps: number;
	made: AngleEstimate | null;
}

export interface ComparedSession {
	view: SessionView;
	bends: readonly ComparedBend[];
}

export interface Comparison {
	/** The older one first. */
	sessions: readonly [ComparedSession, ComparedSession];
	/** Places in which the two jobs differ, as in `shape.bends[0].angle`. */
	changed: readonly string[];
}

/** Two sessions in any order; null where they are of two jobs. */
export function compared(a: SessionView, b: SessionView): Comparison | null {
	if (a.job.name !== b.job.name) return null;
	const [older, newer] = a.started <= b.started ? [a, b] : [b, a];
	return { sessions: [comparedSession(older), comparedSession(newer)], changed: changedPlaces(older.job, newer.job) };
}

function comparedSession(view: SessionView): ComparedSession {
	return { view, bends: view.bends.map(comparedBend) };
}

/** What was taken back does not count as a pull. */
function comparedBend({ target, setUps, pulls, made }: SessionView['bends'][number]): ComparedBend {
	const stood = pulls.filter((pull) => !pull.void);
	const [first] = stood;
	return {
		target,
		mark: first?.mark?.fromStart ?? null,
		stop: first?.stop ?? null,
		held: first?.loaded ?? null,
		springback: sprangBack(stood),
		pulls: stood.length,
		setUps: setUps.filter((set) => !set.void).length,
		made,
	};
}

/** A pull after which the bend was opened says nothing of springback. */
function sprangBack(pulls: readonly PullView[]): number | null {
	const measured = pulls.findLast((pull) => pull.measured.length > 0 && pull.opened === undefined);
	if (measured === undefined) return null;
	const { loaded, measured: angles } = measured;
	return loaded - meanOf(angles);
}
