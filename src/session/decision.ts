import type { Event } from './log/events.ts';
import type { Action } from './protocol/action.ts';
import type { RefusalFact } from './protocol/facts/index.ts';
import type { AskKind } from './protocol/kinds.ts';
import type { RefusedNote } from './protocol/notes.ts';

/** What an answer means: the events it leads to, or why it cannot be taken. */
export type Decision = { events: Event[] } | { refused: RefusedNote };

export function refuse(fact: RefusalFact): { refused: RefusedNote } {
	return { refused: { note: 'refused', code: 'not-possible', reason: [fact] } };
}

/** The answer belongs to another ask. */
export function otherAsk(ask: AskKind, { do: action }: Action): { refused: RefusedNote } {
	return refuse({ code: 'other-ask', ask, action });
}
