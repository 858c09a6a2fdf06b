/** Whether the bend at work, which would do by itself, is worth a touch more for what its checks have shown of the tube. */
import { made } from '../../springback/filter.ts';
import { bendAt, type State } from '../log/state.ts';
import type { TubeOutcome } from '../protocol/asks.ts';
import { atLimit } from './bend-check.ts';
import { freshPull, type Gain, gainBy } from './going-back.ts';
import {
	amount,
	ifPulled,
	isBeyondTweaks,
	LARGEST_TWEAK,
	LITTLE_LEFT,
	rememberingOutcomes,
	TWEAK_STEP,
} from './what-if.ts';

/** `by`: how far the bend at work is to go beyond where it lies, to the angle `to`, degrees. */
export interface TouchMore extends Gain {
	by: number;
	to: number;
}

/**
 * A fabricator checks the drop and then gives the bend a touch more: where that brings the whole tube in, and the chance to fit which it
 * gains is worth a set-up and the risk of the pull. An opened bend is not pulled again.
 */
export function touchMore(state: State, accepted: TubeOutcome): TouchMore | null {
	if (accepted.left <= LITTLE_LEFT || atLimit(state) || bendAt(state, state.bend).relievedFrom !== null) return null;
	if (isBeyondTweaks(state, accepted)) return null;
	const after = rememberingOutcomes((size) => ifPulled(state, size));
	if (isOutOfReach(accepted.left, after(TWEAK_STEP).left)) return null;
	const by = amount((size) => after(size).left, accepted.left);
	if (!after(by).within) return null;
	const to = made(state.filter).angle + by;
	const pull = freshPull(state, state.bend, state.filter, to);
	if (pull.limit) return null;
	const gain = gainBy(state, state.bend, pull);
	return gain === null ? null : { ...gain, by, to };
}

/** By so much more than the first step's the gain of further ones is believed to be: to first order it only falls. */
const BENT = 1.5;

/** Whether all tolerances are further away than the first step, so often repeated, leads. */
function isOutOfReach(now: number, afterStep: number): boolean {
	return now - (BENT * (now - afterStep) * LARGEST_TWEAK) / TWEAK_STEP > 1;
}
