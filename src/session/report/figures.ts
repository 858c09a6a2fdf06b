/** What one session comes to in a chart of many. */
import { at, meanOf } from '../../maths/list.ts';
import { filterPrior } from '../../springback/filter.ts';
import { type Lesson, learned } from '../../springback/history.ts';
import { springbackAt } from '../../springback/learned-curve.ts';
import type { State } from '../log/state.ts';

/** Degrees; null where nothing that was read tells it. */
export interface SessionFigures {
	/** Springback at 45 degrees, take-up included, by this session's own readings: what others taught is not in it. */
	springback: number | null;
	/** Made less wanted, the mean of the bends that were taken. */
	error: number | null;
	/** What the first pull of a bend left by the angle finder, less what was expected of it: the mean of the bends measured then. */
	miss: number | null;
	/** Bends that were taken, and pulls that they took. */
	taken: number;
	pulls: number;
}

/** The angle that springback is compared at. */
export const COMPARED_AT = 45;

/** `lesson`: what the session taught; null where it did not, which leaves its springback untold. */
export function figuresOf(state: State, lesson: Lesson | null): SessionFigures {
	const { bends } = state.finished ?? state;
	const taken = bends.filter(({ made }) => made !== null);
	return {
		springback: ownSpringback(state, lesson),
		error: meanOrNull(taken.map(({ made, target }) => made!.angle - target)),
		miss: meanOrNull(bends.flatMap((_, i) => firstMiss(state, i + 1) ?? [])),
		taken: taken.length,
		pulls: taken.reduce((sum, { pulls }) => sum + pulls.length, 0),
	};
}

function ownSpringback({ start, bends }: State, lesson: Lesson | null): number | null {
	const isMeasured = bends.some(({ pulls }) => pulls.some(({ measured }) => measured.length > 0));
	if (lesson === null || !isMeasured) return null;
	const cold = filterPrior(lesson.kin.k, start.job.tooling.dialStep);
	return at(springbackAt(learned(lesson.kin, cold, [lesson]).prior, [COMPARED_AT]), 0).back;
}

/** Null where the finder was not laid on between the first pull and the next, or the log does not have what was expected. */
function firstMiss({ bends, entries }: State, bend: number): number | null {
	const first = at(bends, bend - 1).pulls[0];
	const [reading] = first?.measured ?? [];
	if (first === undefined || reading === undefined || first.opened?.includes(0)) return null;
	const asked = entries.findLast((entry) => {
		return entry.entry <= first.entry && entry.asked?.ask === 'pull' && entry.asked.bend === bend;
	})?.asked;
	return asked?.ask === 'pull' && asked.expected !== null ? reading - asked.expected : null;
}

function meanOrNull(values: readonly number[]): number | null {
	return values.length === 0 ? null : meanOf(values);
}
