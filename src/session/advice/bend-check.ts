import { at } from '../../maths/list.ts';
import { made } from '../../springback/filter.ts';
import type { Acceptance, StopRequest, StopSuggestion } from '../../springback/stop.ts';
import { accept, suggestStop } from '../../springback/stop.ts';
import { toolingOf } from '../../tube/dies.ts';
import type { Job } from '../../tube/job.ts';
import type { State } from '../log/state.ts';
import { bendAt } from '../log/state.ts';

/** What the stop rule is asked for the bend at work. */
export function stopRequest(state: State): StopRequest {
	const bend = bendAt(state, state.bend);
	// A dial keyed a division high must not drive the next stop up by one: the lesser of asked and keyed counts.
	const inSeat = bend.pulls
		.filter((pull) => pull.seat === bend.seats)
		.map(({ stop, loaded }) => Math.min(stop, loaded));
	return {
		...limitsOfStop(state.start.job, state.bend),
		target: target(state),
		loadedBefore: inSeat.length > 0 ? Math.max(...inSeat) : null,
		snug: bend.pulls.length > 0 ? bend.pointer : null,
		measured: isMeasured(state) || state.byDial,
		forced: state.forced,
	};
}

/** What the job says of every pull of a bend (from 1). */
export function limitsOfStop(
	job: Job,
	bend: number,
): Pick<StopRequest, 'under' | 'over' | 'risk' | 'dialStep' | 'maxAngle'> {
	const { dialStep, maxAngle } = toolingOf(job, bend);
	const { under, over } = job.tolerance;
	return { under, over, risk: job.risk, dialStep, maxAngle };
}

/** Whether the angle finder has told anything of this tube. */
export function isMeasured(state: State): boolean {
	return state.bends.some((bend) => bend.pulls.some((row) => row.measured.length > 0));
}

/** The angle to be made now at the bend at work, after correction; a made bend gone back to keeps its own. */
export function target(state: State): number {
	const bend = bendAt(state, state.bend);
	return bend.made === null ? at(state.plan.current, state.bend - 1).angle : bend.target;
}

export function acceptance(state: State): Acceptance {
	return accept(state.filter, stopRequest(state));
}

export function suggestion(state: State): StopSuggestion {
	return suggestStop(state.filter, stopRequest(state));
}

/** The last pull went as far as the machine reaches. */
export function atLimit(state: State): boolean {
	const last = bendAt(state, state.bend).pulls.at(-1);
	const { maxAngle, dialStep } = toolingOf(state.start.job, state.bend);
	return last !== undefined && Math.max(last.stop, last.loaded) > maxAngle - dialStep;
}

/** A seat at the machine's limit that added less than a dial step: no further pull can help. */
export function limitSpent(state: State): boolean {
	const gained = made(state.filter).angle - bendAt(state, state.bend).seatedFrom;
	return atLimit(state) && gained < state.start.job.tooling.dialStep;
}

/** Short of the band, and worth another pull. */
export function isShort(state: State): boolean {
	return acceptance(state).short;
}

export function isOver(state: State): boolean {
	return acceptance(state).over > 0.5;
}
