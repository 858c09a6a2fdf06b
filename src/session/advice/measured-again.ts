import type { Event, Reading } from '../log/events.ts';
import type { State } from '../log/state.ts';
import type { ToMeasure } from '../protocol/kinds.ts';

/**
 * Whether something was measured again already, or a bend accepted although that was advised, since it last changed: the same is not asked twice.
 */
export function isMeasuredAgain(state: State, of: ToMeasure): boolean {
	if (of.kind === 'check') {
		const check = state.checks[of.name ?? ''];
		if (check?.again || check?.count === 2) return true;
	}
	return sinceItChanged(state, of, (event) => isAgain(event, of) || isPassedOver(event, of));
}

/** Whether a reading of a bend's angle was doubted, and stood when it was read again. */
export function isConfirmed(state: State, bend: number): boolean {
	const twice = (event: Event) =>
		event.type === 'doubt-settled' && event.count === 2 && event.reading.of === 'angle' && event.reading.bend === bend;
	return sinceItChanged(state, { kind: 'angle', bend }, twice);
}

function sinceItChanged({ entries }: State, of: ToMeasure, was: (event: Event) => boolean): boolean {
	for (const { events, void: undone } of entries.toReversed()) {
		if (undone) continue;
		for (const event of events.toReversed()) {
			if (was(event)) return true;
			if (isChange(event, of)) return false;
		}
	}
	return false;
}

function isAgain(event: Event, { kind, bend }: ToMeasure): boolean {
	if (event.type !== 'reading-taken' && event.type !== 'doubt-settled') return false;
	const { evidence, bend: at } = event.reading;
	if (evidence === undefined || at !== bend) return false;
	const lies = evidence !== 'angle' && evidence !== 'rotation';
	return kind === 'mark' ? lies : evidence === kind;
}

function isPassedOver(event: Event, { kind, bend, name }: ToMeasure): boolean {
	if (event.type !== 'bend-accepted' || event.unmeasured === undefined) return false;
	const { unmeasured } = event;
	return unmeasured.kind === kind && unmeasured.bend === bend && unmeasured.name === name;
}

/** A bend that was pulled or opened has another angle, and a check is another one once it was read anew. */
function isChange(event: Event, of: ToMeasure): boolean {
	switch (event.type) {
		case 'relief-chosen':
		case 'bend-reopened':
			return of.kind === 'angle' && event.bend === of.bend;
		case 'reading-taken':
		case 'doubt-settled':
			return isAnother(event.reading, of);
		default:
			return false;
	}
}

function isAnother(reading: Reading, { kind, bend, name }: ToMeasure): boolean {
	if (kind === 'check') return reading.of === 'check' && reading.name === name;
	return kind === 'angle' && reading.of === 'loaded' && reading.bend === bend;
}
