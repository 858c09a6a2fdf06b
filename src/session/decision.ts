import type { Event } from './log/events.ts';
import type { Action } from './protocol/action.ts';
import type { RefusalFact } from './protocol/facts/index.ts';
import type { RefusedNote } from './protocol/notes.ts';

/** What an answer means: the events it leads to, or why it cannot be taken. */
export type Decision = { events: Event[] } | { refused: RefusedNote };

export function refuse(fact: RefusalFact): { refused: RefusedNote } {
	return { refused: { note: 'refused', code: 'not-possible', reason: [fact] } };
}

/** The answer belongs to another ask; `right`: what would be taken. */
export function wrong(ask: string, action: Action, right: string): { refused: RefusedNote } {
	return refuse({ code: 'other-ask', ask, action: action.do, right });
}
