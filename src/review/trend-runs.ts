/** Sessions as runs between shifts of springback: what is usual is what was since the last one. */
import type { KeptRow } from '../journal/kept-row.ts';
import { TaughtSoFar } from './trend-departure.ts';
import { type Departures, type Shift, ShiftSeeker } from './trend-shift.ts';

/** As long as this many sessions, the newest after it showed, a shift is news; borne out by all of them it is what is usual. */
export const NEWS = 6;

/** A shift, and the first session of the run that it ends. */
export type EndedRun = Shift & { before: number };

export interface Runs {
	/** What each session says of a shift against its run so far; null where it taught nothing. In the order of the sessions. */
	departures: readonly (Departures | null)[];
	/** The newest shift, of those that the sessions after them bore out so far; null without any. */
	newest: EndedRun | null;
}

/** `sessions`: oldest first. */
export function runsOf(sessions: readonly Pick<KeptRow, 'lesson'>[]): Runs {
	const departures: (Departures | null)[] = sessions.map(() => null);
	const lessons = sessions.map(({ lesson }) => lesson);
	const taught = new TaughtSoFar();
	let newest: EndedRun | null = null;
	let begun = 0;
	for (;;) {
		taught.beginAnew();
		const shift = lastingShift(lessons, begun, taught, departures);
		if (shift === null) return { departures, newest };
		newest = { ...shift, before: begun };
		if (isNews(shift, lessons.length)) return { departures, newest };
		begun = shift.from;
	}
}

/** Whether a shift showed in one of the newest of so many sessions. */
export const isNews = ({ found }: Pick<Shift, 'found'>, count: number): boolean => count - found <= NEWS;

/**
 * The first shift after the run that begins at `begun` that stands as long as it is news, or up to the newest session; null where the run goes on.
 * Fills in the run's departures. `taught`: by no session yet.
 */
function lastingShift(
	lessons: readonly KeptRow['lesson'][],
	begun: number,
	taught: TaughtSoFar,
	departures: (Departures | null)[],
): Shift | null {
	const seeker = new ShiftSeeker();
	let shift: Shift | null = null;
	for (let i = begun; i < lessons.length; i++) {
		if (shift !== null && !isNews(shift, i)) return shift;
		const lesson = lessons[i];
		if (!lesson) continue;
		const told = taught.take(lesson);
		departures[i] = told;
		shift = seeker.take(told, i);
	}
	return shift;
}
