import { at } from '../../maths/list.ts';
import { normalizeRotation } from '../../tube/angles.ts';
import { apply } from '../log/apply.ts';
import type { Event, Reading } from '../log/events.ts';
import type { Doubt, State } from '../log/state.ts';
import type { Action } from '../protocol/action.ts';
import { dueCheck } from './check-reading.ts';
import { takeReadings } from './take.ts';

/**
 * What comes of a doubt. Read again and kept, or a second reading that agrees: it stands and counts as two.
 * Otherwise the likelier of the two counts and the other is kept as set aside. Then the readings behind it are taken.
 */
export function settleDoubt(state: State, doubt: Doubt, action: Extract<Action, { do: 'keep' | 'reading' }>): Event[] {
	const settled = settledBy(state, doubt, action);
	if (doubt.reading.amends !== undefined) return [amendedEvent({ ...doubt.reading, value: settled.reading.value })];
	return [settled, ...takeReadings(apply(state, settled), doubt.rest)];
}

function settledBy(state: State, doubt: Doubt, action: Extract<Action, { do: 'keep' | 'reading' }>): Settled {
	const { reading, expected, others } = doubt;
	const settled = (value: number, count: 1 | 2, setAside: number[]): Settled => ({
		type: 'doubt-settled',
		reading: { ...reading, value },
		count,
		setAside,
	});
	if (action.do === 'keep') return { ...settled(reading.value, 2, [...others]), kept: true };
	const again = action.reading;
	const given = [reading.value, ...others];
	const agreeing = given.findIndex((other) => readingGap(reading, again, other) <= agreement(state, reading));
	if (agreeing >= 0) {
		const other = at(given, agreeing);
		return settled(again + shift(reading, again, other) / 2, 2, given.toSpliced(agreeing, 1));
	}
	const miss = (value: number) => readingGap(reading, value, expected.value);
	const [best, ...rest] = [again, ...given].sort((a, b) => miss(a) - miss(b));
	return { ...settled(best ?? again, 1, rest), ...(isFirstOfTwo(state, doubt) ? { first: true } : {}) };
}

/** Of a tube's first measurement two readings are wanted, whatever became of the first. */
function isFirstOfTwo({ phase }: State, { reading, others }: Doubt): boolean {
	const { of, evidence } = reading;
	const back = phase.at === 'confirm' ? phase.back : phase;
	return of === 'angle' && evidence === undefined && back.at === 'measure' && back.wanted === 2 && others.length === 0;
}

type Settled = Extract<Event, { type: 'doubt-settled' }>;

/** The event that puts a reading in an earlier one's place. */
export function amendedEvent(reading: Reading): Event {
	return { type: 'reading-amended', entry: reading.amends ?? 0, of: reading.of, value: reading.value };
}

function shift(reading: Reading, from: number, to: number): number {
	return reading.of === 'rotation' ? normalizeRotation(to - from) : to - from;
}

function readingGap(reading: Reading, a: number, b: number): number {
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
