import { at } from '../maths/list.ts';
import { isInBand } from '../tube/tolerance.ts';
import { lastCanMend } from './advice/last-bend-mends.ts';
import { ask } from './ask.ts';
import type { SessionRecord } from './log/fold.ts';
import type { State } from './log/state.ts';
import { differ, planWith } from './plan/correction.ts';
import type { CorrectedNote, Correction, DoneNote, Output } from './protocol/notes.ts';
import { cutsOf, finishList } from './report/finish-list.ts';
import { withForetold } from './report/foretold.ts';
import { tellsMostOf, verdictOf } from './report/verdict.ts';

/** What a shell shows after a record: the correction if there was one, then the next ask or the end. */
export function outputsAfter(before: State, after: State, record: SessionRecord, log: string): Output[] {
	const corrected = correctionBy(before, after, record);
	return [...correctedNotes(after, corrected), standing(after, log)];
}

/** The correction in force, as it was told when it came: what has been measured since has no part in it. */
export function lastAnnounced(state: State): CorrectedNote[] {
	const { note } = state.plan;
	let then = state;
	while (then.past !== null && then.past.plan.note === note) then = then.past;
	return correctedNotes(then, note);
}

/** A correction as it is told: how sure it is, and what the last bend could still mend, while that is a question. */
function correctedNotes(state: State, note: Correction | null): CorrectedNote[] {
	if (note === null) return [];
	const mend = lastCanMend(state);
	return [{ ...withForetold(state, note), ...(mend ? { mend } : {}) }];
}

/** The open ask, or the closing note. */
export function standing(state: State, log: string): Output {
	return ask(state) ?? doneNote(state, log);
}

/** The correction that a record led to; null where it led to none. */
export function correctionBy(before: State, after: State, record: SessionRecord): Correction | null {
	const types = record.events.map((event) => event.type);
	if (types.includes('record-voided')) {
		// What was undone takes its correction with it: the plan is as it was, and only that is said.
		const changed = differ(before.plan.current, after.plan.current);
		const seen = { ...after, plan: { ...after.plan, current: before.plan.current } };
		return changed ? planWith(seen, after.plan.current, { entry: record.entry }).note : null;
	}
	if (types.includes('plan-chosen')) return null;
	return after.plan.note === before.plan.note ? null : after.plan.note;
}

/** What the tube has become. Lengths in the job's unit, angles in degrees. */
export function doneNote(state: State, log: string): DoneNote {
	const scrapped = state.phase.at === 'done' && state.phase.scrapped !== null;
	const whole = state.bends.every((bend) => bend.made !== null);
	const [start, far] = cutsOf(state);
	const verdict = verdictOf(state);
	return {
		note: 'done',
		scrapped,
		bends: state.bends.map((bend, i) => ({
			design: at(state.design.shape.bends, i).angle,
			target: bend.target,
			made: bend.made?.angle ?? null,
			sd: bend.made?.sd ?? null,
			pulls: bend.pulls.length,
			seats: bend.seats,
		})),
		checks: state.design.checks.map(({ check, design }) => ({
			name: check.name,
			design,
			reading: state.checks[check.name]?.reading ?? null,
		})),
		trim: whole ? { start: start.off, end: far.off } : null,
		endOffset: verdict?.endOffset ?? null,
		endAngle: verdict?.endAngle ?? null,
		sd: verdict?.sd ?? null,
		chance: verdict?.chance ?? null,
		tellsMost: verdict && tellsMostOf(state, verdict),
		shape: verdict?.shape ?? null,
		outside: outsideDrawing(state),
		fits: verdict?.fits ?? false,
		log,
		cuts: whole && !scrapped ? [start, far] : [],
		finish: whole && !scrapped ? finishList(state) : [],
	};
}

/** Bends whose made angle is outside the drawing's own tolerance. */
function outsideDrawing({ bends, design, start }: State): number[] {
	const isInside = (made: number, i: number) => isInBand(start.job.tolerance, at(design.shape.bends, i).angle, made);
	return bends.flatMap(({ made }, i) => (made === null || isInside(made.angle, i) ? [] : [i + 1]));
}
