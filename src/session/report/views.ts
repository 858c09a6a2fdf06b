import { at } from '../../maths/list.ts';
import { bentAsField } from '../../tube/bent-as.ts';
import type { BentAs } from '../../tube/job.ts';
import type { Warning } from '../../tube/warnings.ts';
import { begunAs, givenIn } from '../batch/given.ts';
import { tubeAtWork } from '../estimate/tube-at-work.ts';
import { canUndo } from '../log/events.ts';
import type { State } from '../log/state.ts';
import { doneNote } from '../outputs.ts';
import { predicted } from '../plan/correction.ts';
import { sessionWarnings } from '../plan/job-warnings.ts';
import type { AngleEstimate } from '../protocol/asks.ts';
import type { DoneNote } from '../protocol/notes.ts';
import { type PullView, pullsOf, type SetUpView, setUpsOf } from './set-ups.ts';
import { listedOf } from './verdict.ts';

export const SESSION_STATUSES = ['open', 'done', 'scrapped'] as const;
export type SessionStatus = (typeof SESSION_STATUSES)[number];

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
		setUps: SetUpView[];
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
	/** Of the tube: as told, else as the job has it; absent where nobody said. */
	heat?: string;
	/** How many are wanted, and which of them it is; absent where one tube is wanted. */
	quantity?: number;
	piece?: number;
	/** On a simulated bender: no tube was bent. */
	simulated?: true;
	/** What was warned of at the start; absent where nothing was. */
	warnings?: Warning[];
	/** What the operator wrote, in order: notes, and why the tube was scrapped. */
	notes: Written[];
	events: number;
	/** Where it is not bent as drawn. */
	bentAs?: BentAs;
}

/** A text as the operator wrote it. */
export interface Written {
	of: 'note' | 'scrap';
	text: string;
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
	const warnings = sessionWarnings(state);
	return {
		id: state.start.id,
		job: state.start.job,
		status: standing,
		started: state.start.at,
		ended: standing === 'open' ? null : endedAt(state),
		bends: state.bends.map((bend, i) => ({
			design: at(state.design.shape.bends, i).angle,
			target: bend.target,
			setUps: setUpsOf(state, i + 1),
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
		...givenIn(state),
		...(warnings.length > 0 && { warnings }),
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
	/** How many are wanted, and which of them it is, where given. */
	quantity?: number;
	piece?: number;
	/** On a simulated bender: no tube was bent. */
	simulated?: true;
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
		...fitSoFar(state, standing),
		...begunAs(state.start),
		...bentAsField(state.start.job),
	};
}

function fitSoFar(state: State, standing: SessionStatus): Pick<SessionSummary, 'fits' | 'mayFit'> {
	if (standing === 'open') return { fits: null };
	const { fits, mayFit } = listedOf(state);
	return { fits, ...(mayFit ? { mayFit: true } : {}) };
}

function notesOf(state: State): Written[] {
	return state.entries.flatMap((entry) =>
		entry.events.flatMap((event): Written[] => {
			if (event.type === 'note-written') return [{ of: 'note', text: event.text }];
			return event.type === 'tube-scrapped' && !entry.void ? [{ of: 'scrap', text: event.why }] : [];
		}),
	);
}

function endedAt(state: State): string | null {
	return state.entries.findLast((entry) => !entry.void && canUndo(entry.events))?.at ?? null;
}
