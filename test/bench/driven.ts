/** A whole session through the session core, the simulated bender and operator answering. */
import { operatorAnswer } from '../../src/practice/operator.ts';
import type { Draw } from '../../src/practice/random.ts';
import type { Station } from '../../src/practice/station.ts';
import type { World } from '../../src/practice/world.ts';
import { answerEvents } from '../../src/session/answers.ts';
import { ask } from '../../src/session/ask.ts';
import { evolve, initial } from '../../src/session/fold.ts';
import type { Action, Ask } from '../../src/session/protocol.ts';
import type { Start } from '../../src/session/start.ts';
import { nextEntry, type State } from '../../src/session/state.ts';

/** A session that will not end is given up: most come nowhere near this. */
const MOST_ANSWERS = 1000;

export interface Hands {
	station: Station;
	world: World;
	draw: Draw;
}

/**
 * The state in which it ended. `seen` is told of every ask once its work was done and before it is answered, with the action that
 * answers it. Throws where an answer is refused or no end comes.
 */
export function driven(
	start: Start,
	{ station, world, draw }: Hands,
	seen: (open: Ask, before: State, action: Action) => void,
): State {
	let state = initial(start);
	for (let k = 0; k < MOST_ANSWERS; k++) {
		const open = ask(state);
		if (open === null) return state;
		const action = operatorAnswer(open, station.see(open), world, draw);
		seen(open, state, action);
		station.did(open, action);
		const decision = answerEvents({ action }, state);
		if ('refused' in decision) throw new Error(`refused: ${decision.refused.why}`);
		state = evolve(state, { entry: nextEntry(state), at: start.at, events: decision.events });
	}
	throw new Error(`no end after ${MOST_ANSWERS} answers`);
}
