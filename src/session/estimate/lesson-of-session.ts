/** What a session leaves for those that come after it. */

import { newTube } from '../../springback/filter.ts';
import { type Lesson, lessonFrom, teaches } from '../../springback/lesson.ts';
import type { State } from '../log/state.ts';
import { kinOf } from './kin-of-job.ts';

/**
 * What a session has taught so far, finished, scrapped or left; null where it is not to teach or nothing that teaches was read.
 * An undone reading teaches nothing: it is not in the fold.
 */
export function lessonOf(state: State): Lesson | null {
	const { start } = state;
	if (!start.learn) return null;
	const { filter, bends } = state.finished ?? state;
	const rows = bends.flatMap((bend) => bend.pulls);
	const readings = rows.reduce((sum, row) => sum + row.measured.length + (row.released === null ? 0 : 1), 0);
	const about = { at: start.at, session: start.id, pulls: rows.length, readings };
	const lesson = lessonFrom(kinOf(start.job), newTube(start.prior), filter, about);
	return teaches(lesson) ? lesson : null;
}
