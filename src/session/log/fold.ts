import { at } from '../../maths/list.ts';
import { newTube } from '../../springback/filter.ts';
import { atDie } from '../../springback/several-dies.ts';
import { dieOf, toolingOf } from '../../tube/dies.ts';
import { numbersOf } from '../estimate/tube-at-work.ts';
import { correctedNumbers, differ, drawingNumbers, planWith } from '../plan/correction.ts';
import { designOf } from '../plan/design.ts';
import type { ReadingKind } from '../protocol/kinds.ts';
import { apply } from './apply.ts';
import { isBegun } from './apply-reading.ts';
import type { Asked } from './asked.ts';
import type { Event } from './events.ts';
import { canUndo } from './events.ts';
import { isReckoned } from './reckoned.ts';
import type { Start } from './start.ts';
import { bendAt, type Entry, type State } from './state.ts';

/** A record as the fold takes it: its number in the log, when it was written, and what happened. */
export interface SessionRecord {
	entry: number;
	at: string;
	events: readonly Event[];
	/** The set-up or the pull that it answers, where it does. */
	asked?: Asked | null;
}

/** The state of a session that has just begun. */
export function initial(start: Start): State {
	const design = designOf(start);
	const drawing = drawingNumbers({ design });
	const bends = drawing.map((numbers) => ({
		mark: null,
		rotation: null,
		taped: false,
		readBack: false,
		leg: null,
		seats: 0,
		pointer: null,
		pulls: [],
		read: [],
		target: numbers.angle,
		seatedFrom: 0,
		shortOf: null,
		relievedFrom: null,
		told: null,
		toldAt: 1,
		made: null,
		lies: null,
	}));
	const state: State = {
		start,
		design,
		entries: [],
		bend: 1,
		bends,
		piece: design.cut,
		checks: {},
		built: null,
		filter: atDie(newTube(start.prior), dieOf(start.job, 1)),
		phase: { at: 'set' },
		plan: { plan: 'new', current: drawing, before: null, corrected: null, note: null },
		forced: false,
		suspended: null,
		byDial: false,
		aside: [],
		past: null,
		finished: null,
	};
	return start.corners === undefined ? withGrownRadius(state) : state;
}

/** Begun before corners held: where the radius expected then moves a mark by more than a tape division, the marks are planned for it. */
function withGrownRadius(state: State): State {
	const { start, design, plan } = state;
	const by = design.nominal.bends.map((_, i) => toolingOf(start.job, i + 1));
	const expected = numbersOf(design.nominal, start.job.trim.start, by);
	const possible = design.nominal.straights.every((straight) => straight >= 0);
	const moved = expected.some(({ fromStart }, i) => Math.abs(fromStart - at(design.marks, i)) > start.job.tooling.tape);
	if (!possible || !moved) return state;
	return { ...state, plan: { ...plan, current: expected, before: plan.current, corrected: expected } };
}

/** The state after one more record, or null where it would hold what is no number: from there nothing could be asked or taken any more. */
export function nextState(state: State, record: SessionRecord): State | null {
	const next = afterRecord(state, record);
	return next !== null && isReckoned(next) ? next : null;
}

/**
 * The state after one more record of a log. The only way a state changes. What leads nowhere, as only an older version kept it, stands in the log and
 * can be taken back, but does not count.
 */
export function evolve(state: State, record: SessionRecord): State {
	const next = nextState(state, record);
	if (next !== null) return next;
	const past = canUndo(record.events) ? state : state.past;
	return { ...state, entries: [...state.entries, entryOf(record)], past };
}

function afterRecord(state: State, record: SessionRecord): State | null {
	const [first] = record.events;
	const entries = [...state.entries, entryOf(record)];
	const voided = record.events.find((event) => event.type === 'record-voided');
	if (voided) return undone(state, entries, voided.entry);
	const amended = record.events.find((event) => event.type === 'reading-amended');
	if (amended) return amendedBy(state, entries, record.entry);
	if (first?.type === 'session-resumed') return { ...standOpen(state), entries };
	if (first?.type === 'session-left') return { ...(state.finished ?? state), entries };
	return { ...withEvents(asAsked(state, record), record.events), entries };
}

/** A mark that is set for the first time was set as was asked then, whatever this version would ask. */
function asAsked(state: State, { events, asked }: SessionRecord): State {
	if (asked?.ask !== 'set' || events[0]?.type !== 'tube-set' || asked.bend !== state.bend) return state;
	const { bend, mark, rotation } = asked;
	if (bendAt(state, bend).mark !== null) return state;
	const current = state.plan.current.map((numbers, i) =>
		i === bend - 1 ? { ...numbers, fromStart: mark.fromStart, rotation } : numbers,
	);
	return { ...state, plan: { ...state.plan, current } };
}

function entryOf({ entry, at: time, events, asked = null }: SessionRecord): Entry {
	return { entry, at: time, events, void: false, asked };
}

