import { normalizeRotation } from '../tube/angles.ts';
import { dueCheck } from './check-reading.ts';
import type { Event, Reading } from './events.ts';
import { apply } from './evolve.ts';
import type { Action } from './protocol.ts';
import type { Doubt, State } from './state.ts';
import { takeReadings } from './take.ts';

/**
 * What comes of a doubt. Read again and kept, or a second reading that agrees: it stands and counts as two.
 * Otherwise the likelier of the two counts and the other is kept as set aside. Then the readings behind it are taken.
 */
export function settle(state: State, doubt: Doubt, action: Extract<Action, { do: 'keep' | 'reading' }>): Event[] {
	const settled = outcome(state, doubt, action);
	return [settled, ...takeReadings(apply(state, settled), doubt.rest)];
}

function outcome(state: State, doubt: Doubt, action: Extract<Action, { do: 'keep' | 'reading' }>): Event {
	const { reading, expected, others } = doubt;
	const settled = (value: number, count: 1 | 2, setAside: number | null): Event => ({
		type: 'doubt-settled',
		reading: { ...reading, value },
		count,
		setAside,
	});
	if (action.do === 'keep') return settled(reading.value, 2, others[0] ?? null);
	const again = action.reading;
	const agrees = (other: number) => gap(reading, again, other) <= agreement(state, reading);
	if (agrees(reading.value)) return settled(again + shift(reading, again, reading.value) / 2, 2, others[0] ?? null);
	const agreeing = others.find(agrees);
	if (agreeing !== undefined) return settled((again + agreeing) / 2, 2, reading.value);
	const miss = (value: number) => gap(reading, value, expected.value);
	const ranked = [reading.value, again, ...others].sort((a, b) => miss(a) - miss(b));
	const [best = again] = ranked;
	return settled(best, 1, best === again ? reading.value : again);
}

function shift(reading: Reading, from: number, to: number): number {
	return reading.of === 'rotation' ? normalizeRotation(to - from) : to - from;
}

function gap(reading: Reading, a: number, b: number): number {
	return Math.abs(shift(reading, a, b));
}

/** How near two readings of one thing lie when they agree: 1 degree, the check's tolerance, two divisions of the tape. */
function agreement(state: State, reading: Reading): number {
	switch (reading.of) {
		case 'check':
			return dueCheck(state, reading.name ?? '').check.tolerance;
		case 'mark':
		case 'length':
			return 2 * state.start.job.tooling.tape;
		default:
			return 1;
	}
}
