import { type Kin, type Lesson, MOST_LESSONS } from '../springback/history.ts';
import type { KeptRow } from './kept-row.ts';

/** What these sessions, newest first, teach a new one: no more of each combination than weighs anything, of those that count. */
export function lessonsThatWeigh(rows: readonly KeptRow[], counts: (row: KeptRow) => boolean): Lesson[] {
	const taken = new Map<Kin | string, number>();
	const lessons: Lesson[] = [];
	for (const row of rows) {
		const { kin, besides } = row;
		if (kin === null) continue;
		// What several dies told together counts apart from what each told alone.
		const family = besides.length === 0 ? kin : JSON.stringify([kin, ...besides.map((each) => each.kin)]);
		const before = taken.get(family) ?? 0;
		if (before >= MOST_LESSONS || !counts(row)) continue;
		taken.set(family, before + 1);
		if (row.lesson) lessons.push(row.lesson);
	}
	return lessons;
}
