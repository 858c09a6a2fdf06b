import type { HalfAnswer } from '../../protocol/action.ts';
import type { ToMeasure } from '../../protocol/kinds.ts';
import type { Event, Reading } from '../events.ts';
import { isDoubtFact, isEvidenceKind, isReadingKind } from './facts.ts';
import {
	either,
	type FormsByTag,
	type Is,
	isByTag,
	isList,
	isNumber,
	isOf,
	isOneOf,
	isOrdinal,
	isText,
	orAbsent,
} from './is.ts';
import { isAnew } from './start.ts';

const isReading: Is<Reading> = isOf({
	of: isReadingKind,
	value: isNumber,
	bend: orAbsent(isOrdinal),
	name: orAbsent(isText),
	stop: orAbsent(isNumber),
	evidence: orAbsent(isEvidenceKind),
	amends: orAbsent(isOrdinal),
});

const isToMeasure: Is<ToMeasure> = isOf({
	kind: isOneOf('angle', 'check', 'mark', 'rotation'),
	bend: orAbsent(isOrdinal),
	name: orAbsent(isText),
});

const isHalfAnswer: Is<HalfAnswer> = isOf({ of: isOneOf('loaded', 'greatest'), value: isNumber });

const doubted = {
	reading: isReading,
	expected: isOf({ value: isNumber, sd: isNumber }),
	others: isList(isNumber),
	rest: isList(isReading),
};

const ofBend = { bend: isOrdinal };
const ofReading = { reading: isReading };

const FORMS: FormsByTag<'type', Event> = {
	'tube-set': ofBend,
	'tube-still': ofBend,
	'reading-taken': ofReading,
	'reading-noted': ofReading,
	// Logs of earlier versions have a sentence in place of the reason.
	'reading-doubted': either(
		isOf({ ...doubted, reason: isList(isDoubtFact), why: orAbsent(isText) }),
		isOf({ ...doubted, why: isText }),
	),
	'doubt-settled': {
		...ofReading,
		count: isOneOf(1, 2),
		setAside: isList(isNumber),
		kept: orAbsent(isOneOf(true)),
		first: orAbsent(isOneOf(true)),
	},
	'measuring-skipped': ofBend,
	'check-skipped': { name: isText },
	'plan-chosen': { plan: isOneOf('new', 'old') },
	'tube-taken-out': ofBend,
	'bend-accepted': { ...ofBend, declined: orAbsent(isOrdinal), unmeasured: orAbsent(isToMeasure) },
	'pull-chosen': { ...ofBend, wanted: orAbsent(isNumber) },
	'relief-chosen': ofBend,
	'bend-reopened': { ...ofBend, how: isOneOf('pull', 'relieve') },
	'tube-scrapped': { why: isText },
	'record-voided': { entry: isOrdinal },
	'reading-amended': { entry: isOrdinal, of: isReadingKind, value: isNumber },
	'draft-kept': { draft: isHalfAnswer },
	'note-written': { text: isText },
	'heat-told': { heat: isText },
	'session-left': {},
	'session-resumed': { anew: orAbsent(isAnew) },
};

/** Whether this version knows events of this type. */
export const isEventType = (type: string): boolean => Object.hasOwn(FORMS, type);

/** Whether an event has the form of its type. */
export const isEvent: Is<Event> = isByTag('type', FORMS);
