/** Whether going back to a made bend is worth its set-up, and opening the one at work what it may spoil. */

import { marginal, unknownAt } from '../../fit/as-built.ts';
import type { AsBuilt } from '../../fit/built-tube.ts';
import { at } from '../../maths/list.ts';
import { ROUNDING } from '../../maths/scalar.ts';
import { made, newSeat } from '../../springback/filter.ts';
import { type StopSuggestion, suggestStop } from '../../springback/stop.ts';
import { estimated } from '../estimate/estimate.ts';
import { chanceToFit, isLikely } from '../estimate/odds.ts';
import { backAt } from '../log/back-at.ts';
import type { Event } from '../log/events.ts';
import { bendAt, type State, withBend } from '../log/state.ts';
import { correctedNumbers } from '../plan/correction.ts';
import type { TubeOutcome, Tweak } from '../protocol/asks.ts';
import { limitsOfStop, target } from './bend-check.ts';
import { isAtOdds } from './contradiction.ts';
import { LITTLE_LEFT, morePull, TWEAK_STEP, takenAsItIs } from './what-if.ts';

/** A tweak that pulls a bend further, and the chance that the tube truly fits without it and with it. */
export type Saving = Tweak & Gain;

/** A set-up is spent where it raises the chance to fit by as much; and so many times the job's risk for all of that chance. */
const WORTH_SET_UP = 0.1;
const RISKED = 25;

/** For what is missed by no more than this part of its tolerance beyond it no bend is opened: hands and tape are no finer. */
const TRIFLE = 0.1;

/** Where a pull lands, in its standard deviations, with the weight of each: three-point Gauss-Hermite (Abramowitz and Stegun 1964, table 25.10). */
const WEIGHED_LANDINGS = [
	[0, 2 / 3],
	[-Math.sqrt(3), 1 / 6],
	[Math.sqrt(3), 1 / 6],
] as const;

/**
 * The tweak that brings most, where it pulls a bend which came out short, brings all within tolerance, and is worth a set-up by the chance to
 * fit after against before; offered once a bend. Looked for also where all is within tolerance as it is believed, but so near to the limits that
 * much of the chance is missing. `found`: the tweaks, where they are known already.
 */
export function savingTweak(state: State, accepted: TubeOutcome, found: readonly Tweak[]): Saving | null {
	if (accepted.left <= LITTLE_LEFT) return null;
	const pulls = accepted.within ? morePull(state, accepted, (bend) => isWanting(state, bend, TWEAK_STEP)) : found;
	const best = pulls.find((tweak) => tweak.within && mayBePulled(state, tweak));
	const pull = best ? nextPull(state, best) : null;
	if (!best || !pull) return null;
	const gain = gainBy(state, best.bend, pull);
	return gain === null || isAtOdds(state) ? null : { ...best, ...gain };
}

/** Chances that the tube truly fits without the pull and with it. */
export interface Gain {
	before: number;
	after: number;
}

/** What pulling this bend once more brings; null where that is not worth a set-up, nor the risk that the bend passes its tolerance. */
export function gainBy(state: State, bend: number, { expect: { angle, sd }, risk }: StopSuggestion): Gain | null {
	const pays = (gain: number) => gain >= WORTH_SET_UP && risk <= RISKED * gain * state.start.job.risk;
	if (!pays(1)) return null;
	const read = asRead(state);
	const before = chanceToFitNow(read);
	let [after, left] = [0, 1];
	for (const [z, weight] of WEIGHED_LANDINGS) {
		// Even if it were certain to fit wherever else it lands.
		if (!pays(after + left + ROUNDING - before)) return null;
		after += weight * chanceToFitNow(pulledTo(read, bend, angle + z * sd));
		left -= weight;
	}
	return pays(after - before) ? { before, after } : null;
}

/** Whether opening the bend at work (the tube then comes to `opened`) is worth its strain: it, or the tube, is plainly off, and nothing less makes the tube fit. */
export function isWorthOpening(state: State, accepted: TubeOutcome, opened: TubeOutcome): boolean {
	const over = made(state.filter).angle - target(state);
	const plainly =
		over > PLAINLY_OVER * state.start.job.tolerance.over || endsAndChecksOff(state, accepted) > PLAINLY_OFF;
	const missed = accepted.left > 1 + TRIFLE && !hasHope(asRead(state));
	return plainly && opened.within && missed && !isAtOdds(state);
}

