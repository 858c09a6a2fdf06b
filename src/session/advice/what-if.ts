import { at, largestFirst } from '../../maths/list.ts';
import { exceeds } from '../../maths/scalar.ts';
import { made } from '../../springback/filter.ts';
import { radians } from '../../tube/angles.ts';
import { isInside } from '../../tube/tolerance.ts';
import type { State } from '../log/state.ts';
import { withBend } from '../log/state.ts';
import { correctedNear, correctedNumbers, tubeOutcome } from '../plan/correction.ts';
import type { TubeOutcome, Tweak } from '../protocol/asks.ts';
import { isOver, isShort } from './bend-check.ts';
import { reopenHindrance, tweakHindrance } from './reopen.ts';

/** A bend seated again lands within about so much of what was wanted, degrees. */
const SEATED_AGAIN = 0.35;

/** Amounts that a tweak is told in, and the largest that still is one, degrees. */
export const TWEAK_STEP = 0.25;
export const LARGEST_TWEAK = 2;

/** Normal quantiles at the middles of five equal parts: where a bend seated again lands, in a handful of numbers. */
const LANDINGS = [-1.282, -0.524, 0, 0.524, 1.282];

/** Which way a made bend can be turned. */
const PULL_ALONE = [1] as const;
const PULL_OR_OPEN = [1, -1] as const;

/** Beyond so many tolerances no landing brings a tube in. */
const WORTH_ASKING = 3;

/** The bend at work taken as it is, and one that waits while a made one is gone back to as it was. */
export function takenAsItIs(state: State): State {
	const { suspended } = state;
	const now = withBend(state, state.bend, { made: made(state.filter) });
	const waits = suspended && at(state.bends, suspended.bend - 1).pulls.length > 0;
	return waits ? withBend(now, suspended.bend, { made: suspended.made }) : now;
}

/** What becomes of a tube with these made bends when all that is left is corrected for them. */
const correctedOutcome = (state: State): TubeOutcome => tubeOutcome(state, correctedNumbers(state));

const withBendBy = (state: State, bend: number, by: number): State => {
	const was = at(state.bends, bend - 1).made;
	return was === null ? state : withBend(state, bend, { made: { ...was, angle: was.angle + by } });
};

/** What accepting the bend at work comes to; and what pulling or opening it by so many degrees, and accepting it then. */
export function ifAccepted(state: State): TubeOutcome {
	const known = ACCEPTED.get(state.filter);
	if (known !== undefined && FOLLOWS_FROM.every((key) => known.state[key] === state[key])) return known.outcome;
	const outcome = correctedOutcome(takenAsItIs(state));
	ACCEPTED.set(state.filter, { state, outcome });
	return outcome;
}

/** An answer asks for it of two states that differ in what is asked next alone: the one that decides what that is, and the one that came of it. */
const ACCEPTED = new WeakMap<State['filter'], { state: State; outcome: TubeOutcome }>();
const FOLLOWS_FROM = ['start', 'design', 'bend', 'bends', 'piece', 'checks', 'built', 'plan', 'suspended'] as const;

export const ifPulled = (state: State, by: number): TubeOutcome =>
	correctedOutcome(withBendBy(takenAsItIs(state), state.bend, by));

export const ifOpened = (state: State, by: number): TubeOutcome =>
	correctedOutcome(withBendBy(takenAsItIs(state), state.bend, -by));

/**
 * Whether the tube can still be brought within all its tolerances with a bend as it is that lies outside its own. A bend that is over is taken
 * by what is believed of it: opening is the last resort. Another pull costs little, so that a short one is taken only where it leaves room for
 * what the bends to come are off by, and also when it is as short as it may well be. A bend gone back to for more pull is not taken short again.
 * `accepted`: what accepting comes to, where that is known already.
 */
export function isTakenUp(state: State, accepted?: TubeOutcome): boolean {
	if (isOver(state)) return (accepted ?? ifAccepted(state)).within;
	if (!isShort(state) || state.suspended) return false;
	if ((accepted ?? ifAccepted(state)).left > LITTLE_LEFT) return false;
	return correctedOutcome(withBendBy(takenAsItIs(state), state.bend, -CAUTION * made(state.filter).sd)).within;
}

/**
 * The part of every tolerance that a short bend may use up; one that would do by itself is pulled closer, or given a touch more, where the tube is left
 * with less. At half of it hoops, braces, hats and tubes of eight bends fit in 67, 62, 50 and 57 to 61 of 100, at .4 in 69, 64, 55, at .3 in 71, 64, 55 and 65, for .4 pulls
 * more a tube of four bends and 2 more a tube of eight (seeds from 1,710,000, 280 tubes each, of eight bends 140).
 */
