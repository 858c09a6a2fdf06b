/** How far off hands and tools are with tape, turn and angle finder: standard deviations, in degrees and the job's unit. */
import { timesLikely } from '../../springback/how-rough.ts';
import { type Scatter, timesCommon, varianceOf, varianceWhere } from '../../springback/scatter.ts';
import type { Check } from '../../tube/job.ts';
import { convertLength } from '../../units/units.ts';
import type { Start } from '../log/start.ts';
import type { State } from '../log/state.ts';
import { OVALITY_SD } from '../reading/ovality.ts';

/** Rotations by hand and as read back, degrees (common practice, no source). */
export const SET_SD = 0.33;
export const READ_BACK_SD = 0.1;
/**
 * A length by hand: how hands make a mark, or lay straight edge and tape for a check, in millimeters whatever the tape; and rounding, of a mark
 * to a division of the tape, of a reading to half of one. With a tape in 16ths this is .4 and .3 of a division (common practice, no source). A finer
 * tape does not make hands finer.
 */
const MARK_BY_HAND = { handsMm: 0.44, rounding: 1 };
const CHECK_BY_HAND = { handsMm: 0.42, rounding: 0.5 };
/** A straight measured tangent to tangent, in divisions of the tape: nobody sees where a bend begins. */
export const LEG_SD = 1;

/**
 * Whose hands. Those that are rough at the bender are rough with tape and turn too, which nothing else tells. `times`: so many times as far off as
 * common ones, where that is not what `prior` shows.
 */
export interface WhoseHands extends Pick<Start, 'job'> {
	prior: { scatter: Scatter };
	times?: number;
}

/** Where the session's start is asked, what the sessions before it showed: so no reading changes what marks and turns already set are worth. */
const timesRougher = ({ prior, times }: WhoseHands): number => times ?? timesCommon(prior.scatter);

/**
 * Hands as they may be by all that has been shown, in this session too: sizes as likely as each other. What is told of a tube's chances
 * counts with these; what is asked for next does not.
 */
export const handsNow = ({ start: { job }, filter: { scatter } }: Pick<State, 'start' | 'filter'>): WhoseHands[] =>
	timesLikely(scatter).map((times) => ({ job, prior: { scatter }, times }));

/** That of rounding is a division over the root of 12. */
function byHand(shop: WhoseHands, { handsMm, rounding }: typeof MARK_BY_HAND): number {
	const { units, tooling } = shop.job;
	const hands = timesRougher(shop) * convertLength(handsMm, 'mm', units);
	return Math.hypot(hands, (rounding * tooling.tape) / Math.sqrt(12));
}

/** Of a mark as made, or of a cut. */
export const markSd = (shop: WhoseHands): number => byHand(shop, MARK_BY_HAND);
/** Of a length as measured with the tape. */
export const tapedSd = (shop: WhoseHands): number => byHand(shop, CHECK_BY_HAND);
/** Of a rotation as set, where it is not read back. */
export const turnSd = (shop: WhoseHands): number => timesRougher(shop) * SET_SD;
/** Of one reading with the angle finder. */
export const angleReadingSd = ({ prior: { scatter }, times }: WhoseHands): number =>
	Math.sqrt(times === undefined ? varianceOf('finder', scatter) : varianceWhere(times ** 2, 'finder', scatter));

/** Of one reading of a check: by tape and straight edge, or the angle finder's. */
export function checkReadingSd(shop: WhoseHands, check: Check): number {
	if (check.kind === 'ovality') return OVALITY_SD;
	return check.kind === 'angle' ? angleReadingSd(shop) : tapedSd(shop);
}
