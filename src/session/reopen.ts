import { at, tubeAtWork } from './as-built.ts';
import { show } from './show.ts';
import type { State } from './state.ts';

/** Why a made bend cannot be gone back to, or null. */
export function reopenHindrance(state: State, number: number): string | null {
	const bend = state.bends[number - 1];
	if (!bend) return `Bend ${number} does not exist: this tube has ${state.bends.length}.`;
	if (bend.made === null) return `Bend ${number} is not made yet: only an accepted bend can be gone back to.`;
	if (state.suspended) return `Bend ${state.bend} is being gone back to: accept it first.`;
	if (state.phase.at === 'confirm') return 'A reading waits to be confirmed: answer that first.';
	return clampHindrance(state, number) ?? followHindrance(state, number);
}

function clampHindrance(state: State, number: number): string | null {
	const { tooling } = state.start.job;
	const { shape, trimStart } = tubeAtWork(state, state.plan.current);
	const before = at(shape.straights, number - 1) - tooling.markOffset + (number === 1 ? trimStart : 0);
	if (before >= tooling.clamp) return null;
	return `Only ${show(before)} of straight tube lies before bend ${number}: the clamp needs ${show(tooling.clamp)}.`;
}

function followHindrance(state: State, number: number): string | null {
	const { follow } = state.start.job.tooling;
	const next = state.bends[number];
	if (!next || next.pulls.length === 0) return null;
	const behind = at(tubeAtWork(state, state.plan.current).shape.straights, number);
	if (behind >= follow) return null;
	return `Only ${show(behind)} of straight tube lies behind bend ${number}, up to bend ${number + 1}: ${show(follow)} is needed there.`;
}