export const LITTLE_LEFT = 0.3;

/** One-sided, 90 %. */
const CAUTION = 1.28;

/**
 * What a little more pull or relief at each made bend before the one at work would do, the bend at work being taken as it is and the
 * rest corrected: best first. Only what clamp, follow, dial limit and swing allow. `accepted`: without any.
 */
export function tweaks(state: State, accepted: TubeOutcome): Tweak[] {
	const signs = state.start.job.mayOpen ? PULL_OR_OPEN : PULL_ALONE;
	return tweaksOf(state, accepted, () => signs);
}

/** Of these alone a little more pull of the bends that `may`. */
export function morePull(state: State, accepted: TubeOutcome, may: (bend: number) => boolean): Tweak[] {
	return tweaksOf(state, accepted, (bend) => (may(bend) ? PULL_ALONE : []));
}

function tweaksOf(state: State, accepted: TubeOutcome, signsOf: (bend: number) => readonly (1 | -1)[]): Tweak[] {
	if (isBeyondTweaks(state, accepted)) return [];
	const taken = takenAsItIs(state);
	const now = accepted.left;
	const near = correctedNear(taken);
	const found = state.bends.flatMap((bend, i) => {
		const number = i + 1;
		const signs = signsOf(number);
		const stays = number === state.bend || bend.made === null || signs.length === 0;
		if (stays || reopenHindrance(state, number) !== null) return [];
		const after = rememberingOutcomes((by) => {
			const tweaked = withBendBy(taken, number, by);
			return tubeOutcome(tweaked, near(tweaked));
		});
		return signs.flatMap((sign) => {
			const by = sign * amount((size) => after(sign * size).left, now);
			if (tweakHindrance(state, number, by) !== null) return [];
			return [tweak(taken, number, by, after, outOfHand(state, accepted, after(by)))];
		});
	});
	const best = largestFirst(found, ({ left }) => -left);
	return largestFirst(best, ({ chance }) => chance);
}

/**
 * True where no tweak can bring the end in: what the bends left cannot do is more than the largest tweak turns and carries it, at the
 * tube's own length.
 */
export function isBeyondTweaks({ start, piece }: State, { endOffset, endAngle }: TubeOutcome): boolean {
	const { direction, shape } = start.job.tolerance;
	return endAngle - LARGEST_TWEAK > direction || endOffset - radians(LARGEST_TWEAK) * piece > shape;
}

/** A correction takes its time, and the same amount is looked at more than once. */
export function rememberingOutcomes(outcome: (by: number) => TubeOutcome): (by: number) => TubeOutcome {
	const known = new Map<number, TubeOutcome>();
	return (by) => {
		const found = known.get(by) ?? outcome(by);
		known.set(by, found);
		return found;
	};
}

/** Of the amounts that a tweak is told in the one that leaves least, going on as long as more is better; the smallest where even that is worse than nothing. */
export function amount(left: (by: number) => number, now: number): number {
	let best = TWEAK_STEP;
	if (!exceeds(now, left(best))) return best;
	while (best < LARGEST_TWEAK && exceeds(left(best), left(best + TWEAK_STEP))) best += TWEAK_STEP;
	return best;
}

/** Whether a check is missed that a tweak does not move: then nowhere that it lands brings all in. */
function outOfHand({ design }: State, accepted: TubeOutcome, outcome: TubeOutcome): boolean {
	return design.checks.some(({ check, design: aim }, i) => {
		const [before, after] = [at(accepted.checks, i).value, at(outcome.checks, i).value];
		return !isInside(after - aim, check.tolerance) && Math.abs(after - before) < UNMOVED * check.tolerance;
	});
}

/** A part of its tolerance that is no more than what the arithmetic rounds. */
const UNMOVED = 1e-6;

function tweak(taken: State, bend: number, by: number, after: (by: number) => TubeOutcome, hopeless: boolean): Tweak {
	const outcome = after(by);
	const angle = (at(taken.bends, bend - 1).made?.angle ?? 0) + by;
	// Far outside it does not matter by how much a landing misses.
	const worth = !hopeless && outcome.left <= WORTH_ASKING;
	const lands = worth ? LANDINGS.map((z) => after(by + z * SEATED_AGAIN).within) : [false];
	return {
		bend,
		do: by > 0 ? 'pull' : 'relieve',
		by: Math.abs(by),
		expect: { angle, sd: SEATED_AGAIN },
		...outcome,
		chance: lands.filter((within) => within).length / lands.length,
	};
}
