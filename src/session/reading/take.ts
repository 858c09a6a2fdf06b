import { apply } from '../log/apply.ts';
import type { Event, Reading } from '../log/events.ts';
import type { State } from '../log/state.ts';
import { whyUnexpected } from './unexpected.ts';

/** Takes readings one after the other; the first doubtful one stops the row, and the rest waits behind it. */
export function takeReadings(state: State, readings: readonly Reading[]): Event[] {
	const events: Event[] = [];
	let now = state;
	for (const [i, reading] of readings.entries()) {
		const doubted = whyUnexpected(now, reading);
		if (doubted) {
			events.push({ type: 'reading-doubted', reading, ...doubted, others: [], rest: readings.slice(i + 1) });
			return events;
		}
		const taken: Event = { type: 'reading-taken', reading };
		events.push(taken);
		now = apply(now, taken);
	}
	return events;
}
