import { bendAt, heldSinceOpened, type State } from '../log/state.ts';
import type { RefusalFact } from '../protocol/facts/index.ts';
import { atLimit } from './bend-check.ts';

/** Why a tube that is to be set again cannot be taken as never having left the die, or null. */
export function notStill(state: State): RefusalFact | null {
	const { phase } = state;
	const bend = bendAt(state, state.bend);
	const since =
		bend.seats === 0
			? 'never-set'
			: phase.at !== 'set' || phase.out === true
				? 'taken-out'
				: heldSinceOpened(bend) === 0
					? 'opened'
					: atLimit(state)
						? 'limit'
						: null;
	return since === null ? null : { code: 'not-still', since };
}
