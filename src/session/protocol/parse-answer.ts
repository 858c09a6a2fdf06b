import { at } from '../../maths/list.ts';
import { isObject } from '../../tube/as-json.ts';
import { nameWillDo } from '../../tube/names.ts';
import { parseQuantity } from '../../units/parse.ts';
import { UnitsError } from '../../units/units-error.ts';
import { advisedAt } from '../advice/whole-tube.ts';
import { type Reading, readingsIn } from '../log/events.ts';
import { isNumber } from '../log/form/is.ts';
import type { State } from '../log/state.ts';
import { dueCheck } from '../reading/check-reading.ts';
import type { Action, Answer } from './action.ts';
import { EVIDENCE_KINDS, EVIDENCE_MEASURE, type MeasuredIn, measuredIn, QUANTITY_OF } from './measured-in.ts';
import { misread, Unreadable, wants } from './misread.ts';
import type { RefusedNote } from './notes.ts';

type RawAnswer = Record<string, unknown>;

/** More readings of one angle nobody takes. */
const MOST_IN_LIST = 20;

/** Keys that each are an action of their own, and the keys that may ride with them. */
const ACTIONS: Readonly<Record<string, readonly string[]>> = {
	ready: ['pointer', 'mark', 'rotation', 'length'],
	still: [],
	plan: [],
	loaded: ['released'],
	reseat: [],
	angle: [],
	angles: [],
	skip: [],
	keep: [],
	reading: [],
	do: ['why'],
	undo: [],
	amend: [],
	evidence: [],
	reopen: [],
	scrap: [],
	heat: [],
	quit: [],
};

/**
 * Reads one answer as the line mode takes it. Numbers may be JSON numbers or strings as a person writes them, in the job's
 * units unless they say their own. Never throws: what cannot be read comes back as a refusal.
 */
export function parseAnswer(raw: unknown, state: State): Answer | { refused: RefusedNote } {
	try {
		return answerIn(raw, state);
	} catch (error) {
		if (!(error instanceof Unreadable)) throw error;
		return { refused: { note: 'refused', code: 'not-understood', reason: [error.fact] } };
	}
}

function answerIn(raw: unknown, state: State): Answer {
	if (!isObject(raw)) throw misread({ code: 'not-an-object' });
	const { note, ...rest } = raw;
	if (note !== undefined && typeof note !== 'string') throw misread({ code: 'note-no-text' });
	const keys = Object.keys(rest);
	const actions = keys.filter((key) => Object.hasOwn(ACTIONS, key));
	if (keys.length === 0) {
		if (note === undefined) throw misread({ code: 'empty-answer' });
		return { action: null, note };
	}
	if (actions.length > 1) throw misread({ code: 'several-actions', actions });
	const [key] = actions;
	if (key === undefined) throw misread({ code: 'unknown-action', keys, actions: Object.keys(ACTIONS) });
	const strange = keys.filter((k) => k !== key && !ACTIONS[key]?.includes(k));
	if (strange.length > 0) throw misread({ code: 'does-not-go-with', keys: strange, action: key });
	const action = actionOf(key, rest, state);
	return note === undefined ? { action } : { action, note };
}

function actionOf(key: string, raw: RawAnswer, state: State): Action {
	switch (key) {
		case 'ready':
			mustBeTrue(key, raw);
			return { do: 'ready', ...riders(raw, state) };
		case 'plan':
			if (raw.plan !== 'old' && raw.plan !== 'new') throw wants('plan', 'plan');
			return { do: 'plan', plan: raw.plan };
		case 'loaded': {
			const loaded = readingIn(raw.loaded, { of: 'loaded' }, state, 'loaded');
			if (raw.released === undefined) return { do: 'loaded', loaded };
			return { do: 'loaded', loaded, released: readingIn(raw.released, { of: 'released' }, state, 'released') };
		}
		case 'angle':
			return { do: 'angles', angles: [readingIn(raw.angle, { of: 'angle' }, state, 'angle')] };
		case 'angles': {
			const list = raw.angles;
			if (!Array.isArray(list) || list.length === 0) throw wants('angles', 'list');
			if (list.length > MOST_IN_LIST) throw misread({ code: 'list-too-long', most: MOST_IN_LIST });
			return { do: 'angles', angles: list.map((x) => readingIn(x, { of: 'angle' }, state, 'angles')) };
		}
		case 'reading':
			return { do: 'reading', reading: readingIn(raw.reading, readingAsked(state), state, 'reading') };
		case 'do':
			return doIn(raw);
		case 'amend':
			return amendment(raw.amend, state);
		case 'evidence':
			return evidenceIn(raw.evidence, state);
		case 'reopen':
			return reopening(raw.reopen);
		case 'scrap':
			return { do: 'scrap', why: textIn(raw.scrap, 'scrap') };
		case 'heat':
			if (typeof raw.heat !== 'string' || !nameWillDo(raw.heat)) throw wants('heat', 'heat');
			return { do: 'heat', heat: raw.heat };
		case 'still':
		case 'reseat':
		case 'skip':
		case 'keep':
		case 'undo':
		case 'quit':
			mustBeTrue(key, raw);
			return { do: key };
		default:
			throw misread({ code: 'unknown-action', keys: [key], actions: Object.keys(ACTIONS) });
	}
}

