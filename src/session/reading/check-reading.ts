import { marginal, rawTubeOf, spreadOf } from '../../fit/as-built.ts';
import type { AsBuilt, Estimate } from '../../fit/built-tube.ts';
import { dieOn, type RawTube, uncutShape } from '../../fit/raw-tube.ts';
import { triangle } from '../../maths/cholesky.ts';
import { spreadTo, standardCloud } from '../../maths/cloud.ts';
import { at, meanOf } from '../../maths/list.ts';
import { observe, observeMade } from '../../springback/reading.ts';
import { checkValue, overCenters } from '../../tube/checks.ts';
import { dieNumbers } from '../../tube/dies.ts';
import type { Check } from '../../tube/job.ts';
import { builtNow, estimated } from '../estimate/estimate.ts';
import { checkReadingSd } from '../estimate/hands.ts';
import { tubeAtWork } from '../estimate/tube-at-work.ts';
import { backAt } from '../log/back-at.ts';
import type { Expected } from '../log/events.ts';
import type { State } from '../log/state.ts';
import type { DueCheck } from '../plan/design.ts';
import { expectOvality } from './ovality.ts';

/** A check that would tell the angle no finer than this, in degrees, tells nothing about it. */
const TELLS_NOTHING = 3;
/** Nearer than so many of its own deviations to where it turns back, a reading without a sign may be of either side. */
const EITHER_SIDE = 2;

export function dueCheck(state: State, name: string): DueCheck {
	const found = state.design.checks.find((due) => due.check.name === name);
	if (!found) throw new RangeError(`no check is called "${name}"`);
	return found;
}

/** Names of the checks that fall due with a bend, in the file's order. */
export function checksDue(state: State, bend: number): string[] {
	return state.design.checks.filter((due) => due.after === bend).map((due) => due.check.name);
}

/** By how much more a check reads while the ends are not cut yet: 0 but for a span to an end and a size over all. */
export function uncutTrim(state: State, check: Check): number {
	const toEnd = check.kind === 'span' && ('end' in check.from || 'end' in check.to);
	if (!toEnd && check.kind !== 'overall') return 0;
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
	const built = builtNow(state);
	const read = reader(state, check);
	const { value, sd } = toFirstOrder(built, read);
	return { value, sd: isFold(state, check, { value, sd }) ? foldedSd(built, value, read) : sd };
}

/** What a check reads on a tube that is made so far, uncut, the bends still to come as they are planned. */
type Reader = (tube: RawTube) => number;

function reader({ piece, plan, start }: State, check: Check): Reader {
	const on = dieNumbers(start.job, plan.current.length);
	const whole = (tube: RawTube): RawTube => ({
		...tube,
		bends: [
			...tube.bends,
			...plan.current.slice(tube.bends.length).map(({ fromStart, angle, rotation }, i) => {
				const die = at(on, tube.bends.length + i);
				const { radius } = dieOn(tube, { die });
				return { mark: fromStart, angle, rotation, radius, wrapped: angle, die };
			}),
		],
	});
	return (tube) => {
		const { straights, bends } = uncutShape(whole(tube), piece);
		const last = Math.max(0, at(straights, bends.length));
		return checkValue(check, { straights: [...straights.slice(0, -1), last], bends }, start.job.tube);
	};
}

function toFirstOrder(built: AsBuilt, read: Reader): Estimate {
	const { mean, covariance } = spreadOf(built, (tube) => [read(tube)]);
	return { value: at(mean, 0), sd: Math.sqrt(Math.max(0, at(at(covariance, 0), 0))) };
}

/** Whether it lies so near to where the check turns back that it may be of either side. */
function isFold({ start }: State, check: Check, { value, sd }: Estimate): boolean {
	return toTurning(check, value, start.job.tube) < EITHER_SIDE * Math.hypot(sd, checkReadingSd(start, check));
}

/** Where a check turns back it has no slope: how far it lies from `value` on tubes that this one may be, root mean square. */
function foldedSd(built: AsBuilt, value: number, read: Reader): number {
	const lower = triangle(built.covariance);
	const squares = standardCloud(built.mean.length).map(
		(z) => (read(rawTubeOf(built, spreadTo(built.mean, lower, z))) - value) ** 2,
	);
	return Math.sqrt(meanOf(squares));
}

/**
 * What a check reading tells about all that it depends on, made bends and the one at work together: a drop over a long leg
 * tells an angle more finely than a finder does, and a finer angle the springback. `confirmed`: read again, and it stands as
 * `count` readings. A distance near 0 and an angle near 0 or 180 are read without their sign, so that nothing is learned from them there.
 */
export function learnFromCheck(state: State, name: string, reading: number, count: 1 | 2, confirmed: boolean): State {
	const { check } = dueCheck(state, name);
	const was = state.checks[name]?.reading ?? null;
	const again = was === null ? {} : { again: true as const };
	const taken = (tells: boolean): State => ({
		...state,
		checks: { ...state.checks, [name]: { reading, skipped: false, count: tells ? count : 0, confirmed, ...again } },
	});
	if (check.kind === 'ovality') return taken(false);
	const before = builtNow(state);
	if (isFold(state, check, toFirstOrder(before, reader(state, check)))) return taken(false);
	const next = estimated(taken(true));
	return was === null ? learnAtWork(next, before, next.built, confirmed) : asItIs(next, next.built);
}

/** What a check told before counts no more as it did: the angle at work is known as all readings leave it, and teaches nothing. */
function asItIs(state: State, built: AsBuilt): State {
	const index = state.bend - 1;
	if (index >= built.input.bends.length) return state;
	const { value, sd } = marginal(built, 'angle', index);
	if (!isOfABend(value)) return state;
	return { ...state, filter: backAt(state, state.bend, { angle: value, sd }) };
}

/** How far a value lies from where its check reads the same on either side: legs that lie in one line or side by side, a tube that lies flat. */
function toTurning(check: Check, value: number, tube: { od: number }): number {
	if (check.kind === 'drop') return value;
	if (check.kind === 'width') return value - overCenters(check, tube);
	if (check.kind === 'overall') return value - tube.od;
	return check.kind === 'angle' ? Math.min(value, 180 - value) : Number.POSITIVE_INFINITY;
}

/** A reading that goes with no angle that a bend can have was of something else, however often it is kept: it tells nothing of the angle. */
const isOfABend = (angle: number): boolean => angle >= 0 && angle <= 180;

/** What the reading told of the angle at work, as a reading of that angle alone: by so much the estimate of it has changed. */
function learnAtWork(state: State, before: AsBuilt, after: AsBuilt, confirmed: boolean): State {
	const index = state.bend - 1;
	if (index >= after.input.bends.length) return state;
	const [was, is] = [before, after].map((built) => marginal(built, 'angle', index)) as [Estimate, Estimate];
	// What pulls and finder told was contradicted.
	if (confirmed && is.sd > was.sd) return asItIs(state, after);
	const told = 1 / is.sd ** 2 - 1 / was.sd ** 2;
	if (!(told > 1 / TELLS_NOTHING ** 2)) return state;
	const angle = (is.value / is.sd ** 2 - was.value / was.sd ** 2) / told;
	if (!isOfABend(angle)) return state;
	const sd = Math.sqrt(1 / told);
	const filter = confirmed
		? observe(state.filter, 'angle', angle, { sd, confirmed })
		: observeMade(state.filter, angle, sd);
	return { ...state, filter };
}
