/** Sessions as runs between shifts of springback: what is usual is what was since the last one. */
import type { KeptRow } from '../journal/kept-row.ts';
import { TaughtSoFar } from './trend-departure.ts';
import { type Departures, type Shift, ShiftSeeker } from './trend-shift.ts';

/** A shift, and the first session of the run that it ended. */
export type EndedRun = Shift & { before: number };

export interface Runs {
	/** What each session says of a shift against its run so far; null where it taught nothing. In the order of the sessions. */
	departures: readonly (Departures | null)[];
	/** The newest shift; null without any. */
	newest: EndedRun | null;
}

/** `sessions`: oldest first. */
export function runsOf(sessions: readonly Pick<KeptRow, 'lesson'>[]): Runs {
	const departures: (Departures | null)[] = sessions.map(() => null);
	const lessons = sessions.map(({ lesson }) => lesson);
	let newest: EndedRun | null = null;
	let begun = 0;
	for (;;) {
		const shift = firstShift(lessons, begun, departures);
		if (shift === null) return { departures, newest };
		newest = { ...shift, before: begun };
		begun = shift.from;
	}
}

/** The first shift after the run that begins at `begun`, whose departures it fills in; null where the run goes on to the newest session. */
function firstShift(
	lessons: readonly KeptRow['lesson'][],
	begun: number,
	departures: (Departures | null)[],
): Shift | null {
	const taught = new TaughtSoFar();
	const seeker = new ShiftSeeker();
	for (let i = begun; i < lessons.length; i++) {
		const lesson = lessons[i];
		if (!lesson) continue;
		const told = taught.take(lesson);
		departures[i] = told;
		const shift = seeker.take(told, i);
		if (shift !== null) return shift;
	}
	return null;
}
