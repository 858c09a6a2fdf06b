import { type Filter, made, observeMade } from '../springback/filter.ts';
import { checkValue } from '../tube/checks.ts';
import type { Check } from '../tube/job.ts';
import { tubeAtWork } from './as-built.ts';
import type { DueCheck } from './design.ts';
import type { Expected } from './events.ts';
import { expectOvality, OVALITY_SD } from './ovality.ts';
import type { State } from './state.ts';
import { bendAt } from './state.ts';

/** Degrees by which an angle is moved to see what that does to a check. */
const STEP = 0.05;
/** One reading with a protractor, degrees. */
const ANGLE_READING_SD = 0.25;

export function dueCheck(state: State, name: string): DueCheck {
	const found = state.design.checks.find((due) => due.check.name === name);
	if (!found) throw new RangeError(`no check is called "${name}"`);
	return found;
}

/** Names of the checks that fall due with a bend, in the file's order. */
export function checksDue(state: State, bend: number): string[] {
	return state.design.checks.filter((due) => due.after === bend).map((due) => due.check.name);
}

/** Trim that a reading from an uncut end includes, beyond the finished tube. */
export function uncutTrim(state: State, check: Check): number {
	if (check.kind !== 'span') return 0;
	const tube = tubeAtWork(state, state.plan.current);
	const last = tube.shape.straights.at(-1) ?? 0;
	const ends = { start: tube.trimStart, far: state.piece - tube.used - last };
	return [check.from, check.to].reduce((sum, corner) => sum + ('end' in corner ? ends[corner.end] : 0), 0);
}

/** What a check should read now, from what was made so far, trim not yet cut included; `sd` of the true value. */
export function expectCheck(state: State, name: string): Expected {
	const { check, after } = dueCheck(state, name);
	if (check.kind === 'ovality') return expectOvality();
	const angles = anglesNow(state);
	const value = valueAt(state, check, angles);
	const spread = angles.map((angle, i) => (i < after ? slope(state, check, angles, i) * angle.sd : 0));
	const marks = check.kind === 'angle' ? 0 : state.start.job.tooling.tape / 2;
	return { value: value + uncutTrim(state, check), sd: Math.hypot(...spread, marks) };
}

/** Standard deviation of one reading of a check: half a tape division, or the angle finder's. */
export function checkReadingSd(state: State, check: Check): number {
	if (check.kind === 'ovality') return OVALITY_SD;
	return check.kind === 'angle' ? ANGLE_READING_SD : state.start.job.tooling.tape / 2;
}

interface AngleNow {
	angle: number;
	sd: number;
}

/** Angles of all bends: accepted ones as made, the one at work as estimated, others as planned. */
function anglesNow(state: State): AngleNow[] {
	return state.bends.map((bend, i) => {
		if (i === state.bend - 1 && bend.pulls.length > 0) return made(state.filter);
		return bend.made ?? { angle: state.plan.current[i]?.angle ?? 0, sd: 0 };
	});
}

function valueAt(state: State, check: Check, angles: readonly AngleNow[]): number {
	const bends = state.bends.map((bend, i) => ({ ...bend, made: angles[i] ?? null }));
	const { shape } = tubeAtWork({ ...state, bends }, state.plan.current);
	return checkValue(check, shape, state.start.job.tube);
}

function slope(state: State, check: Check, angles: readonly AngleNow[], index: number): number {
	const moved = (by: number) =>
		valueAt(
			state,
			check,
			angles.map((angle, i) => (i === index ? { ...angle, angle: angle.angle + by } : angle)),
		);
	return (moved(STEP) - moved(-STEP)) / (2 * STEP);
}

/**
 * What a check reading tells about the angle of the bend at work: the angle at which the check would read so, within the
 * errors of the reading, the tape and the other bends. Unchanged where the check hardly depends on that bend.
 */
export function learnFromCheck(state: State, name: string, reading: number, count: number): Filter {
	const { check } = dueCheck(state, name);
	const bend = bendAt(state, state.bend);
	if (check.kind === 'ovality' || bend.pulls.length === 0) return state.filter;
	const angles = anglesNow(state);
	const own = slope(state, check, angles, state.bend - 1);
	const others = angles.map((angle, i) => (i === state.bend - 1 ? 0 : slope(state, check, angles, i) * angle.sd));
	const marks = check.kind === 'angle' ? 0 : state.start.job.tooling.tape / 2;
	const sd = Math.hypot(...others, marks, checkReadingSd(state, check) / Math.sqrt(count)) / Math.abs(own);
	if (!(sd < 3)) return state.filter;
	const miss = reading - uncutTrim(state, check) - valueAt(state, check, angles);
	return observeMade(state.filter, made(state.filter).angle + miss / own, sd);
}