function withEvents(state: State, events: readonly Event[]): State {
	const next = events.reduce(apply, state);
	return canUndo(events) ? { ...next, past: state, finished: null } : next;
}

/** A finished session that is opened again stands at its last ask, so that a last mistake can be undone. */
function standOpen(state: State): State {
	const last = state.past;
	return state.phase.at === 'done' && last ? { ...last, past: last, finished: state } : state;
}

function undone(state: State, entries: readonly Entry[], number: number): State {
	if (!state.past) throw new Error(`record ${number} cannot be undone: nothing came before it`);
	return {
		...state.past,
		entries: entries.map((entry) => (entry.entry === number ? { ...entry, void: true } : entry)),
	};
}

/** Number of the newest record that can be undone, or null. */
export function undoable(state: State): number | null {
	if (!state.past) return null;
	return state.entries.findLast((entry) => !entry.void && canUndo(entry.events))?.entry ?? null;
}

/** Folds everything anew with the amended readings, then says what the plan has become by it. */
function amendedBy(state: State, entries: readonly Entry[], number: number): State | null {
	const amendments = amendmentsIn(entries);
	let replayed = initial(state.start);
	for (const entry of entries) {
		const further = replay(replayed, entry, amendments.get(entry.entry) ?? []);
		if (further === null) return null;
		replayed = further;
	}
	const next = { ...correctedAsSet(replayed), entries, past: state, finished: null };
	// Numbers kept by choice stay; and where nothing changed there is no correction to tell of.
	const same = !differ(next.plan.current, state.plan.current);
	if (same) return { ...next, plan: { ...next.plan, note: state.plan.note } };
	if (next.plan.plan === 'old' && state.plan.plan === 'old') {
		return { ...next, plan: { ...next.plan, current: state.plan.current, note: state.plan.note } };
	}
	const before = { ...next, plan: { ...next.plan, current: state.plan.current } };
	return { ...next, plan: planWith(before, next.plan.current, { entry: number }) };
}

/** The bends left corrected for a mark that is set and stays where it was set, whatever would be asked for it now. */
function correctedAsSet(state: State): State {
	const { bends, plan } = state;
	const isSet = bends.some(({ mark, made }) => mark !== null && made === null);
	if (!isBegun(state) || !isSet || plan.plan === 'old') return state;
	const numbers = correctedNumbers(state);
	return { ...state, plan: { ...plan, current: numbers, corrected: numbers } };
}

interface Amendment {
	of: ReadingKind;
	value: number;
}

function amendmentsIn(entries: readonly Entry[]): Map<number, Amendment[]> {
	const found = new Map<number, Amendment[]>();
	for (const entry of entries) {
		if (entry.void) continue;
		for (const event of entry.events) {
			if (event.type !== 'reading-amended') continue;
			found.set(event.entry, [...(found.get(event.entry) ?? []), { of: event.of, value: event.value }]);
		}
	}
	return found;
}

function replay(state: State, entry: Entry, amendments: readonly Amendment[]): State | null {
	const skipped = entry.void || entry.events.some(concernsRecords);
	const entries = [...state.entries, entry];
	if (skipped) return { ...state, entries };
	const events = amendments.reduce(amendEvents, entry.events);
	const next = nextState(state, { ...entry, events });
	if (next === null) return null;
	const { phase } = next;
	const amended = amendments.length > 0 && phase.at === 'confirm';
	return amended
		? { ...next, entries, phase: { ...phase, doubt: { ...phase.doubt, amended: true } } }
		: { ...next, entries };
}

/** Such an event has done its work when the records are folded anew. */
function concernsRecords(event: Event): boolean {
	if (event.type === 'reading-doubted') return event.reading.amends !== undefined;
	return event.type === 'record-voided' || event.type === 'reading-amended';
}

/** Two readings given in one answer become the one that takes their place. */
function amendEvents(events: readonly Event[], amendment: Amendment): readonly Event[] {
	const taken = events.some((event) => event.type === 'reading-taken' && event.reading.of === amendment.of);
	const kept = events.filter(
		(event) => !(taken && event.type === 'reading-noted' && event.reading.of === amendment.of),
	);
	return kept.map((event) => amendEvent(event, amendment));
}

function amendEvent(event: Event, { of, value }: Amendment): Event {
	switch (event.type) {
		case 'reading-taken':
		case 'reading-noted':
			return event.reading.of === of ? { ...event, reading: { ...event.reading, value } } : event;
		case 'reading-doubted': {
			const rest = event.rest.map((reading) => (reading.of === of ? { ...reading, value } : reading));
			const reading = event.reading.of === of ? { ...event.reading, value } : event.reading;
			return { ...event, reading, rest };
		}
		case 'doubt-settled':
			return event.reading.of === of
				? { ...event, reading: { ...event.reading, value }, count: 1, setAside: [] }
				: event;
		default:
			return event;
	}
}
