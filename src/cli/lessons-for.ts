import type { KeptRow } from '../journal/kept-row.ts';
import { lessonsThatWeigh } from '../journal/lessons.ts';
import { openSettings, type Settings } from '../settings/settings.ts';
import type { Kin, Lesson } from '../springback/history.ts';

/** What these sessions teach a new one, or one that began at `before` (ISO time), without what is to be forgotten. */
export function lessonsFor(home: string, rows: readonly KeptRow[], before?: string): Lesson[] {
	const counts = countsIn(openSettings(home));
	return lessonsThatWeigh(rows, (row) => (before === undefined || row.at < before) && counts(row));
}

/** Whether a session's lesson counts. Where nothing is forgotten no time has to be looked at. */
export function countsIn(settings: Settings): (row: KeptRow) => boolean {
	if (settings.forgotten().length === 0) return () => true;
	const of = ({ bender, die }: Kin, at: string) => settings.counts(bender, die, at);
	return ({ kin, besides, at }) => kin === null || (of(kin, at) && besides.every((each) => of(each.kin, at)));
}
