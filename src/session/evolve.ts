import { made, newBend, newSeat, observe, pull, relieved, reopened } from '../springback/filter.ts';
import { normalizeRotation } from '../tube/angles.ts';
import { at } from './as-built.ts';
import { acceptance, atLimit, isOver, isShort, target } from './bend-check.ts';
import { checksDue, learnFromCheck } from './check-reading.ts';
import { differ, recorrect } from './correction.ts';
import type { Event, Reading } from './events.ts';
import type { BendState, Phase, State } from './state.ts';
import { bendAt, nextEntry, withBend } from './state.ts';

/** The state after one event. Pure: whatever an event leads to is computed here from what is known. */
export function apply(state: State, event: Event): State {
	switch (event.type) {
		case 'tube-set':
			return tubeSet(state);
		case 'reading-taken':
			return takeReading(state, event.reading, 1, false);
		case 'reading-noted':
			return noteReading(state, event.reading.value);
		case 'reading-doubted': {
			const { reading, expected, why, others, rest } = event;
			const doubt = { reading, expected, why, others, rest, amended: false };
			return { ...state, phase: { at: 'confirm', doubt, back: state.phase } };
		}
		case 'doubt-settled':
			return settleDoubt(state, event);
		case 'measuring-skipped':
			return skipMeasuring(state);
		case 'check-skipped':
			return nextCheck(withCheck(state, event.name, { reading: null, skipped: true }));
		case 'plan-chosen':
			return choosePlan(state, event.plan);
		case 'tube-taken-out':
			return { ...state, phase: { at: 'set' } };
		case 'pull-chosen':
			// Against the advice the operator wants the tube moved; with it the stop rule may ask for the same stop in a fresh seat.
			return { ...state, forced: !isShort(state), phase: { at: 'set' } };
		case 'relief-chosen':
			return openBend(state);
		case 'bend-accepted':
			return acceptBend(state);
		case 'bend-reopened':
			return reopenBend(state, event.bend, event.how);
		case 'tube-scrapped':
			return { ...state, phase: { at: 'done', scrapped: event.why } };
		case 'note-written':
		case 'session-left':
		case 'session-resumed':
			return state;
		case 'record-voided':
		case 'reading-amended':
			throw new Error(`${event.type} concerns whole records: it is folded, not applied`);
	}
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

/** `count`: how many independent readings it stands for; `confirmed`: read again, and it stands. */
function takeReading(state: State, reading: Reading, count: number, confirmed: boolean): State {
	const { of, value } = reading;
	const number = reading.bend ?? state.bend;
	switch (of) {
		case 'pointer': {
			const filter = observe(state.filter, 'pointer', value, { readings: count, confirmed });
			return withBend({ ...state, filter }, number, { pointer: value });
		}
		case 'mark':
			return evidenceTaken(withBend(state, number, { mark: value, leg: null }), reading);
		case 'rotation':
			return evidenceTaken(withBend(state, number, { rotation: normalizeRotation(value) }), reading);
		case 'length':
			return lengthTaken(state, reading, number);
		case 'loaded':
			return loadedTaken(state, reading);
		case 'released': {
			const filter = observe(state.filter, 'released', value, { readings: count, confirmed });
			return afterPull(withLastPull({ ...state, filter }, { released: value }));
		}
		case 'angle':
			return angleTaken(state, value, count, confirmed);
		case 'check': {
			const filter = learnFromCheck(state, reading.name ?? '', value, count);
			return nextCheck(withCheck({ ...state, filter }, reading.name ?? '', { reading: value, skipped: false }));
		}
	}
}

function lengthTaken(state: State, reading: Reading, bend: number): State {
	if (reading.evidence === 'leg') return evidenceTaken(withBend(state, bend, { leg: reading.value }), reading);
	if (reading.evidence === 'farEndToMark') {
		return evidenceTaken(withBend(state, bend, { mark: state.piece - reading.value, leg: null }), reading);
	}
	return { ...state, piece: reading.value };
}

/** Evidence about the tube changes what is left to do, as soon as a bend is made. */
function evidenceTaken(state: State, reading: Reading): State {
	return reading.evidence && state.bends.some((bend) => bend.made !== null) ? replanned(state) : state;
}

/** Corrects anew after something else than an accepted bend; nothing is said where nothing changes. */
function replanned(state: State): State {
	const next = recorrect(state, { entry: nextEntry(state) });
	return differ(next.plan.current, state.plan.current) ? next : state;
}

function loadedTaken(state: State, { value, stop }: Reading): State {
	const bend = bendAt(state, state.bend);
	const asked = stop ?? value;
	const row = {
		entry: nextEntry(state),
		seat: bend.seats,
		pointer: bend.pointer,
		stop: asked,
		loaded: value,
		released: null,
		measured: [],
	};
	const pulled = withBend(state, state.bend, { pulls: [...bend.pulls, row], target: target(state) });
	return afterPull({ ...pulled, filter: pull(state.filter, asked, value), forced: false, aside: null });
}

/** Pull again where the tube lies as long as the dial alone shows it short, else measure. */
function afterPull(state: State): State {
	const again = acceptance(state).likelyShort && !atLimit(state);
	return { ...state, phase: again ? { at: 'pull' } : measurePhase(state) };
}

function measurePhase(state: State): Phase {
	return { at: 'measure', wanted: wantedReadings(state), got: [], must: false };
}

/** Where little is known yet a blunder would not stand out: two independent readings then. */
function wantedReadings(state: State): 1 | 2 {
	const first = state.bends.every((bend) => bend.pulls.every((row) => row.measured.length === 0));
	return first && made(state.filter).sd > 0.6 ? 2 : 1;
}

function noteReading(state: State, value: number): State {
	const phase = state.phase;
	const got = phase.at === 'measure' ? phase.got : [];
	const must = phase.at === 'measure' && phase.must;
	return { ...state, phase: { at: 'measure', wanted: 1, got: [...got, value], must } };
}

function angleTaken(state: State, value: number, count: number, confirmed: boolean): State {
	const got = state.phase.at === 'measure' ? state.phase.got : [];
	const all = confirmed ? [value] : [...got, value];
	const mean = all.reduce((sum, x) => sum + x, 0) / all.length;
	const readings = confirmed ? count : all.length;
	const filter = observe(state.filter, 'angle', mean, { readings, confirmed });
	const row = bendAt(state, state.bend).pulls.at(-1);
	return afterAngle(withLastPull({ ...state, filter }, { measured: [...(row?.measured ?? []), ...all] }));
}

/** Goes on by the dial; a first reading already given counts alone. */
function skipMeasuring(state: State): State {
	const { phase } = state;
	const [noted] = phase.at === 'measure' ? phase.got : [];
	if (noted !== undefined) return angleTaken({ ...state, phase: measurePhase(state) }, noted, 1, false);
	return { ...state, phase: isShort(state) && !atLimit(state) ? { at: 'pull' } : { at: 'decide' } };
}

/** Checks are asked when the angle alone would be accepted. */
function afterAngle(state: State): State {
	if (isShort(state) || isOver(state)) return { ...state, phase: { at: 'decide' } };
	return toChecks(state, checksDue(state, state.bend));
}

function nextCheck(state: State): State {
	return toChecks(state, state.phase.at === 'check' ? state.phase.queue.slice(1) : []);
}

function toChecks(state: State, queue: readonly string[]): State {
	return { ...state, phase: queue.length > 0 ? { at: 'check', queue } : { at: 'decide' } };
}

function settleDoubt(state: State, event: Extract<Event, { type: 'doubt-settled' }>): State {
	const { phase } = state;
	if (phase.at !== 'confirm') return takeReading(state, event.reading, event.count, true);
	const amended = phase.doubt.amended;
	const reading = amended ? phase.doubt.reading : event.reading;
	const back = { ...state, phase: phase.back };
	const taken = takeReading(back, reading, amended ? 1 : event.count, true);
	const aside = event.setAside === null || amended ? null : `A reading of ${show(event.setAside)} was set aside.`;
	return { ...taken, aside: aside ?? taken.aside };
}

function choosePlan(state: State, plan: 'new' | 'old'): State {
	const numbers = plan === 'old' ? state.plan.before : state.plan.corrected;
	return numbers === null ? state : { ...state, plan: { ...state.plan, plan, current: numbers } };
}

function openBend(state: State): State {
	const bend = bendAt(state, state.bend);
	const from = Math.max(made(state.filter).angle, bend.relievedFrom ?? 0);
	const opened = withBend({ ...state, filter: relieved(state.filter) }, state.bend, { relievedFrom: from });
	return { ...opened, phase: { at: 'measure', wanted: 1, got: [], must: true } };
}

function acceptBend(state: State): State {
	const accepted = withBend(state, state.bend, { made: made(state.filter), target: target(state) });
	const corrected = { ...recorrect(accepted, { bend: state.bend }), forced: false };
	return state.suspended ? resumeSuspended(corrected) : nextBend(corrected);
}

function nextBend(state: State): State {
	if (state.bend === state.bends.length) return { ...state, phase: { at: 'done', scrapped: null } };
	return { ...state, bend: state.bend + 1, filter: newBend(state.filter), phase: { at: 'set' } };
}

/** Back to the bend that was at work before a made one was gone back to; the tube has been out of the die. */
function resumeSuspended(state: State): State {
	const { suspended } = state;
	if (!suspended) return state;
	const bend = bendAt(state, suspended.bend);
	const filter =
		bend.pulls.length === 0 ? newBend(state.filter) : reopened(state.filter, suspended.made, largest(bend));
	const phase: Phase = suspended.phase.at === 'pull' ? { at: 'set' } : suspended.phase;
	return { ...state, bend: suspended.bend, filter, phase, suspended: null };
}

function reopenBend(state: State, number: number, how: 'pull' | 'relieve'): State {
	const bend = bendAt(state, number);
	const suspended = { bend: state.bend, phase: state.phase, made: made(state.filter) };
	const filter = reopened(state.filter, bend.made ?? { angle: bend.target, sd: 0 }, largest(bend));
	const back: State = { ...state, bend: number, filter, suspended, phase: { at: 'set' } };
	return how === 'relieve' ? openBend(back) : { ...back, forced: true };
}

function largest(bend: BendState): number {
	return Math.max(0, ...bend.pulls.map((row) => row.loaded));
}

function withLastPull(state: State, change: Partial<BendState['pulls'][number]>): State {
	const { pulls } = bendAt(state, state.bend);
	return withBend(state, state.bend, {
		pulls: pulls.map((row, i) => (i === pulls.length - 1 ? { ...row, ...change } : row)),
	});
}

function withCheck(state: State, name: string, check: { reading: number | null; skipped: boolean }): State {
	return { ...state, checks: { ...state.checks, [name]: check } };
}

function show(value: number): string {
	return String(Number(value.toFixed(3)));
}
