import { made, observe, observeMade } from '../springback/filter.ts';
import { checkValue } from '../tube/checks.ts';
import type { Check } from '../tube/job.ts';
import { at, tubeAtWork } from './as-built.ts';
import type { DueCheck } from './design.ts';
import type { Expected } from './events.ts';
import { expectOvality, OVALITY_SD } from './ovality.ts';
import type { BendState, State } from './state.ts';
import { bendAt, withBend } from './state.ts';

/** Degrees by which an angle is moved to see what that does to a check. */
const STEP = 0.05;
/** One reading with a protractor, degrees. */
const ANGLE_READING_SD = 0.25;
/** A check that would tell the angle no finer than this, in degrees, tells nothing about it. */
const TELLS_NOTHING = 3;

export function dueCheck(state: State, name: string): DueCheck {
	const found = state.design.checks.find((due) => due.check.name === name);
	if (!found) throw new RangeError(`no check is called "${name}"`);
	return found;
}

/** Names of the checks that fall due with a bend, in the file's order. */
export function checksDue(state: State, bend: number): string[] {
	return state.design.checks.filter((due) => due.after === bend).map((due) => due.check.name);
}

/** By how much more a check reads while the ends are not cut yet: 0 but for a span to an end. */
export function uncutTrim(state: State, check: Check): number {
	if (check.kind !== 'span' || !('end' in check.from || 'end' in check.to)) return 0;
	const { shape, trimStart, used } = tubeAtWork(state, state.plan.current);
	const straights = [...shape.straights];
	straights[0] = at(straights, 0) + trimStart;
	straights[straights.length - 1] = Math.max(0, state.piece - used);
	return (
		checkValue(check, { ...shape, straights }, state.start.job.tube) - checkValue(check, shape, state.start.job.tube)
	);
}

/** What a check should read now, from what was made so far, trim not yet cut included; `sd` of the true value. */
export function expectCheck(state: State, name: string): Expected {
	const { check } = dueCheck(state, name);
	if (check.kind === 'ovality') return expectOvality();
	const view = viewOf(state, name);
	return { value: view.value + uncutTrim(state, check), sd: Math.sqrt(view.byAngles + view.byHands) };
}

/** Standard deviation of one reading of a check: half a tape division, or the angle finder's. */
export function checkReadingSd(state: State, check: Check): number {
	if (check.kind === 'ovality') return OVALITY_SD;
	return check.kind === 'angle' ? ANGLE_READING_SD : state.start.job.tooling.tape / 2;
}

/** A check as the tube is believed to be: its value, how it follows each angle, and what else makes it uncertain. */
interface CheckView {
	value: number;
	angles: { bend: number; slope: number; variance: number }[];
	/** Variance of the value from the angles, and from marks and rotations as hands set them. */
	byAngles: number;
	byHands: number;
}

function viewOf(state: State, name: string): CheckView {
	const { check, after } = dueCheck(state, name);
	const bends = believed(state);
	const reads = (changed: readonly BendState[]) => {
		const { shape } = tubeAtWork({ ...state, bends: changed }, state.plan.current);
		return checkValue(check, shape, state.start.job.tube);
	};
	const slope = (index: number, step: number, change: (bend: BendState, by: number) => BendState) => {
		const moved = (by: number) => reads(bends.map((bend, i) => (i === index ? change(bend, by) : bend)));
		return (moved(step) - moved(-step)) / (2 * step);
	};
	const { tape } = state.start.job.tooling;
	const angles: CheckView['angles'] = [];
	let byHands = 0;
	for (const [i, bend] of bends.slice(0, after).entries()) {
		if (bend.made) angles.push({ bend: i + 1, slope: slope(i, STEP, turnedBy), variance: bend.made.sd ** 2 });
		if (bend.mark !== null) byHands += (slope(i, tape, markedBy) * (tape / 2)) ** 2;
		if (bend.rotation !== null && i > 0)
			byHands += (slope(i, STEP, rotatedBy) * (state.start.job.tolerance.rotation / 2)) ** 2;
	}
	const byAngles = angles.reduce((sum, angle) => sum + angle.slope ** 2 * angle.variance, 0);
	return { value: reads(bends), angles, byAngles, byHands };
}

/** All bends, the one at work with its angle as estimated now. */
function believed(state: State): BendState[] {
	return state.bends.map((bend, i) =>
		i === state.bend - 1 && bend.pulls.length > 0 ? { ...bend, made: made(state.filter) } : bend,
	);
}

const turnedBy = (bend: BendState, by: number): BendState =>
	bend.made ? { ...bend, made: { ...bend.made, angle: bend.made.angle + by } } : bend;
const markedBy = (bend: BendState, by: number): BendState =>
	bend.mark === null ? bend : { ...bend, mark: bend.mark + by };
const rotatedBy = (bend: BendState, by: number): BendState =>
	bend.rotation === null ? bend : { ...bend, rotation: bend.rotation + by };

/**
 * What a check reading tells about all the angles it depends on, made ones and the one at work together: a drop over a long leg
 * tells an angle more finely than a finder does. `confirmed`: read again, and it stands as `count` readings.
 * A distance or angle near 0 is read without its sign, so that nothing is learned from it there.
 */
export function learnFromCheck(state: State, name: string, reading: number, count: number, confirmed: boolean): State {
	const { check } = dueCheck(state, name);
	if (check.kind === 'ovality') return state;
	const { value, angles, byAngles, byHands } = viewOf(state, name);
	const own = byHands + checkReadingSd(state, check) ** 2 / count;
	const total = own + byAngles;
	const unsigned = check.kind === 'angle' || check.kind === 'drop';
	if (unsigned && value < 2 * Math.sqrt(total)) return state;
	const miss = reading - uncutTrim(state, check) - value;
	return angles.reduce((next, { bend, slope, variance }) => {
		if (bend === state.bend) return learnAtWork(next, slope, miss, total - slope ** 2 * variance, confirmed);
		const gain = (variance * slope) / total;
		const was = bendAt(next, bend).made;
		if (!was) return next;
		const sd = Math.sqrt(Math.max(0, variance * (1 - gain * slope)));
		return withBend(next, bend, { made: { angle: was.angle + gain * miss, sd } });
	}, state);
}

/** The check as a reading of the angle at work, the errors of all else being its own. */
function learnAtWork(state: State, slope: number, miss: number, variance: number, confirmed: boolean): State {
	const sd = Math.sqrt(variance) / Math.abs(slope);
	if (!(sd < TELLS_NOTHING)) return state;
	const angle = made(state.filter).angle + miss / slope;
	const filter = confirmed
		? observe(state.filter, 'angle', angle, { sd, confirmed })
		: observeMade(state.filter, angle, sd);
	return { ...state, filter };
}
