import { at } from '../../maths/list.ts';
import { toolingOf } from '../../tube/dies.ts';
import { swing, trailing } from '../../tube/swing.ts';
import { endBefore, tubeAtWork } from '../estimate/tube-at-work.ts';
import type { State } from '../log/state.ts';
import type { RefusalFact } from '../protocol/facts/index.ts';

/** Why a made bend cannot be gone back to, or null. */
export function reopenHindrance(state: State, number: number): RefusalFact | null {
	const bend = state.bends[number - 1];
	if (!bend) return { code: 'no-such-bend', bend: number, bends: state.bends.length };
	if (bend.made === null) return { code: 'not-made-yet', bend: number };
	if (state.suspended) return { code: 'going-back-already', bend: state.bend };
	if (state.phase.at === 'confirm') return { code: 'reading-waits' };
	return clampHindrance(state, number) ?? followHindrance(state, number) ?? floorHindrance(state, number);
}

/** Why a made bend should not be changed by so many degrees (opened below 0), or null; it can be gone back to. */
export function tweakHindrance(state: State, number: number, by: number): RefusalFact | null {
	const angle = (at(state.bends, number - 1).made?.angle ?? 0) + by;
	if (angle <= 0) return { code: 'cannot-open-so-far', bend: number, by: -by };
	if (by > 0 && angle > at(state.design.reach, number - 1)) {
		return { code: 'machine-ends-before', bend: number, angle };
	}
	const { floor } = toolingOf(state.start.job, number);
	if (floor === null || deepest(state, number, Math.max) <= floor) return null;
	return { code: 'floor-in-the-way', bend: number, floor };
}

/** Only what would hit the floor on whichever side the die lies is refused: nobody has said which. */
function floorHindrance(state: State, number: number): RefusalFact | null {
	const tooling = toolingOf(state.start.job, number);
	const depth = deepest(state, number, Math.min);
	if (tooling.floor === null || depth <= tooling.floor) return null;
	return { code: 'floor-in-the-way', bend: number, depth, floor: tooling.floor };
}

/** How far the tube hangs below the machine's plane with a made bend in the die: the part that swings, or what is made behind it. */
function deepest(state: State, number: number, of: (above: number, below: number) => number): number {
	const { shape, trimStart } = tubeAtWork(state, state.plan.current);
	const { od } = state.start.job.tube;
	// Behind the last bend pulled all is straight still.
	const pulled = state.bends.findLastIndex((bend) => bend.pulls.length > 0) + 1;
	const made = { straights: [...shape.straights.slice(0, pulled), 0], bends: shape.bends.slice(0, pulled) };
	const rest = state.piece - endBefore(state, pulled + 1);
	const front = swing(made, number, { od, trim: Math.max(0, trimStart) });
	const back = trailing(made, number, { od, trim: rest });
	return of(Math.max(front.above, back.above), Math.max(front.below, back.below));
}

function clampHindrance(state: State, number: number): RefusalFact | null {
	const tooling = toolingOf(state.start.job, number);
	const { shape, trimStart } = tubeAtWork(state, state.plan.current);
	const before = at(shape.straights, number - 1) - tooling.markOffset + (number === 1 ? trimStart : 0);
	if (before >= tooling.clamp) return null;
	return { code: 'clamp-in-the-way', bend: number, needs: tooling.clamp, is: before };
}

function followHindrance(state: State, number: number): RefusalFact | null {
	const { follow } = toolingOf(state.start.job, number);
	const next = state.bends[number];
	if (!next || next.pulls.length === 0) return null;
	const behind = at(tubeAtWork(state, state.plan.current).shape.straights, number);
	if (behind >= follow) return null;
	return { code: 'follow-in-the-way', bend: number, needs: follow, is: behind };
}
