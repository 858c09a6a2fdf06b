import { type Event, type Reading, readingsIn } from './events.ts';
import type { State } from './state.ts';

/** One line of the log: what was answered. */
export interface Answered {
	entry: number;
	/** ISO time. */
	at: string;
	void: boolean;
	events: readonly Event[];
	readings: Reading[];
	/** The reading that was corrected by it. */
	corrects?: Pick<Reading, 'of' | 'name'>;
}

/** What was answered so far, oldest first. */
export function answered(state: State): Answered[] {
	return state.entries.map(({ entry, at, void: gone, events }) => {
		const amended = events.find((event) => event.type === 'reading-amended');
		const was = amended && readingsIn(state.entries[amended.entry - 1]?.events ?? []);
		const corrects = amended && (was?.find(({ of }) => of === amended.of) ?? { of: amended.of });
		return { entry, at, void: gone, events, readings: readingsIn(events), ...(corrects ? { corrects } : {}) };
	});
}
