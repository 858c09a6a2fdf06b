/** Readings that cannot be what they are said to be, by what else was told of the same bend. Either may be the wrong one. */
import { type Exclusion, exclusion } from '../../springback/excluded.ts';
import { expectReading } from '../../springback/reading.ts';
import { type Event, type Reading, readingsIn } from '../log/events.ts';
import { type BendState, bendAt, type Pull, type State } from '../log/state.ts';
import type { Action } from '../protocol/action.ts';
import type { ExcludedFact } from '../protocol/facts/index.ts';
import { slipOf } from './slip.ts';

/** A pull that a reading goes against: how far the dial was held, and in which entry that stands; null in the answer's own. */
interface Held {
	loaded: number;
	entry: number | null;
}

/** Why one of the readings of these events is excluded by mechanics, with both ways on, or null. */
export function excludedIn(state: State, events: readonly Event[]): ExcludedFact | null {
	let own: Held | null = null;
	for (const event of events) {
		if (event.type === 'reading-amended') return byAmending(state, event);
		if (!('reading' in event)) continue;
		const { reading } = event;
		// A dial far from its stop is asked again first: what was read after it is held against what it turns out to be.
		if (reading.of === 'loaded' && event.type === 'reading-doubted') return null;
		if (reading.amends !== undefined) return byAmending(state, { ...reading, entry: reading.amends });
		if (reading.of === 'loaded') own = { loaded: reading.value, entry: null };
		const values = event.type === 'reading-doubted' ? [reading.value, ...event.others] : [reading.value];
		for (const value of values) {
			const why = byReading(state, { ...reading, value }, own);
			if (why !== null) return why;
		}
	}
	return null;
}

/** Why what a doubted reading is read again as is excluded, whichever of the two would count, or null. */
export function excludedAgain(state: State, action: Action): ExcludedFact | null {
	const { phase } = state;
	if (phase.at !== 'confirm' || action.do !== 'reading') return null;
	const { reading } = phase.doubt;
	const again = { ...reading, value: action.reading };
	return reading.amends === undefined
		? byReading(state, again, null)
		: byAmending(state, { ...again, entry: reading.amends });
}

function byReading(state: State, reading: Reading, own: Held | null): ExcludedFact | null {
	const { of, value } = reading;
	if (of !== 'angle' && of !== 'released') return null;
	const number = reading.bend ?? state.bend;
	const bend = bendAt(state, number);
	const held = furthest(own === null ? bend.pulls : [...bend.pulls, own]);
	if (held === null) {
		return { code: 'not-pulled-yet', bend: number };
	}
	const which = exclusion(value, held.loaded, isOpened(bend));
	return which === null ? null : excluding(state, { of, value, bend: number }, held, which);
}

/** Once opened a bend may lie anywhere below where it was held. */
function isOpened({ relievedFrom }: BendState): boolean {
	return relievedFrom !== null;
}

function furthest(pulls: readonly Held[]): Held | null {
	return pulls.reduce<Held | null>((most, pull) => (most === null || pull.loaded >= most.loaded ? pull : most), null);
}

interface ToldReading {
	of: 'angle' | 'released';
	value: number;
	bend: number;
}

function excluding(
	state: State,
	{ of, value, bend }: ToldReading,
	{ loaded, entry }: Held,
	which: Exclusion,
): ExcludedFact {
	const inside = of === 'angle' && which === 'above' ? readInside(value, loaded) : null;
	return {
		code: 'excluded-by-dial',
		of,
		value,
		bend,
		held: loaded,
		line: entry,
		which,
		...(inside === null ? {} : whatItWas(state, { of, value, bend }, inside)),
		settling: state.phase.at === 'confirm',
	};
}

/** What it was if it was read on the `inside` of the bend, or the slip of the hand that lies nearer to what is expected. */
function whatItWas(
	state: State,
	{ of, value, bend }: ToldReading,
	inside: number,
): Pick<Extract<ExcludedFact, { code: 'excluded-by-dial' }>, 'inside' | 'slip'> {
	const { made } = bendAt(state, bend);
	const apart = bend !== state.bend && made !== null;
	const expected = apart ? { value: made.angle, sd: made.sd } : expectReading(state.filter, of);
	const slip = slipOf(value, expected, null);
	if (slip === null) return { inside };
	return Math.abs(slip.would - expected.value) < Math.abs(inside - expected.value) ? { slip } : { inside };
}

/** A finder laid on the inside shows the rest to 180. */
function readInside(value: number, loaded: number): number | null {
	const inside = 180 - value;
	return inside >= 0 && exclusion(inside, loaded, false) === null ? inside : null;
}

/** A correction that goes against what stands: of a reading against its pull, of a pull against the readings after it. */
function byAmending(
	state: State,
	{ entry, of, value }: { entry: number; of: Reading['of']; value: number },
): ExcludedFact | null {
	const was = readingsIn(state.entries[entry - 1]?.events ?? []).find((reading) => reading.of === of);
	const number = was?.bend;
	if (number === undefined) return null;
	const bend = bendAt(state, number);
	if (of === 'loaded') return byPull(state, bend, number, { entry, loaded: value });
	if (of !== 'angle' && of !== 'released') return null;
	const held = furthest(bend.pulls.filter((pull) => pull.entry <= entry));
	const which = held === null ? null : exclusion(value, held.loaded, isOpened(bend));
	return held === null || which === null ? null : excluding(state, { of, value, bend: number }, held, which);
}

/** A doubted dial stands in the entry that settled it. */
function byPull(
	state: State,
	bend: BendState,
	number: number,
	{ entry, loaded }: Held & { entry: number },
): ExcludedFact | null {
	const at = bend.pulls.findIndex((pull) => pull.entry >= entry);
	for (const [i, pull] of bend.pulls.entries()) {
		if (at < 0 || i < at) continue;
		const before = furthest(bend.pulls.slice(0, i + 1));
		const after = furthest(bend.pulls.slice(0, i + 1).map((each, n) => (n === at ? { ...each, loaded } : each)));
		for (const told of toldReadings(pull, number)) {
			const goesAgainst = (held: Held | null) =>
				held === null ? null : exclusion(told.value, held.loaded, isOpened(bend));
			// What stands against it already is no reason to leave the pull wrong.
			if (goesAgainst(after) === null || goesAgainst(before) !== null) continue;
			return againstTold(state, told, loaded);
		}
	}
	return null;
}

function toldReadings({ released, measured }: Pull, bend: number): ToldReading[] {
	const angles = measured.map((value): ToldReading => ({ of: 'angle', value, bend }));
	return released === null ? angles : [{ of: 'released', value: released, bend }, ...angles];
}

function againstTold(state: State, { of, value, bend }: ToldReading, held: number): ExcludedFact {
	const line = state.entries.findLast(
		({ void: gone, events }) =>
			!gone && readingsIn(events).some((reading) => reading.of === of && (reading.bend ?? bend) === bend),
	);
	return { code: 'excludes-told', of, value, bend, held, line: line?.entry ?? null };
}
