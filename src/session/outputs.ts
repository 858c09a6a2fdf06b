import { checkFits } from './advice.ts';
import { at, tubeAtWork } from './as-built.ts';
import { ask } from './ask.ts';
import { expectCheck } from './check-reading.ts';
import { differ, planWith, predicted } from './correction.ts';
import { cutsOf, finishList } from './finish.ts';
import type { SessionRecord } from './fold.ts';
import { lastCanMend } from './mend.ts';
import type { CorrectedNote, DoneNote, Output } from './protocol.ts';
import type { State } from './state.ts';

/** What a shell shows after a record: the correction if there was one, then the next ask or the end. */
export function outputsAfter(before: State, after: State, record: SessionRecord, log: string): Output[] {
	const corrected = correctionBy(before, after, record);
	return [...announced(after, corrected), standing(after, log)];
}

/** A correction as it is told: with what the last bend could still mend, while that is a question. */
export function announced(state: State, note: CorrectedNote | null): CorrectedNote[] {
	if (note === null) return [];
	const mend = lastCanMend(state);
	return [mend ? { ...note, mend } : note];
}

/** The open ask, or the closing note. */
export function standing(state: State, log: string): Output {
	return ask(state) ?? doneNote(state, log);
}

function correctionBy(before: State, after: State, record: SessionRecord): CorrectedNote | null {
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
	const { trimStart, trimEnd } = tubeAtWork(state, state.plan.current);
	const whole = state.bends.every((bend) => bend.made !== null);
	const end = whole ? predicted(state, state.plan.current) : null;
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
		trim: whole ? { start: trimStart, end: trimEnd } : null,
		endOffset: end?.endOffset ?? null,
		endAngle: end?.endAngle ?? null,
		fits: fits(state),
		log,
		cuts: whole && !scrapped ? cutsOf(state) : [],
		finish: whole && !scrapped ? finishList(state) : [],
	};
}

/** Every made angle within tolerance of its target, and every check within its own (a skipped one: its expected value). */
export function fits(state: State): boolean {
	const { under, over } = state.start.job.tolerance;
	const angles = state.bends.every(
		({ made, target }) => made !== null && made.angle >= target - under && made.angle <= target + over,
	);
	const checks = state.design.checks.every(({ check }) => {
		const reading = state.checks[check.name]?.reading ?? expectCheck(state, check.name).value;
		return checkFits(state, check.name, reading);
	});
	return angles && checks;
}
