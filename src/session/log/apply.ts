import { at } from '../../maths/list.ts';
import { made, newSeat } from '../../springback/filter.ts';
import { isShort, target } from '../advice/bend-check.ts';
import type { Numbers } from '../protocol/asks.ts';
import type { AsideFact, Reason } from '../protocol/facts/index.ts';
import { dueCheck } from '../reading/check-reading.ts';
import { acceptBend, openBend, reopenBend } from './apply-bend.ts';
import {
	COUNTED_AS_ONE,
	type CountedAs,
	nextCheck,
	noteReading,
	replanned,
	skipMeasuring,
	takeReading,
	withCheck,
} from './apply-reading.ts';
import type { Event, Reading } from './events.ts';
import type { State } from './state.ts';
import { bendAt, OUT, withBend } from './state.ts';

/** The state after one event. Pure: whatever an event leads to is computed here from what is known. */
export function apply(state: State, event: Event): State {
	switch (event.type) {
		case 'tube-set':
			return tubeSet(state);
		case 'tube-still':
			return { ...withBend(state, state.bend, { target: target(state) }), phase: { at: 'pull' } };
		case 'reading-taken':
			return takeReading(state, event.reading, COUNTED_AS_ONE);
		case 'reading-noted':
			return noteReading(state, event.reading.value);
		case 'reading-doubted': {
			const { reading, expected, why, others, rest } = event;
			const reason: Reason[] = why === undefined ? event.reason : [{ code: 'as-logged', text: why }];
			const doubt = { reading, expected, reason, others, rest, amended: false };
			return { ...state, phase: { at: 'confirm', doubt, back: state.phase } };
		}
		case 'doubt-settled':
			return applySettled(state, event);
		case 'measuring-skipped':
			return skipMeasuring(state);
		case 'check-skipped':
			return nextCheck(withCheck(state, event.name, { reading: null, skipped: true }));
		case 'plan-chosen':
			return withChosenPlan(state, event.plan);
		case 'tube-taken-out':
			return { ...state, phase: OUT };
		case 'pull-chosen':
			return pullChosen(state, event.wanted);
		case 'relief-chosen':
			return openBend(state);
		case 'bend-accepted':
			return acceptBend(state);
		case 'bend-reopened':
			return reopenBend(state, event.bend, event.how);
		case 'tube-scrapped':
			return { ...state, phase: { at: 'done', scrapped: event.why } };
		case 'draft-kept':
		case 'note-written':
		case 'heat-told':
		case 'session-left':
		case 'session-resumed':
			return state;
		case 'record-voided':
		case 'reading-amended':
			throw new Error(`${event.type} concerns whole records: it is folded, not applied`);
	}
}

function pullChosen(state: State, wanted: number | undefined): State {
	const out: State = { ...state, phase: { at: 'set' } };
	// Against the advice the operator wants the tube moved; with it the stop rule may ask for the same stop in a fresh seat.
	if (wanted === undefined) return { ...out, forced: !isShort(state) };
	const { plan, bend } = state;
	const aimed = (numbers: readonly Numbers[]) =>
		numbers.map((each, i) => (i === bend - 1 ? { ...each, angle: wanted } : each));
	const corrected = plan.corrected && aimed(plan.corrected);
	// One that was gone back to keeps its target itself.
	const aimedAt = withBend(out, bend, { target: wanted });
	return { ...aimedAt, forced: false, plan: { ...plan, current: aimed(plan.current), corrected } };
}

function tubeSet(state: State): State {
	const bend = bendAt(state, state.bend);
	const numbers = at(state.plan.current, state.bend - 1);
	const later = bend.seats > 0;
	const filter = later ? newSeat(state.filter) : state.filter;
	const seated = withBend({ ...state, filter }, state.bend, {
		seats: bend.seats + 1,
		pointer: null,
		mark: bend.mark ?? numbers.fromStart,
		rotation: bend.rotation ?? numbers.rotation,
		seatedFrom: later ? made(state.filter).angle : 0,
		target: target(state),
	});
	return { ...seated, phase: { at: 'pull' } };
}

function applySettled(state: State, event: Extract<Event, { type: 'doubt-settled' }>): State {
	const { phase } = state;
	const { count } = event;
	const numbers = event.kept ? 1 : count;
	const settled = { count, numbers, confirmed: count === 2, setAside: event.setAside.length };
	if (phase.at === 'decide') return checkReadAgain(state, event, settled);
	if (phase.at !== 'confirm') return takeReading(state, event.reading, settled);
	const amended = phase.doubt.amended;
	const reading = amended ? phase.doubt.reading : event.reading;
	const back = { ...state, phase: phase.back, aside: [] };
	const weighed = amended ? COUNTED_AS_ONE : settled;
	const taken = event.first ? noteReading(back, reading.value, weighed.setAside) : takeReading(back, reading, weighed);
	const own = event.setAside.length === 0 || amended ? [] : [asideFact(state, event.reading, event.setAside)];
	return { ...taken, aside: [...own, ...taken.aside] };
}

/** What was asked for again at a decision: the decision stands open as before. */
function checkReadAgain(
	state: State,
	{ reading, setAside: not }: Extract<Event, { type: 'doubt-settled' }>,
	settled: CountedAs,
): State {
	const taken = replanned(takeReading({ ...state, aside: [] }, reading, settled));
	const own = not.length === 0 ? [] : [asideFact(state, reading, not)];
	return { ...taken, aside: [...own, ...taken.aside] };
}

function asideFact(state: State, { of, name, bend }: Reading, values: number[]): AsideFact {
	return {
		code: 'set-aside',
		of,
		values,
		...(bend === undefined ? {} : { bend }),
		...(name === undefined ? {} : { name, kind: dueCheck(state, name).check.kind }),
	};
}

function withChosenPlan(state: State, plan: 'new' | 'old'): State {
	const numbers = plan === 'old' ? state.plan.before : state.plan.corrected;
	return numbers === null ? state : { ...state, plan: { ...state.plan, plan, current: numbers } };
}
