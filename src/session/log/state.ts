import type { AsBuilt } from '../../fit/built-tube.ts';
import type { Filter } from '../../springback/filter.ts';
import type { Design } from '../plan/design.ts';
import type { AngleEstimate, Numbers, Plan } from '../protocol/asks.ts';
import type { AsideFact, Reason } from '../protocol/facts/index.ts';
import type { Correction } from '../protocol/notes.ts';
import type { Asked } from './asked.ts';
import type { Event, Expected, Reading } from './events.ts';
import type { Start } from './start.ts';

/** One record as the fold keeps it. `entry` is its number in the log; the start is number 0. */
export interface Entry {
	entry: number;
	at: string;
	events: readonly Event[];
	void: boolean;
	/** The set-up or the pull that it answers; null where it answers something else. */
	asked: Asked | null;
}

export interface Pull {
	/** Number of the record that holds it. */
	entry: number;
	seat: number;
	/** What the dial read with the tube snug before the pull, or null when nobody said. */
	pointer: number | null;
	stop: number;
	loaded: number;
	released: number | null;
	measured: readonly number[];
	/** Before which of `measured`, counted from 0, the bend was opened; absent when it was not. */
	opened?: readonly number[];
}

/** One bend as it stands. Angles in degrees, lengths in the job's unit. */
export interface BendState {
	/** Where the mark really was, from the start end; null before the first seat. */
	mark: number | null;
	/** How its plane really lies to the bend before's. */
	rotation: number | null;
	/** Whether its mark was told where it really is, and its rotation read back, not only set. */
	taped: boolean;
	readBack: boolean;
	/** The straight before it as measured, null when it was not. */
	leg: number | null;
	seats: number;
	/** Dial with the tube snug in this seat, when somebody said. */
	pointer: number | null;
	pulls: readonly Pull[];
	/** What the angle finder showed since it was last pulled or opened, each independent reading. */
	read: readonly number[];
	/** Last angle aimed at. */
	target: number;
	/** The angle that it was taken short of, the rest taking that up; null where it is wanted as it was aimed at. */
	shortOf: number | null;
	/** Estimated angle when the tube was last put in the die. */
	seatedFrom: number;
	/** Largest angle it had before it was opened; null when it never was. */
	relievedFrom: number | null;
	/** Its angle by pulls, dial and angle finder, without the checks taken since it was last bent. */
	told: AngleEstimate | null;
	/** How many times as far as common hands were taken to scatter when that was told. */
	toldAt: number;
	/** What it turned out to be, once accepted. */
	made: AngleEstimate | null;
	/** Where it lies by all that was read on the tube, once accepted; `radius` with which it was wrapped. */
	lies: { mark: number; rotation: number; radius: number } | null;
}

export interface CheckState {
	reading: number | null;
	skipped: boolean;
	/** How many readings it stands for; 0 where it tells nothing of the tube's shape. */
	count?: 0 | 1 | 2;
	/** Read again, and it stands. */
	confirmed?: boolean;
	/** Set aside, since what was told afterwards speaks against it. */
	contradicted?: true;
	/** Read again since something else spoke against it. */
	again?: true;
}

export interface Doubt {
	reading: Reading;
	expected: Expected;
	reason: readonly Reason[];
	others: readonly number[];
	rest: readonly Reading[];
	/** An amended doubted reading counts as it is, whatever was answered to the doubt. */
	amended: boolean;
}

/** What is being asked. */
export type Phase =
	/** `out`: the tube has certainly been out of the die since its last pull. */
	| { at: 'set'; out?: true }
	| { at: 'pull' }
	/**
	 * `must`: a bend that was opened, which only measuring makes known again; `first`: opened for the first time; `aside`: how many were set aside for
	 * those in `got`. */
	| { at: 'measure'; wanted: 1 | 2; got: readonly number[]; must: boolean; first?: boolean; aside?: number }
	| { at: 'confirm'; doubt: Doubt; back: Phase }
	| { at: 'check'; queue: readonly string[] }
	| { at: 'decide' }
	| { at: 'done'; scrapped: string | null };

export const OUT: Phase = { at: 'set', out: true };

/** Numbers for every bend; those of made bends are what they were made by. */
export interface PlanState {
	plan: Plan;
	current: readonly Numbers[];
	/** In force before the last correction; null before any. */
	before: readonly Numbers[] | null;
	/** What the last correction came to. */
	corrected: readonly Numbers[] | null;
	note: Correction | null;
}

/** A bend at work that waits while a made one is gone back to. */
export interface Suspended {
	bend: number;
	phase: Phase;
	forced: boolean;
	made: AngleEstimate;
}

export interface State {
	start: Start;
	design: Design;
	entries: readonly Entry[];
	/** The bend at work, counted from 1. */
	bend: number;
	bends: readonly BendState[];
	/** Length of the piece, as the layout has it or as it was really cut. */
	piece: number;
	checks: Readonly<Record<string, CheckState>>;
	/** All that is known of the made bends, as one estimate; null before the first is made. */
	built: AsBuilt | null;
	filter: Filter;
	phase: Phase;
	plan: PlanState;
	/** The next pull was chosen by the operator: it has to move the tube. */
	forced: boolean;
	suspended: Suspended | null;
	/** A measurement of this tube was skipped: the operator goes by the dial. */
	byDial: boolean;
	/** What was set aside, for the next reason given. */
	aside: readonly AsideFact[];
	/** The state before the newest record that can be undone. */
	past: State | null;
	/** Set while a finished session stands open at its last ask: what to go back to when it is left untouched. */
	finished: State | null;
}

/** Number that the next record will have. */
export function nextEntry(state: State): number {
	return state.entries.length + 1;
}

export function bendAt(state: State, bend: number): BendState {
	const found = state.bends[bend - 1];
	if (!found) throw new RangeError(`bend ${bend} does not exist: this tube has ${state.bends.length}`);
	return found;
}

/** The largest dial angle that a bend was pulled to, as read; 0 before its first pull. */
export function largestLoaded({ pulls }: BendState): number {
	return Math.max(0, ...pulls.map(({ loaded }) => loaded));
}

/** The largest dial angle that a bend was held at since it was last opened, as read; 0 before. */
export function heldSinceOpened({ pulls }: BendState): number {
	const opened = pulls.findLastIndex((pull) => pull.opened !== undefined);
	return Math.max(0, ...pulls.slice(opened + 1).map(({ loaded }) => loaded));
}

/** How many bends are accepted, from the start end. */
export function madeCount(state: State): number {
	const open = state.bends.findIndex((bend) => bend.made === null);
	return open < 0 ? state.bends.length : open;
}

export function withBend(state: State, bend: number, change: Partial<BendState>): State {
	return { ...state, bends: state.bends.map((old, i) => (i === bend - 1 ? { ...old, ...change } : old)) };
}
