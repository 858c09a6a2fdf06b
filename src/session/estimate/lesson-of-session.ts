/** What a session leaves for those that come after it. */

import { newTube } from '../../springback/filter.ts';
import type { Kin } from '../../springback/kin.ts';
import { type Lesson, lessonFrom, teaches } from '../../springback/lesson.ts';
import { mechanicsPrior } from '../../springback/mechanics.ts';
import type { Job } from '../../tube/job.ts';
import { convertLength } from '../../units/units.ts';
import type { State } from '../log/state.ts';

/** The bender, die, tube size and material that a job's springback is learned under. */
export function kinOf({ units, tube, tooling }: Job): Kin {
	const mm = (length: number) => convertLength(length, units, 'mm');
	return {
		bender: tooling.bender,
		die: tooling.die,
		od: mm(tube.od),
		wall: mm(tube.wall),
		clr: mm(tooling.clr),
		material: tube.material.name,
		k: mechanicsPrior(tube, tooling.clr, tube.material).k,
	};
}

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
