import { made, relieved } from '../../springback/filter.ts';
import { isShort, target } from '../advice/bend-check.ts';
import { isTakenUp } from '../advice/what-if.ts';
import { advisedAt, wantedAgain } from '../advice/whole-tube.ts';
import { estimated } from '../estimate/estimate.ts';
import { recorrect } from '../plan/correction.ts';
import { measurePhase, toldBy, withoutStaleChecks } from './apply-reading.ts';
import { backAt, beginAt } from './back-at.ts';
import type { Pull, State } from './state.ts';
import { bendAt, OUT, withBend } from './state.ts';

/** A bend that is opened without need is opened by about so much, degrees. */
const LEAST_OPENING = 0.5;

export function openBend(state: State): State {
	const bend = bendAt(state, state.bend);
	const { angle } = made(state.filter);
	const from = Math.max(angle, bend.relievedFrom ?? 0);
	const filter = relieved(state.filter, Math.max(LEAST_OPENING, angle - target(state)));
	const opened = withBend({ ...withoutStaleChecks(state), filter }, state.bend, {
		pulls: bend.pulls.map((row, i) => (i === bend.pulls.length - 1 ? openedNow(row) : row)),
		relievedFrom: from,
		read: [],
		...toldBy(filter),
	});
	return { ...opened, phase: { ...measurePhase(opened), must: true, first: bend.relievedFrom === null } };
}

/** What is measured from now on is no longer what the pull led to. */
function openedNow(row: Pull): Pull {
	return { ...row, opened: [...(row.opened ?? []), row.measured.length] };
}

export function acceptBend(state: State): State {
	const is = made(state.filter);
	// What the bends left take up is wanted no more: the correction now aims at this bend as it is.
	const aim = target(state);
	const wanted = isTakenUp(state)
		? { target: is.angle, shortOf: isShort(state) ? aim : null }
		: { target: aim, shortOf: null };
	const accepted = withBend(state, state.bend, { made: is, ...wanted });
	const corrected = { ...recorrect(estimated(accepted), { bend: state.bend }), forced: false };
	return state.suspended ? resumeSuspended(corrected) : nextBend(corrected);
}

function nextBend(state: State): State {
	if (state.bend === state.bends.length) return { ...state, phase: { at: 'done', scrapped: null } };
	const bend = state.bend + 1;
	return { ...state, bend, filter: beginAt(state, bend), aside: [], phase: { at: 'set' } };
}

/** Back to the bend that was at work before a made one was gone back to; the tube has been out of the die. */
function resumeSuspended(state: State): State {
	const { suspended } = state;
	if (!suspended) return state;
	const { forced, made: was } = suspended;
	const bend = bendAt(state, suspended.bend);
	const filter = bend.pulls.length === 0 ? beginAt(state, suspended.bend) : backAt(state, suspended.bend, was);
	const free = bend.pulls.length === 0 || suspended.phase.at === 'pull';
	const phase = free || suspended.phase.at === 'set' ? OUT : suspended.phase;
	return { ...state, bend: suspended.bend, filter, forced, phase, suspended: null };
}

/** As advised it is pulled at the job's risk, as any bend; against the advice the tube is to be moved. */
function isAdvised(state: State, bend: number): boolean {
	return state.phase.at === 'decide' && advisedAt(state).of === bend;
}

export function reopenBend(state: State, number: number, how: 'pull' | 'relieve'): State {
	const { bend: at, phase, forced } = state;
	const bend = bendAt(state, number);
	const suspended = { bend: at, phase, forced, made: made(state.filter) };
	const filter = backAt(state, number, bend.made ?? made(state.filter));
	// A bend that was only set is free again: its mark may still be corrected.
	const free =
		bendAt(state, at).pulls.length === 0
			? withBend(state, at, { mark: null, rotation: null, taped: false, readBack: false, leg: null, seats: 0 })
			: state;
	const aimed = withBend(free, number, { target: wantedAgain(state, number, how) });
	const back: State = { ...aimed, bend: number, filter, suspended, aside: [], phase: OUT };
	return how === 'relieve' ? openBend(back) : { ...back, forced: !isAdvised(state, number) };
}
