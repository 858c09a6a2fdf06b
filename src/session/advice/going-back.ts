/** Whether going back to a made bend is worth its set-up. */
import { at } from '../../maths/list.ts';
import { newSeat, reopened } from '../../springback/filter.ts';
import { suggestStop } from '../../springback/stop.ts';
import { oddsOf } from '../estimate/odds.ts';
import type { Event } from '../log/events.ts';
import { bendAt, largestLoaded, type State, withBend } from '../log/state.ts';
import { correctedNumbers, predicted } from '../plan/correction.ts';
import type { TubeOutcome, Tweak } from '../protocol/asks.ts';
import { takenAsItIs } from './what-if.ts';

/** A tweak that pulls a bend further, and the chance that the tube truly fits without it and with it. */
export interface Saving extends Tweak {
	before: number;
	after: number;
}

/** A set-up is spent where it raises the chance to fit by as much. */
const WORTH = 0.2;

/** What is missed by no more than this part of its tolerance beyond it is not gone back for: hands and tape are no finer. */
const TRIFLE = 0.1;

/** A bend that was pulled again and measured is known within about so much, degrees. */
const KNOWN_THEN = 0.2;

/** Where it then lies beside what was wanted, in degrees, with the weight of each: under it rather than over, as every pull. */
const LANDINGS = [
	[-0.45, 0.3],
	[-0.1, 0.4],
	[0.25, 0.3],
] as const;

/**
 * The tweak that brings most, where it pulls a bend which came out short, brings all within tolerance, and is worth a set-up by the chance to
 * fit after against before; offered once a bend.
 */
export function savingTweak(state: State, accepted: TubeOutcome, found: readonly Tweak[]): Saving | null {
	if (accepted.left <= 1 + TRIFLE) return null;
	const [best] = found.filter((tweak) => tweak.within && mayBePulled(state, tweak) && isReached(state, tweak));
	if (!best) return null;
	const before = chanceOf(takenAsItIs(state));
	const after = LANDINGS.reduce((sum, [off, weight]) => sum + weight * chanceOf(pulledTo(state, best, off)), 0);
	return after - before >= WORTH ? { ...best, before, after } : null;
}

function mayBePulled(state: State, { bend, do: how, by }: Tweak): boolean {
	const { made: was, target } = bendAt(state, bend);
	const { over } = state.start.job.tolerance;
	// A bend that was taken short since the rest took it up is short still.
	const wanted = Math.max(target, at(state.design.shape.bends, bend - 1).angle);
	const short = was !== null && was.angle < wanted && was.angle + by <= wanted + over;
	return how === 'pull' && short && !offered(state, bend);
}

/** Whether this bend was gone back to already, or another accepted against the advice to do so. */
function offered({ entries }: State, bend: number): boolean {
	const was = (event: Event) =>
		(event.type === 'bend-reopened' && event.bend === bend) ||
		(event.type === 'bend-accepted' && event.declined === bend);
	return entries.some((entry) => !entry.void && entry.events.some(was));
}

/** The part of what is missing that a pull has to be expected to make, at the job's risk. */
const PROGRESS = 0.3;

/** Whether a pull at the job's risk is expected to move the bend towards what is wanted: else going back to it brings nothing. */
function isReached(state: State, { bend, by, expect }: Tweak): boolean {
	const { tolerance, risk, tooling } = state.start.job;
	const is = bendAt(state, bend);
	if (is.made === null) return false;
	const filter = newSeat(reopened(state.filter, is.made, largestLoaded(is)));
	const stop = suggestStop(filter, {
		target: expect.angle,
		under: tolerance.under,
		over: tolerance.over,
		risk,
		dialStep: tooling.dialStep,
		maxAngle: tooling.maxAngle,
		loadedBefore: null,
		measured: true,
	});
	return stop.expect.angle >= is.made.angle + PROGRESS * by;
}

/** Chance that the tube fits when all that is left is corrected. */
function chanceOf(state: State): number {
	const known = { ...state, built: null };
	const numbers = correctedNumbers(known);
	return oddsOf(known, numbers, 'corrected', predicted(known, numbers)).chance;
}

/** The tweaked bend as it may come out, `off` from what was wanted: what was read on the tube behind it is then read anew. */
function pulledTo(state: State, { bend, expect }: Tweak, off: number): State {
	const made = { angle: expect.angle + off, sd: KNOWN_THEN };
	const stale = state.design.checks.filter(({ after }) => after >= bend).map(({ check }) => check.name);
	const checks = Object.fromEntries(Object.entries(state.checks).filter(([name]) => !stale.includes(name)));
	return withBend({ ...takenAsItIs(state), checks }, bend, { made, told: made });
}
