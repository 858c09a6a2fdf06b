import { at } from '../../maths/list.ts';
import { bentAsField } from '../../tube/bent-as.ts';
import type { BentAs } from '../../tube/job.ts';
import { tubeAtWork } from '../estimate/tube-at-work.ts';
import { canUndo, readingsIn } from '../log/events.ts';
import type { Entry, State } from '../log/state.ts';
import { doneNote } from '../outputs.ts';
import { predicted } from '../plan/correction.ts';
import type { AngleEstimate } from '../protocol/asks.ts';
import type { DoneNote } from '../protocol/notes.ts';
import { listedOf } from './verdict.ts';

export type SessionStatus = 'open' | 'done' | 'scrapped';

/** One kept session in full, as `log ID --json` prints it. Lengths in the job's unit. */
export interface SessionView {
	id: string;
	job: State['start']['job'];
	status: SessionStatus;
	started: string;
	ended: string | null;
	bends: {
		design: number;
		target: number;
		pulls: PullView[];
		made: AngleEstimate | null;
	}[];
	checks: { name: string; design: number; reading: number | null }[];
	asBuilt: {
		straights: number[];
		bends: { angle: number; rotation: number }[];
		endOffset: number;
		endAngle: number;
		/** Null, as `chance` and `fits`, as long as a bend is not made. */
		sd: DoneNote['sd'];
		chance: DoneNote['chance'];
		fits: boolean | null;
	};
	notes: string[];
	events: number;
	/** Where it is not bent as drawn. */
	bentAs?: BentAs;
}

export interface PullView {
	seat: number;
	pointer: number | null;
	stop: number;
	loaded: number;
	released: number | null;
	measured: number[];
	/** Before which of `measured`, counted from 0, the bend was opened; absent when it was not. */
	opened?: readonly number[];
	void: boolean;
}

export function status(state: State): SessionStatus {
	const { phase } = state.finished ?? state;
	if (phase.at !== 'done') return 'open';
	return phase.scrapped === null ? 'done' : 'scrapped';
}

export function sessionView(state: State): SessionView {
	const { checks, sd, chance, fits } = doneNote(state, '');
	const { endOffset, endAngle } = predicted(state, state.plan.current);
	const { shape } = tubeAtWork(state, state.plan.current);
	const standing = status(state);
	return {
		id: state.start.id,
		job: state.start.job,
		status: standing,
		started: state.start.at,
		ended: standing === 'open' ? null : endedAt(state),
		bends: state.bends.map((bend, i) => ({
			design: at(state.design.shape.bends, i).angle,
			target: bend.target,
			pulls: pullsOf(state, i + 1),
			made: bend.made,
		})),
		checks,
		asBuilt: {
			straights: [...shape.straights],
			bends: shape.bends.map(({ angle, rotation }) => ({ angle, rotation })),
			endOffset,
			endAngle,
			sd,
			chance,
			fits: sd === null ? null : fits,
		},
		notes: notesOf(state),
		events: state.entries.reduce((sum, entry) => sum + entry.events.length, 0),
		...bentAsField(state.start.job),
	};
}

/** A line of `log --json`. */
export interface SessionSummary {
	id: string;
	job: string;
	status: SessionStatus;
	started: string;
	bendsDone: number;
	bends: number;
	fits: boolean | null;
	/** Where it does not surely fit, but is more likely to than not. */
	mayFit?: true;
	/** Where it is not bent as drawn. */
	bentAs?: BentAs;
}

export function sessionSummary(state: State): SessionSummary {
	const standing = status(state);
	return {
		id: state.start.id,
		job: state.start.job.name,
		status: standing,
		started: state.start.at,
		bendsDone: state.bends.filter((bend) => bend.made !== null).length,
		bends: state.bends.length,
		...outcome(state, standing),
		...bentAsField(state.start.job),
	};
}

function outcome(state: State, standing: SessionStatus): Pick<SessionSummary, 'fits' | 'mayFit'> {
	if (standing === 'open') return { fits: null };
	const { fits, mayFit } = listedOf(state);
	return { fits, ...(mayFit ? { mayFit: true } : {}) };
}

/** What the operator wrote, in order: notes, and why a tube was scrapped. */
function notesOf(state: State): string[] {
	return state.entries.flatMap((entry) =>
		entry.events.flatMap((event) => {
			if (event.type === 'note-written') return [event.text];
			return event.type === 'tube-scrapped' && !entry.void ? [`Scrapped: ${event.why}`] : [];
		}),
	);
}

function endedAt(state: State): string | null {
	return state.entries.findLast((entry) => !entry.void && canUndo(entry.events))?.at ?? null;
}

/** Every pull of a bend in the order made, those taken back too: the tube was pulled, only the number went. */
function pullsOf(state: State, bend: number): PullView[] {
	const standing = (state.bends[bend - 1]?.pulls ?? []).map((pull) => ({
		...pull,
		measured: [...pull.measured],
		void: false,
	}));
	const undone = state.entries.filter((entry) => entry.void).flatMap((entry) => voidPull(state, entry, bend));
	return [...standing, ...undone].sort((a, b) => a.entry - b.entry).map(({ entry, ...pull }) => pull);
}

function voidPull(state: State, entry: Entry, bend: number): (PullView & { entry: number })[] {
	const readings = readingsIn(entry.events);
	const loaded = readings.find((reading) => reading.of === 'loaded' && reading.bend === bend);
	if (!loaded) return [];
	return [
		{
			entry: entry.entry,
			seat: seatAt(state, entry, bend),
			pointer: null,
			stop: loaded.stop ?? loaded.value,
			loaded: loaded.value,
			released: readings.find((reading) => reading.of === 'released')?.value ?? null,
			measured: [],
			void: true,
		},
	];
}

/** In which seat of the bend an entry was written: how often the tube had been set there and not taken back by then. */
function seatAt(state: State, entry: Entry, bend: number): number {
	const before = state.entries.filter((e) => e.entry < entry.entry);
	const undone = new Set(
		before.flatMap((e) => e.events.flatMap((event) => (event.type === 'record-voided' ? [event.entry] : []))),
	);
	const sets = before.filter((e) => e.events.some((event) => event.type === 'tube-set' && event.bend === bend));
	return sets.filter((e) => !undone.has(e.entry)).length;
}

/** Between which angles a bend lies within its tolerance. */
export function bendLimits(job: State['start']['job'], target: number): { low: number; high: number } {
	return { low: target - job.tolerance.under, high: target + job.tolerance.over };
}