function riders(raw: RawAnswer, state: State): Omit<Extract<Action, { do: 'ready' }>, 'do'> {
	const found: Omit<Extract<Action, { do: 'ready' }>, 'do'> = {};
	for (const of of ['pointer', 'mark', 'rotation', 'length'] as const) {
		if (raw[of] !== undefined) found[of] = readingIn(raw[of], { of }, state, of);
	}
	return found;
}

function doIn(raw: RawAnswer): Action {
	const what = raw.do;
	if (what === 'scrap') return { do: 'scrap', why: textIn(raw.why, 'why') };
	if (raw.why !== undefined) throw misread({ code: 'why-without-scrap' });
	if (what === 'accept' || what === 'pull' || what === 'relieve') return { do: what };
	throw wants('do', 'do');
}

function amendment(raw: unknown, state: State): Action {
	if (!isObject(raw)) throw wants('amend', 'amend');
	onlyKeys(raw, ['entry', 'reading', 'of'], 'amend');
	const entry = wholeIn(raw.entry, 'amend.entry');
	const readings = readingsIn(state.entries.find((e) => e.entry === entry)?.events ?? []);
	const of = raw.of === undefined ? undefined : readings.find((reading) => reading.of === raw.of)?.of;
	if (raw.of !== undefined && of === undefined) {
		throw misread({ code: 'no-reading-of', line: entry, of: JSON.stringify(raw.of) });
	}
	const meant = readings.find((reading) => of === undefined || reading.of === of) ?? { of: 'angle' };
	const reading = readingIn(raw.reading, meant, state, 'amend.reading');
	return { do: 'amend', entry, reading, ...(of === undefined ? {} : { of }) };
}

function evidenceIn(raw: unknown, state: State): Action {
	if (!isObject(raw)) throw wants('evidence', 'evidence');
	onlyKeys(raw, ['kind', 'bend', 'reading'], 'evidence');
	const kind = EVIDENCE_KINDS.find((name) => name === raw.kind);
	if (!kind) throw wants('evidence.kind', 'evidence-kind');
	return {
		do: 'evidence',
		kind,
		bend: wholeIn(raw.bend, 'evidence.bend'),
		reading: scalar(raw.reading, EVIDENCE_MEASURE[kind], state, 'evidence.reading'),
	};
}

function reopening(raw: unknown): Action {
	if (!isObject(raw) || (raw.do !== 'pull' && raw.do !== 'relieve')) throw wants('reopen', 'reopen');
	onlyKeys(raw, ['bend', 'do'], 'reopen');
	return { do: 'reopen', bend: wholeIn(raw.bend, 'reopen.bend'), how: raw.do };
}

/** What a bare `reading` is a reading of: the doubted one, the check that is asked, or what is to be measured again. */
function readingAsked(state: State): Pick<Reading, 'of' | 'name'> {
	const { phase } = state;
	if (phase.at === 'confirm') return phase.doubt.reading;
	if (phase.at === 'check') return { of: 'check', name: at(phase.queue, 0) };
	const again = phase.at === 'decide' ? advisedAt(state).again : undefined;
	if (again === undefined) return { of: 'angle' };
	return { of: again.kind, ...(again.name === undefined ? {} : { name: again.name }) };
}

/** A number of the kind that a reading has. */
function readingIn(raw: unknown, reading: Pick<Reading, 'of' | 'name'>, state: State, place: string): number {
	const check = reading.of === 'check' ? dueCheck(state, reading.name ?? '').check : null;
	return check?.kind === 'ovality' && isObject(raw)
		? ratioIn(raw, state)
		: scalar(raw, measuredIn(reading.of, check?.kind), state, place);
}

function scalar(raw: unknown, measure: MeasuredIn, state: State, place: string): number {
	if (isNumber(raw)) return raw;
	if (typeof raw !== 'string') throw wants(place, 'number');
	try {
		return parseQuantity(raw, QUANTITY_OF[measure], state.start.job.units);
	} catch (error) {
		if (!(error instanceof UnitsError)) throw error;
		const { text, fault, wanted } = error;
		throw misread({ code: 'no-number', place, text, fault, wanted });
	}
}

function ratioIn(raw: RawAnswer, state: State): number {
	onlyKeys(raw, ['least', 'greatest'], 'reading');
	const least = scalar(raw.least, 'length', state, 'reading.least');
	const greatest = scalar(raw.greatest, 'length', state, 'reading.greatest');
	if (!(least > 0) || !(greatest >= least)) throw wants('reading', 'ratio');
	return least / greatest;
}

function wholeIn(raw: unknown, place: string): number {
	if (typeof raw !== 'number' || !Number.isInteger(raw) || raw < 1) throw wants(place, 'whole');
	return raw;
}

function textIn(raw: unknown, place: string): string {
	if (typeof raw !== 'string' || raw.trim() === '') throw wants(place, 'reason');
	return raw;
}

function mustBeTrue(key: string, raw: RawAnswer): void {
	if (raw[key] !== true) throw wants(key, 'true');
}

function onlyKeys(raw: RawAnswer, keys: readonly string[], place: string): void {
	const strange = Object.keys(raw).filter((key) => !keys.includes(key));
	if (strange.length > 0) throw misread({ code: 'does-not-belong', keys: strange, place });
}
