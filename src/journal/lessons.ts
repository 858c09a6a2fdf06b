import { type Kin, type Lesson, MOST_LESSONS } from '../springback/history.ts';
import type { KeptRow } from './kept-row.ts';

/** What these sessions, newest first, teach a new one: no more of each combination than weighs anything, of those that count. */
export function lessonsThatWeigh(rows: readonly KeptRow[], counts: (row: KeptRow) => boolean): Lesson[] {
	const taken = new Map<Kin, Map<string, number>>();
	const names = new Map<KeptRow['besides'], string>();
	const lessons: Lesson[] = [];
	for (const row of rows) {
		const { kin, besides } = row;
		if (kin === null) continue;
		const ofKin = taken.get(kin) ?? new Map<string, number>();
		if (ofKin.size === 0) taken.set(kin, ofKin);
		// What several dies told together counts apart from what each told alone.
		const others = besides.length === 0 ? '' : nameOf(besides, names);
		const before = ofKin.get(others) ?? 0;
		if (before >= MOST_LESSONS || !counts(row)) continue;
		ofKin.set(others, before + 1);
		if (row.lesson) lessons.push(row.lesson);
	}
	return lessons;
}

/** The name of those combinations. `known`: what was named before, since most rows share the very list. */
function nameOf(besides: KeptRow['besides'], known: Map<KeptRow['besides'], string>): string {
	const name = known.get(besides) ?? JSON.stringify(besides.map((each) => each.kin));
	known.set(besides, name);
	return name;
}
