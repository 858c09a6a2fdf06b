import { answerEvents } from './answers.ts';
import { refuse } from './decision.ts';
import { nextState, type SessionRecord } from './log/fold.ts';
import { nextEntry, type State } from './log/state.ts';
import type { Answer } from './protocol/action.ts';
import type { RefusedNote } from './protocol/notes.ts';

/** What an answer leads to: the record to be kept and the state after it; or why it cannot be taken, and nothing changes. */
export type Stepped = { record: SessionRecord; next: State } | { refused: RefusedNote };

/** Takes an answer in, on a copy. `when`: what the record tells besides: its time, ISO, and what was asked. Pure. */
export function stepped(answer: Answer, state: State, when: Pick<SessionRecord, 'at' | 'asked'>): Stepped {
	const decision = answerEvents(answer, state);
	if ('refused' in decision) return decision;
	const record = { ...when, entry: nextEntry(state), events: decision.events };
	const next = nextState(state, record);
	return next === null ? refuse({ code: 'leads-nowhere' }) : { record, next };
}
