/** What a session leaves for those that come after it. */

import { newTube } from '../../springback/filter.ts';
import type { Kin } from '../../springback/kin.ts';
import { type Lesson, lessonFrom, teaches } from '../../springback/lesson.ts';
import { dieOf, diesOf } from '../../tube/dies.ts';
import type { Job } from '../../tube/job.ts';
import type { BendState, State } from '../log/state.ts';
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
	const [first, ...besides] = pulledOn(start.job, bends);
	const { kin, pulls } = first!;
	const about = { at: start.at, session: start.id, pulls, readings, ...(besides.length === 0 ? {} : { besides }) };
	const lesson = lessonFrom(kin, newTube(start.prior), filter, about);
	return teaches(lesson) ? lesson : null;
}

/** The combinations that were pulled on, by the names of the dies, so that which of them is the job's own makes no other lesson; before any pull the job's own. */
function pulledOn(job: Job, bends: readonly BendState[]): { kin: Kin; pulls: number }[] {
	const all = diesOf(job).map((die) => {
		const on = bends.filter((_, i) => dieOf(job, i + 1) === die);
		return { kin: kinOf(job, die), pulls: on.reduce((sum, bend) => sum + bend.pulls.length, 0) };
	});
	const pulled = all.filter(({ pulls }) => pulls > 0).sort((a, b) => (a.kin.die < b.kin.die ? -1 : 1));
	return pulled.length === 0 ? all.slice(0, 1) : pulled;
}
