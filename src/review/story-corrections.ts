/** Which corrections a session came to, and which numbers were bent by. */
import type { Event } from '../session/log/events.ts';
import type { State } from '../session/log/state.ts';
import { correctionBy } from '../session/outputs.ts';
import type { Plan } from '../session/protocol/asks.ts';
import type { Correction } from '../session/protocol/notes.ts';
import type { Stamp } from './story-bend.ts';

/** One correction: the bends left with new and old numbers, and the tube expected with them and with the drawing's. */
export interface CorrectionStory extends Stamp {
	correction: Correction;
	/** Which numbers were in force after it: the old ones where they were kept. */
	plan: Plan;
}

/** `states`: the session as it began and after each line of its log. */
export function correctionsOf(states: readonly State[]): CorrectionStory[] {
	const last = states.at(-1);
	const found = states.slice(1).flatMap((after, i): CorrectionStory[] => {
		const record = after.entries.at(-1);
		const correction = record ? correctionBy(states[i]!, after, record) : null;
		if (record === undefined || correction === null) return [];
		const { entry, at } = record;
		return [{ entry, at, void: last?.entries[entry - 1]?.void ?? false, correction, plan: 'new' }];
	});
	return found.map((each, i) => ({ ...each, plan: planAfter(last, each.entry, found[i + 1]?.entry) }));
}

/** What was chosen last between that line and the next correction. */
function planAfter(last: State | undefined, from: number, to = Number.POSITIVE_INFINITY): Plan {
	const chosen = (last?.entries ?? [])
		.filter((entry) => !entry.void && entry.entry > from && entry.entry < to)
		.flatMap(({ events }) => events)
		.findLast((event): event is Extract<Event, { type: 'plan-chosen' }> => event.type === 'plan-chosen');
	return chosen?.plan ?? 'new';
}
