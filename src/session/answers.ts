import { at, meanOf } from '../maths/list.ts';
import { readingVariance } from '../springback/filter.ts';
import { LONGEST_TEXT } from '../tube/names.ts';
import { offPiece, takeAmendment, takeEvidence } from './about-earlier.ts';
import { suggestion } from './advice/bend-check.ts';
import { reopenHindrance } from './advice/reopen.ts';
import { notStill } from './advice/still.ts';
import { decided } from './decided.ts';
import { type Decision, otherAsk, refuse } from './decision.ts';
import { apply } from './log/apply.ts';
import type { Event, Reading } from './log/events.ts';
import { undoable } from './log/fold.ts';
import type { State } from './log/state.ts';
import { bendAt } from './log/state.ts';
import type { Action, Answer, HalfAnswer } from './protocol/action.ts';
import type { ReadingKind } from './protocol/kinds.ts';
import { excludedAgain, excludedIn } from './reading/excluded-by-mechanics.ts';
import { noSuchNumber, noSuchNumberIn } from './reading/no-such-number.ts';
import { settleDoubt } from './reading/settle-doubt.ts';
import { takeReadings } from './reading/take.ts';
import { expectedOf, whyUnexpected } from './reading/unexpected.ts';

const UTF8 = new TextEncoder();

/** What an answer means here: the events it leads to, or why it cannot be taken. Pure; nothing changes by it. */
export function answerEvents(answer: Answer, state: State): Decision {
	const texts = [answer.note ?? '', answer.action?.do === 'scrap' ? answer.action.why : ''];
	if (texts.some((text) => UTF8.encode(text).length > LONGEST_TEXT))
		return refuse({ code: 'text-too-long', most: LONGEST_TEXT });
	const note: Event[] = answer.note === undefined ? [] : [{ type: 'note-written', text: answer.note }];
	if (!answer.action) return { events: note };
	const result = eventsOf(answer.action, state);
	if ('refused' in result) return result;
	const why = excludedAgain(state, answer.action) ?? excludedIn(state, result.events);
	return why === null ? { events: [...result.events, ...note] } : refuse(why);
}

function eventsOf(action: Action, state: State): Decision {
	switch (action.do) {
		case 'undo': {
			const entry = undoable(state);
			return entry === null ? refuse({ code: 'nothing-to-undo' }) : { events: [{ type: 'record-voided', entry }] };
		}
		case 'quit':
			return { events: [{ type: 'session-left' }] };
		case 'heat':
			return { events: [{ type: 'heat-told', heat: action.heat }] };
		case 'draft':
			return draftToKeep(state, action.draft);
		case 'amend':
			return takeAmendment(state, action);
		default:
			break;
	}
	if (state.phase.at === 'done') return refuse({ code: 'finished' });
	switch (action.do) {
		case 'scrap':
			return { events: [{ type: 'tube-scrapped', why: action.why }] };
		case 'evidence':
			return takeEvidence(state, action);
		case 'reopen': {
			if (action.how === 'relieve' && !state.start.job.mayOpen) return refuse({ code: 'may-not-open' });
			const why = reopenHindrance(state, action.bend);
			return why === null ? { events: [{ type: 'bend-reopened', bend: action.bend, how: action.how }] } : refuse(why);
		}
		default:
			return answerToAsk(action, state);
	}
}

/** The dial held counts with what is read after release, a greatest diameter with the least: until then nothing follows from it. */
function draftToKeep(state: State, draft: HalfAnswer): Decision {
	const at = draft.of === 'loaded' ? 'pull' : 'check';
	if (state.phase.at === 'done') return refuse({ code: 'finished' });
	if (state.phase.at !== at) return otherAsk(state.phase.at, { do: 'draft', draft });
	const why = draft.of === 'loaded' ? noSuchNumber(state, { of: 'loaded', value: draft.value }) : null;
	return why === null ? { events: [{ type: 'draft-kept', draft }] } : refuse(why);
}

/** Answers that belong to the open ask. */
function answerToAsk(action: Action, state: State): Decision {
	const { phase } = state;
	const why = noSuchNumberIn(state, action);
	if (why !== null) return refuse(why);
	switch (phase.at) {
		case 'set':
			if (action.do === 'ready') return ready(state, action);
			if (action.do === 'still') return still(state);
			if (action.do === 'plan') return planToChoose(state, action.plan);
			return otherAsk('set', action);
		case 'pull':
			if (action.do === 'loaded') return loaded(state, action);
			if (action.do === 'reseat') return { events: [{ type: 'tube-taken-out', bend: state.bend }] };
			return otherAsk('pull', action);
		case 'measure':
			if (action.do === 'angles') return angles(state, action.angles);
			if (action.do !== 'skip') return otherAsk('measure', action);
			if (phase.must) return refuse({ code: 'must-measure' });
			return { events: [{ type: 'measuring-skipped', bend: state.bend }] };
		case 'confirm':
			if (action.do === 'keep' || action.do === 'reading') return { events: settleDoubt(state, phase.doubt, action) };
			return otherAsk('confirm', action);
		case 'check': {
			const name = at(phase.queue, 0);
			if (action.do === 'reading')
				return { events: takeReadings(state, [{ of: 'check', name, value: action.reading }]) };
			if (action.do === 'skip') return { events: [{ type: 'check-skipped', name }] };
			return otherAsk('check', action);
		}
		case 'decide':
			return decided(action, state);
		case 'done':
			return refuse({ code: 'finished' });
	}
}

