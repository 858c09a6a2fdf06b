/** What happened at one bend, in the order of the log: what was taken back or set aside too, told as such. */
import { at } from '../maths/list.ts';
import type { Event, Reading } from '../session/log/events.ts';
import { readingsIn } from '../session/log/events.ts';
import type { Entry, State } from '../session/log/state.ts';
import type { AngleEstimate } from '../session/protocol/asks.ts';
import { type PullView, pullsOf, type SetUpView, setUpsOf } from '../session/report/set-ups.ts';
import { angleBand } from '../tube/tolerance.ts';

/** One bend of a kept session. Angles in degrees. */
export interface BendStory {
	/** Counted from 1. */
	bend: number;
	design: number;
	/** Last angle aimed at, and its tolerance band. */
	target: number;
	low: number;
	high: number;
	/** Null as long as it is not taken. */
	made: AngleEstimate | null;
	/** Whether the angle finder was ever put on it: else it is known by the dial and the checks alone. */
	measured: boolean;
	steps: readonly BendStep[];
}

/** What happened, without when. */
export type BendDone =
	| { step: 'set'; setUp: SetUpView }
	| { step: 'pull'; pull: PullView }
	/** It never left the die since its last pull; it was out of it. */
	| { step: 'still' | 'out' }
	/** A reading that stands in no pull and no set-up: told as evidence, or taken back. */
	| { step: 'read'; reading: Reading }
	/** Numbers that were read and do not count; `reading`: the one that counts in their place. */
	| { step: 'aside'; reading: Reading; values: readonly number[] }
	/** A reading of that line was corrected; `was`: as it was told first, null where that line has none of its kind. */
	| { step: 'amended'; line: number; reading: Reading; was: number | null }
	| { step: 'skipped' }
	/** What was decided: pulled again, opened, gone back to, taken. */
	| { step: 'again' | 'opened' | 'taken' }
	| { step: 'reopened'; how: 'pull' | 'relieve' };

/** The line of the log that has it, when it was written (ISO time), and whether it was taken back. */
export interface Stamp {
	entry: number;
	at: string;
	void: boolean;
}

export type BendStep = Stamp & BendDone;

/** Counted from 1. */
export function bendStory(state: State, bend: number): BendStory {
	const { target, made } = at(state.bends, bend - 1);
	const setUps = setUpsOf(state, bend).map((setUp): BendStep => ({ ...stampOf(state, setUp), step: 'set', setUp }));
	const pulls = pullsOf(state, bend).map((pull): BendStep => ({ ...stampOf(state, pull), step: 'pull', pull }));
	const others = state.entries.flatMap((entry) => othersIn(state, entry, bend));
	const isMeasured = pulls.some((each) => each.step === 'pull' && each.pull.measured.length > 0);
	return {
		bend,
		design: at(state.design.shape.bends, bend - 1).angle,
		target,
		...angleBand(state.start.job.tolerance, target),
		made,
		measured: isMeasured || others.some((each) => each.step === 'read' && !each.void && isAngle(each.reading)),
		// What one line holds stays as it was told: the tube is set, then the rest.
		steps: [...setUps, ...pulls, ...others].sort((a, b) => a.entry - b.entry),
	};
}

const isAngle = ({ of, evidence }: Reading) => of === 'angle' && (evidence === undefined || evidence === 'angle');

function stampOf({ entries }: State, { entry, void: gone }: { entry: number; void: boolean }): Stamp {
	return { entry, at: at(entries, entry - 1).at, void: gone };
}

function othersIn(state: State, { entry, at: time, events, void: gone }: Entry, bend: number): BendStep[] {
	return events.flatMap((event): BendStep[] =>
		doneBy(state, event, bend, gone).map((done) => ({ entry, at: time, void: gone, ...done })),
	);
}

/** What an event tells of the bend beside its set-ups and pulls. */
function doneBy(state: State, event: Event, bend: number, gone: boolean): BendDone[] {
	switch (event.type) {
		case 'reading-taken':
		case 'reading-noted':
			return event.reading.bend === bend ? aloneOf(event.reading, gone) : [];
		case 'doubt-settled': {
			const { reading, setAside } = event;
			if (reading.bend !== bend) return [];
			const aside: BendDone[] = setAside.length > 0 ? [{ step: 'aside', reading, values: setAside }] : [];
			return [...aside, ...aloneOf(reading, gone)];
		}
		case 'reading-amended':
			return amendedOf(state, event, bend);
		case 'tube-still':
			return event.bend === bend ? [{ step: 'still' }] : [];
		case 'tube-taken-out':
			return event.bend === bend ? [{ step: 'out' }] : [];
		case 'measuring-skipped':
			return event.bend === bend ? [{ step: 'skipped' }] : [];
		case 'pull-chosen':
			return event.bend === bend ? [{ step: 'again' }] : [];
		case 'relief-chosen':
			return event.bend === bend ? [{ step: 'opened' }] : [];
		case 'bend-accepted':
			return event.bend === bend ? [{ step: 'taken' }] : [];
		case 'bend-reopened':
			return event.bend === bend ? [{ step: 'reopened', how: event.how }] : [];
		default:
			return [];
	}
}

/** A pull tells its own readings as long as they stand; a dial under load that was taken back is a pull all the same. */
function aloneOf(reading: Reading, gone: boolean): BendDone[] {
	const { of, evidence } = reading;
	const isPulls = of === 'loaded' || (of === 'released' && gone);
	return !isPulls && (gone || evidence !== undefined) ? [{ step: 'read', reading }] : [];
}

function amendedOf(
	{ entries }: State,
	{ entry, of, value }: Extract<Event, { type: 'reading-amended' }>,
	bend: number,
): BendDone[] {
	const told = readingsIn(entries[entry - 1]?.events ?? []);
	const was = told.find((reading) => reading.of === of);
	if ((was ?? told[0])?.bend !== bend) return [];
	return [{ step: 'amended', line: entry, reading: { ...was, of, value }, was: was?.value ?? null }];
}
