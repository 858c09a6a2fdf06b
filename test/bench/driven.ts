/** A whole session through the session core, the simulated bender and operator answering. */

import { operatorAnswer } from '../../src/practice/operator.ts';
import type { Draw } from '../../src/practice/random.ts';
import type { Station } from '../../src/practice/station.ts';
import type { World } from '../../src/practice/world.ts';
import { answerEvents } from '../../src/session/answers.ts';
import { ask } from '../../src/session/ask.ts';
import { evolve, initial } from '../../src/session/log/fold.ts';
import type { Start } from '../../src/session/log/start.ts';
import { nextEntry, type State } from '../../src/session/log/state.ts';
import type { Action } from '../../src/session/protocol/action.ts';
import type { Ask } from '../../src/session/protocol/asks.ts';
import { gaveUpWords } from '../../src/words/practice.ts';

/** A session that will not end is given up: most come nowhere near this. */
const MOST_ANSWERS = 1000;
/** A number that is refused is keyed again; refused more often in a row, what it goes against was keyed wrong, and is taken back. */
const MOST_REFUSALS = 2;

export interface Hands {
	station: Station;
	world: World;
	draw: Draw;
}

/**
 * The state in which it ended. `seen` is told of every ask once its work was done, with the action that is about to answer it. Throws where
 * no end comes.
 */
export function driven(
	start: Start,
	{ station, world, draw }: Hands,
	seen: (open: Ask, before: State, action: Action) => void,
): State {
	let state = initial(start);
	let refusals = 0;
	for (let k = 0; k < MOST_ANSWERS; k++) {
		const open = ask(state);
		if (open === null) return state;
		const answer = operatorAnswer(open, station.see(open), world, draw, gaveUpWords);
		const action: Action = refusals > MOST_REFUSALS ? { do: 'undo' } : answer;
		const decision = answerEvents({ action }, state);
		if ('refused' in decision) {
			refusals += 1;
			continue;
		}
		refusals = 0;
		if (action === answer) seen(open, state, action);
		station.did(open, action);
		state = evolve(state, { entry: nextEntry(state), at: start.at, events: decision.events });
	}
	throw new Error(`no end after ${MOST_ANSWERS} answers`);
}