function ready(state: State, action: Extract<Action, { do: 'ready' }>): Decision {
	const { bend } = state;
	const readings: Reading[] = [];
	const add = (of: ReadingKind, value: number | undefined) => {
		if (value !== undefined) readings.push({ of, value, bend });
	};
	add('pointer', action.pointer);
	add('mark', action.mark);
	add('rotation', action.rotation);
	add('length', action.length);
	const started = state.bends.some((b) => b.seats > 0);
	const off = action.mark === undefined ? null : offPiece(state, action.mark);
	if (off) return refuse(off);
	if (action.length !== undefined && started) return refuse({ code: 'length-too-late' });
	const pulled = bendAt(state, bend).pulls.length > 0;
	if (pulled && (action.mark !== undefined || action.rotation !== undefined)) {
		return refuse({ code: 'pulled-already', bend });
	}
	const set: Event = { type: 'tube-set', bend };
	return { events: [set, ...takeReadings(apply(state, set), readings)] };
}

function still(state: State): Decision {
	const why = notStill(state);
	return why === null ? { events: [{ type: 'tube-still', bend: state.bend }] } : refuse(why);
}

function planToChoose(state: State, plan: 'new' | 'old'): Decision {
	if (state.plan.before === null) return refuse({ code: 'no-correction-yet' });
	if (bendAt(state, state.bend).seats > 0) {
		return refuse({ code: 'seated-already', bend: state.bend });
	}
	return { events: [{ type: 'plan-chosen', plan }] };
}

function loaded(state: State, action: Extract<Action, { do: 'loaded' }>): Decision {
	const { bend } = state;
	const { stop } = suggestion(state);
	const readings: Reading[] = [{ of: 'loaded', value: action.loaded, bend, stop }];
	if (action.released !== undefined) readings.push({ of: 'released', value: action.released, bend });
	return { events: takeReadings(state, readings) };
}

/** Independent readings of one angle agree within so many standard deviations of their difference. */
const AGREES = 2.8;
const LEAST_APART = 1;

/** Readings of one angle that differ by more than this are asked again: a degree, and more where the finder is known to scatter more. */
const mostApart = ({ filter }: State) =>
	Math.max(LEAST_APART, AGREES * Math.SQRT2 * Math.sqrt(readingVariance(filter, 'angle')));

function angles(state: State, values: readonly number[]): Decision {
	const { phase, bend } = state;
	const got = phase.at === 'measure' ? phase.got : [];
	const wanted = phase.at === 'measure' ? phase.wanted : 1;
	const all = [...got, ...values];
	const reading = (value: number): Reading => ({ of: 'angle', value, bend });
	if (all.length === 1) {
		const [value] = all as [number];
		const doubted = whyUnexpected(state, reading(value));
		if (doubted)
			return { events: [{ type: 'reading-doubted', reading: reading(value), ...doubted, others: [], rest: [] }] };
		return { events: [{ type: wanted === 2 ? 'reading-noted' : 'reading-taken', reading: reading(value) }] };
	}
	if (Math.max(...all) - Math.min(...all) > mostApart(state)) return { events: [disagreement(state, all)] };
	const mean = meanOf(all);
	const doubted = whyUnexpected(state, reading(mean));
	if (doubted)
		return { events: [{ type: 'reading-doubted', reading: reading(mean), ...doubted, others: [], rest: [] }] };
	const last = at(values, values.length - 1);
	const noted: Event[] = values.slice(0, -1).map((value) => ({ type: 'reading-noted', reading: reading(value) }));
	return { events: [...noted, { type: 'reading-taken', reading: reading(last) }] };
}

/** Of readings that disagree the least likely is asked again; the others stay beside it. */
function disagreement(state: State, all: readonly number[]): Event {
	const { bend } = state;
	const expected = expectedOf(state, { of: 'angle', value: at(all, 0), bend });
	const far = [...all].sort((a, b) => Math.abs(b - expected.value) - Math.abs(a - expected.value));
	const doubtful = at(far, 0);
	const others = [...all];
	others.splice(all.indexOf(doubtful), 1);
	return {
		type: 'reading-doubted',
		reading: { of: 'angle', value: doubtful, bend },
		expected,
		reason: [{ code: 'readings-differ', values: [...all], most: mostApart(state) }],
		others,
		rest: [],
	};
}