/** The largest miss of the far end and of the checks, in tolerances: a corner that wandered alone is no ground to strain a bend that is a little over. */
function endsAndChecksOff({ design, start }: State, { endOffset, endAngle, checks }: TubeOutcome): number {
	const { shape, direction } = start.job.tolerance;
	const misses = design.checks.map(
		({ check, design: aim }, i) => Math.abs(at(checks, i).value - aim) / check.tolerance,
	);
	return Math.max(endOffset / shape, endAngle / direction, ...misses);
}

/** In tolerances of the bend, and of the tube. Opening is the last resort: at the usual risk one bend in fifty passes its tolerance. From twice its tolerance on 11 hoops in 1,512 were opened, from three times 3 in 2,016. */
const [PLAINLY_OVER, PLAINLY_OFF] = [3, 3];

/** Likelier than this to fit as it is, a tube is left as it is. */
const NO_HOPE = 0.25;

function mayBePulled(state: State, { bend, do: how, by }: Tweak): boolean {
	return how === 'pull' && isWanting(state, bend, by);
}

/** Whether a made bend came out short, may be so much further (degrees), and was not gone back to yet. */
function isWanting(state: State, bend: number, by: number): boolean {
	const { made: was, target } = bendAt(state, bend);
	const { over } = state.start.job.tolerance;
	// A bend that was taken short since the rest took it up is short still.
	const wanted = Math.max(target, at(state.design.shape.bends, bend - 1).angle);
	return was !== null && was.angle < wanted && was.angle + by <= wanted + over && !offered(state, bend);
}

/** Whether this bend was gone back to already, or another accepted against the advice to do so. */
function offered({ entries }: State, bend: number): boolean {
	const was = (event: Event) =>
		(event.type === 'bend-reopened' && event.bend === bend) ||
		(event.type === 'bend-accepted' && event.declined === bend);
	return entries.some((entry) => !entry.void && entry.events.some(was));
}

/** The pull that would be asked for there. */
function nextPull(state: State, { bend, expect }: Tweak): StopSuggestion | null {
	const is = bendAt(state, bend);
	return is.made === null ? null : freshPull(state, bend, backAt(state, bend, is.made), expect.angle);
}

/** The pull that would be asked for at the job's risk to bring a bend from where `filter` has it to `target`, in a fresh set-up. */
export function freshPull(state: State, bend: number, filter: State['filter'], target: number): StopSuggestion {
	const limits = limitsOfStop(state.start.job, bend);
	return suggestStop(newSeat(filter), { ...limits, target, loadedBefore: null, measured: true });
}

/** Chance that the tube fits when all that is left is corrected. */
function chanceToFitNow(state: State): number {
	return chanceToFit(state, correctedNumbers(state), 'corrected');
}

/** Whether that is at least what leaves a tube as it is. */
function hasHope(state: State): boolean {
	return isLikely(state, correctedNumbers(state), 'corrected', NO_HOPE);
}

/** The tube with the bend at work taken as it is, as all that was read on it has it. */
const asRead = (state: State): State & { built: AsBuilt } => estimated(takenAsItIs(state));

/** The bend as it may come out. What was read says the same of the rest of the tube as before: the readings were taken with the bend as it is. */
function pulledTo(read: State & { built: AsBuilt }, bend: number, angle: number): State {
	const { built } = read;
	const place = unknownAt('angle', bend - 1);
	const by = angle - at(built.mean, place);
	const mean = built.mean.map((value, i) => (i === place ? angle : value));
	// What was told of the bend was told of it as it was.
	const unknowns = built.unknowns.map((unknown, i) =>
		i === place && unknown.told ? { ...unknown, told: { ...unknown.told, value: unknown.told.value + by } } : unknown,
	);
	const { sd } = marginal(built, 'angle', bend - 1);
	return { ...withBend(read, bend, { made: { angle, sd } }), built: { ...built, mean, unknowns } };
}
