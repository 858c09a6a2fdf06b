import type { HalfAnswer } from '../protocol/action.ts';
import type { EventType } from './events.ts';
import type { State } from './state.ts';

/** What may be written between the two numbers of one answer. */
const BETWEEN: ReadonlySet<EventType> = new Set(['note-written', 'session-left', 'session-resumed']);

/** The first number of an answer whose rest is still to come, for the question that is open; null where there is none. */
export function halfAnswerOf({ entries, phase }: State): HalfAnswer | null {
	const last = entries.findLast(({ events }) => events.some(({ type }) => !BETWEEN.has(type)));
	const kept = last?.events.find((event) => event.type === 'draft-kept');
	if (!kept) return null;
	return phase.at === (kept.draft.of === 'loaded' ? 'pull' : 'check') ? kept.draft : null;
}
