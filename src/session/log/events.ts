import type { HalfAnswer } from '../protocol/action.ts';
import type { Plan } from '../protocol/asks.ts';
import type { DoubtFact } from '../protocol/facts/index.ts';
import type { EvidenceKind, ReadingKind, ToMeasure } from '../protocol/kinds.ts';
import type { Anew } from './start.ts';

/** One number that was read, in the job's unit or in degrees. */
export interface Reading {
	of: ReadingKind;
	value: number;
	/** Bend number it belongs to, counted from 1 (absent for the piece's length and for checks). */
	bend?: number;
	/** The check's name. */
	name?: string;
	/** For `loaded`: the stop that had been asked for. */
	stop?: number;
	/** For a reading given as further evidence: what was measured. */
	evidence?: EvidenceKind;
	/** For a reading that is to replace an earlier one: the number of that record. */
	amends?: number;
}

/** What a reading was expected to be, without the reading's own error. */
export interface Expected {
	value: number;
	sd: number;
}

/**
 * What happened, in the past tense. A record in the log holds the events of one answer. Events state facts only:
 * whatever can be computed from them (estimates, plans, what is asked next) is computed anew by folding.
 */
export type Event =
	/** The operator has put the tube in the die at a bend's mark. */
	| { type: 'tube-set'; bend: number }
	/** It never left the die since its last pull: the set-up goes on. */
	| { type: 'tube-still'; bend: number }
	| { type: 'reading-taken'; reading: Reading }
	/** The first of two independent readings; it counts when the second is in. */
	| { type: 'reading-noted'; reading: Reading }
	/** A reading far from what was expected, to be confirmed; `others` came with it, `rest` waits behind it. */
	| {
			type: 'reading-doubted';
			reading: Reading;
			expected: Expected;
			reason: DoubtFact[];
			/** In place of `reason` in logs of earlier versions. */
			why?: string;
			others: number[];
			rest: Reading[];
	  }
	/**
	 * The doubt is over: `reading` counts as `count` readings; `setAside` is kept but not used; `kept`: no second number was given; `first`: it is
	 * the first of two that are wanted, and counts when the second is in.
	 */
	| { type: 'doubt-settled'; reading: Reading; count: 1 | 2; setAside: number[]; kept?: true; first?: true }
	| { type: 'measuring-skipped'; bend: number }
	| { type: 'check-skipped'; name: string }
	| { type: 'plan-chosen'; plan: Plan }
	| { type: 'tube-taken-out'; bend: number }
	/** `declined`: the made bend that it was advised to go back to instead, `unmeasured`: what to measure again; absent where nothing of the kind was. */
	| { type: 'bend-accepted'; bend: number; declined?: number; unmeasured?: ToMeasure }
	/** `wanted`: its new target, where it was advised to give it a touch more. */
	| { type: 'pull-chosen'; bend: number; wanted?: number }
	| { type: 'relief-chosen'; bend: number }
	| { type: 'bend-reopened'; bend: number; how: 'pull' | 'relieve' }
	| { type: 'tube-scrapped'; why: string }
	| { type: 'record-voided'; entry: number }
	| { type: 'reading-amended'; entry: number; of: ReadingKind; value: number }
	/** The first number of an answer that is not whole yet: kept in case the rest never comes. */
	| { type: 'draft-kept'; draft: HalfAnswer }
	| { type: 'note-written'; text: string }
	/** The heat, lot or certificate number of the tube in hand. */
	| { type: 'heat-told'; heat: string }
	| { type: 'session-left' }
	/** `anew`: by a model that is not that of the start; what takes the place of its prior from here on. */
	| { type: 'session-resumed'; anew?: Anew };

export type EventType = Event['type'];

/** Events that leave nothing to undo: they change what is known about the session, not about the tube. */
const CHANGES_NOTHING: ReadonlySet<EventType> = new Set([
	'note-written',
	'heat-told',
	'draft-kept',
	'session-left',
	'session-resumed',
	'record-voided',
]);

/** True where a record of these events can be undone. */
export function canUndo(events: readonly Event[]): boolean {
	return events.some((event) => !CHANGES_NOTHING.has(event.type));
}

/** Every reading that a record's events hold. */
export function readingsIn(events: readonly Event[]): Reading[] {
	return events.flatMap((event) => {
		if (event.type === 'reading-doubted') return [event.reading, ...event.rest];
		return 'reading' in event ? [event.reading] : [];
	});
}
