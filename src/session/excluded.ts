/** Readings that cannot be what they are said to be, by what else was told of the same bend. Either may be the wrong one. */
import { type Exclusion, exclusion } from '../springback/excluded.ts';
import { type Event, type Reading, readingsIn } from './events.ts';
import type { Action } from './protocol.ts';
import { show } from './show.ts';
import { type BendState, bendAt, type Pull, type State } from './state.ts';

/** A pull that a reading goes against: how far the dial was held, and in which entry that stands; null in the answer's own. */
interface Held {
	loaded: number;
	entry: number | null;
}

/** Why one of the readings of these events is excluded by mechanics, with both ways on, or null. */
export function excludedIn(state: State, events: readonly Event[]): string | null {
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
export function excludedAgain(state: State, action: Action): string | null {
	const { phase } = state;
	if (phase.at !== 'confirm' || action.do !== 'reading') return null;
	const { reading } = phase.doubt;
	const again = { ...reading, value: action.reading };
	return reading.amends === undefined
		? byReading(state, again, null)
		: byAmending(state, { ...again, entry: reading.amends });
}

function byReading(state: State, reading: Reading, own: Held | null): string | null {
	const { of, value } = reading;
	if (of !== 'angle' && of !== 'released') return null;
	const number = reading.bend ?? state.bend;
	const bend = bendAt(state, number);
	const held = furthest(own === null ? bend.pulls : [...bend.pulls, own]);
	if (held === null) {
		return `Bend ${number} has not been pulled, so there is no angle to measure. If it was, give that pull first.`;
	}
	const which = exclusion(value, held.loaded, isOpened(bend));
	return which === null ? null : sentence(state, { of, value, bend: number }, held, which);
}

/** Once opened a bend may lie anywhere below where it was held. */
function isOpened({ relievedFrom }: BendState): boolean {
	return relievedFrom !== null;
}

function furthest(pulls: readonly Held[]): Held | null {
	return pulls.reduce<Held | null>((most, pull) => (most === null || pull.loaded >= most.loaded ? pull : most), null);
}

interface Told {
	of: 'angle' | 'released';
	value: number;
	bend: number;
}

function sentence(state: State, { of, value, bend }: Told, { loaded, entry }: Held, which: Exclusion): string {
	const at = `The dial was held at ${show(loaded)}`;
	const cannot =
		of === 'angle' ? `bend ${bend} cannot measure ${show(value)}` : `it cannot show ${show(value)} after release`;
	if (entry === null) {
		const settling = state.phase.at === 'confirm';
		return `${at}, so ${cannot}. ${settling ? 'Read the dial again, or undo and give both again.' : 'Read both again.'}`;
	}
	const inside = of === 'angle' && which === 'above' ? insideHint(value, loaded) : '';
	const pull = which === 'above' ? 'the tube was pulled further' : 'the pull ended sooner';
	const again = of === 'angle' ? 'Measure' : 'Read it';
	return `${at} (line ${entry} of the log), so ${cannot}.${inside} ${again} again, or correct line ${entry} if ${pull}.`;
}

/** A finder laid on the inside shows the rest to 180. */
function insideHint(value: number, loaded: number): string {
	const inside = 180 - value;
	const fits = inside >= 0 && exclusion(inside, loaded, false) === null;
	return fits ? ` Was it read on the inside? Then it is ${show(inside)}.` : '';
}

/** A correction that goes against what stands: of a reading against its pull, of a pull against the readings after it. */
function byAmending(
	state: State,
	{ entry, of, value }: { entry: number; of: Reading['of']; value: number },
): string | null {
	const was = readingsIn(state.entries[entry - 1]?.events ?? []).find((reading) => reading.of === of);
	const number = was?.bend;
	if (number === undefined) return null;
	const bend = bendAt(state, number);
	if (of === 'loaded') return byPull(state, bend, number, { entry, loaded: value });
	if (of !== 'angle' && of !== 'released') return null;
	const held = furthest(bend.pulls.filter((pull) => pull.entry <= entry));
	const which = held === null ? null : exclusion(value, held.loaded, isOpened(bend));
	return held === null || which === null ? null : sentence(state, { of, value, bend: number }, held, which);
}

/** A doubted dial stands in the entry that settled it. */
function byPull(
	state: State,
	bend: BendState,
	number: number,
	{ entry, loaded }: Held & { entry: number },
): string | null {
	const at = bend.pulls.findIndex((pull) => pull.entry >= entry);
	for (const [i, pull] of bend.pulls.entries()) {
		if (at < 0 || i < at) continue;
		const before = furthest(bend.pulls.slice(0, i + 1));
		const after = furthest(bend.pulls.slice(0, i + 1).map((each, n) => (n === at ? { ...each, loaded } : each)));
		for (const told of toldOf(pull, number)) {
			const goesAgainst = (held: Held | null) =>
				held === null ? null : exclusion(told.value, held.loaded, isOpened(bend));
			// What stands against it already is no reason to leave the pull wrong.
			if (goesAgainst(after) === null || goesAgainst(before) !== null) continue;
			return againstTold(state, told, loaded);
		}
	}
	return null;
}

function toldOf({ released, measured }: Pull, bend: number): Told[] {
	const angles = measured.map((value): Told => ({ of: 'angle', value, bend }));
	return released === null ? angles : [{ of: 'released', value: released, bend }, ...angles];
}

function againstTold(state: State, { of, value, bend }: Told, loaded: number): string {
	const line = state.entries.findLast(
		({ void: gone, events }) =>
			!gone && readingsIn(events).some((reading) => reading.of === of && (reading.bend ?? bend) === bend),
	);
	const where = line === undefined ? '' : ` (line ${line.entry} of the log)`;
	const says = of === 'angle' ? `Bend ${bend} measured ${show(value)}` : `The dial showed ${show(value)} after release`;
	const first = line === undefined ? '' : ` Correct line ${line.entry} first if that is wrong.`;
	return `${says}${where}, so it cannot have been held at ${show(loaded)}.${first} If both are wrong, undo them and give both again.`;
}
