/** Whether a decision would be advised as well by who knew, at that moment, what one number told or read really is. */

import { advisedAt } from '../../src/session/advice/whole-tube.ts';
import { estimated } from '../../src/session/estimate/estimate.ts';
import { markSd, turnSd } from '../../src/session/estimate/hands.ts';
import { replanned } from '../../src/session/log/apply-reading.ts';
import { evolve } from '../../src/session/log/fold.ts';
import { bendAt, nextEntry, type State, withBend } from '../../src/session/log/state.ts';
import type { DecideAsk } from '../../src/session/protocol/asks.ts';
import { withChecksSetAside } from '../../src/session/reading/checks-set-aside.ts';
import type { Named } from './contradictions-best.ts';

/** A record that holds the wrong number, and what it would hold. */
export interface Wrong {
	entry: number;
	of: 'angle' | 'check';
	right: number;
}

/** `wrongs`: where it was read; a mark or a turn, wrong by `size` of its own errors, was set and not read. */
export function isAdvisedAsWell(
	{ advice, of }: DecideAsk,
	state: State,
	planted: Named & { size: number },
	wrongs: readonly Wrong[],
): boolean {
	const right =
		planted.kind === 'mark' || planted.kind === 'rotation' ? setRight(state, planted) : readRight(state, wrongs);
	if (right.phase.at !== 'decide') return false;
	const then = advisedAt(right);
	return then.advice === advice && then.of === (typeof of === 'object' ? undefined : of);
}

function setRight(state: State, { kind, bend = 1, size }: Named & { size: number }): State {
	const { mark, rotation } = bendAt(state, bend);
	// What is not set yet is not believed yet.
	if (mark === null || rotation === null) return state;
	const told =
		kind === 'mark' ? { mark: mark + size * markSd(state.start) } : { rotation: rotation + size * turnSd(state.start) };
	const set = withChecksSetAside(withBend(state, bend, told));
	return set.bends.some(({ made }) => made !== null) ? replanned(estimated(set)) : set;
}

function readRight(state: State, wrongs: readonly Wrong[]): State {
	return wrongs
		.filter(({ entry }) => state.entries.find((each) => each.entry === entry)?.void === false)
		.reduce((amended, { entry, of, right: value }) => {
			const event = { type: 'reading-amended' as const, entry, of, value };
			return evolve(amended, { entry: nextEntry(amended), at: state.start.at, events: [event] });
		}, state);
}
