import { at } from '../../maths/list.ts';
import type { State } from '../log/state.ts';
import { type SessionStatus, status } from '../report/views.ts';
import { heatOf } from './given.ts';

/** One piece as a batch counts it. */
export interface PieceFacts {
	id: string;
	/** Its number; null where it was begun without one. */
	piece: number | null;
	status: SessionStatus;
	heat: string | null;
	pulls: number;
	/** Time at the bender: from the first record to the last, without the time that it lay between leaving and resuming. */
	seconds: number;
	/** Each bend: drawn, and how far over the drawing it was made (degrees; below 0: short), give or take; null as long as it is not made. */
	bends: { drawn: number; error: number | null; sd: number | null }[];
}

/** `msOf`: an ISO time in milliseconds. */
export function pieceFacts(state: State, msOf: (iso: string) => number): PieceFacts {
	const { start, bends, design } = state;
	return {
		id: start.id,
		piece: start.piece ?? null,
		status: status(state),
		heat: heatOf(state),
		pulls: bends.reduce((sum, { pulls }) => sum + pulls.length, 0),
		seconds: secondsAtWork(state, msOf),
		bends: bends.map(({ made }, i) => {
			const drawn = at(design.shape.bends, i).angle;
			return { drawn, error: made === null ? null : made.angle - drawn, sd: made?.sd ?? null };
		}),
	};
}

/** A session that was killed has no record of it: what lies before a resume is no time at work. A clock that was put back counts as none. */
function secondsAtWork({ start, entries }: State, msOf: (iso: string) => number): number {
	let before = msOf(start.at);
	let seconds = 0;
	for (const { at: time, events } of entries) {
		const now = msOf(time);
		if (!events.some(({ type }) => type === 'session-resumed')) seconds += Math.max(0, (now - before) / 1000);
		before = now;
	}
	return seconds;
}
