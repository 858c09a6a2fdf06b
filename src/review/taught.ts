/** What one session showed of the machine, and what its operator may do otherwise at the next tube. */

import { at } from '../maths/list.ts';
import { lessonOf } from '../session/estimate/lesson-of-session.ts';
import type { State } from '../session/log/state.ts';
import { firstStops } from '../session/plan/first-stops.ts';
import { COMPARED_AT, figuresOf } from '../session/report/figures.ts';
import { newTube } from '../springback/filter.ts';
import { springbackAt } from '../springback/learned-curve.ts';
import { atDie } from '../springback/several-dies.ts';

/** Angles in degrees; bends counted from 1. */
export interface Taught {
	/** Whether later tubes learn from it. */
	learns: boolean;
	/** Springback at 45 degrees by its own readings, and as it was believed before; null where nothing that was read tells it. */
	springback: { shown: number; believed: number } | null;
	/** What first pulls left less what was expected of them, their mean; null where none was measured. */
	miss: number | null;
	/** Bends whose first pull would stop elsewhere at the next tube, by what this one showed. */
	stops: readonly { bend: number; was: number; now: number }[];
	/** Bends that were held past the stop, and by how much at most. */
	past: readonly { bend: number; by: number }[];
	/** Bends that were taken without the angle finder, and checks that were not read. */
	unmeasured: readonly number[];
	unread: readonly string[];
}

/** Of the session at its end. */
export function taughtBy(state: State): Taught {
	const { start, design, bends, checks } = state;
	const lesson = lessonOf(state);
	const { springback, miss } = figuresOf(state, lesson);
	return {
		learns: start.learn,
		springback:
			springback === null || lesson === null
				? null
				: { shown: springback, believed: backBefore(start.prior, lesson.kin.die) },
		miss,
		stops: lesson === null ? [] : stopsMoved(state),
		past: bends.flatMap(({ pulls }, i) => {
			const by = Math.max(0, ...pulls.map(({ loaded, stop }) => loaded - stop));
			return by > start.job.tooling.dialStep ? [{ bend: i + 1, by }] : [];
		}),
		unmeasured: bends.flatMap(({ made, pulls }, i) =>
			made !== null && pulls.every(({ measured }) => measured.length === 0) ? [i + 1] : [],
		),
		unread: design.checks.flatMap(({ check: { name }, after }) =>
			bends[after - 1]?.made && (checks[name]?.reading ?? null) === null ? [name] : [],
		),
	};
}

/** Springback as it was believed before any pull, on the die that the session's own is told of. */
function backBefore(prior: State['filter'], die: string): number {
	return at(springbackAt(atDie(prior, die), [COMPARED_AT]), 0).back;
}

function stopsMoved({ start, design, filter }: State): Taught['stops'] {
	const stopsBy = (prior: State['filter']) => firstStops(start.job, design.shape, { prior, from: start.from }).stops;
	const [before, after] = [stopsBy(start.prior), stopsBy(newTube(filter))];
	return before.flatMap(({ stop: was }, i) => {
		const now = at(after, i).stop;
		return now === was ? [] : [{ bend: i + 1, was, now }];
	});
}
