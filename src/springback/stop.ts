/** Where to stop the next pull, and whether the bend in hand will do. */

import { maxMoments } from '../maths/gaussian.ts';
import { ceilTo, floorTo, nearestTo, roundedTo } from '../maths/scalar.ts';
import { asFarAsBefore, type Filter, knownTubeSd, made, newSeat, reach, stoppingVariance, zeroOf } from './filter.ts';
import { beyond, lateBy, mayBeShort } from './late.ts';
import { SEAT } from './model.ts';
import { chanceAbove, outcomeAt } from './outcome.ts';
import { type Hands, largest, worthiest } from './worth.ts';

/**
 * A bend that its dial shows short with this probability is pulled again where it lies. While the dial leaves the angle wider
 * than `sd` (its lag is not known yet) a finder tells more than another pull, so only a bend far short is pulled again.
 */
const SHORT_FOR_SURE = { probability: 0.98, sd: 0.5, wide: 0.9999 };
/**
 * Before the finder has told anything of a tube, only a bend that the dial shows this much short is pulled again on the dial alone: the pull
 * after it is built on what the first one sprang back, where a wrong number of a few degrees would not stand out.
 */
const FAR_SHORT = 5;
const LEAD = 3;
/**
 * A next stop lies beyond what was held, by a whole division of the dial. A bend that is a little short is pulled again only where the chance that
 * this brings it into its band is worth the risk that it passes it: at so many times the risk allowed for a bend. Tuned on seeds 931,000 and 940,000.
 */
export const WORTH_RISKING = 12.5;
/**
 * The same for hands that set the dial: what was held is then told by a dial that has been turned since, and a division beyond it may be any angle.
 * And the part of the job's risk that their pulls are planned with, since what a set dial hides is more than the filter can tell. At 12.5 and all of it they had
 * 7 in 100 bends over, at 3 between 4 and 5, at 2 and .6 between 2.6 and 3.5, in .1 pulls more, with more bends a little short (seeds from 935,000).
 */
const WORTH_RISKING_SET = 2;
const PLANNED_SET = 0.6;

export interface StopRequest {
	/** The angle to make, and how far under and over it may come out. */
	target: number;
	under: number;
	over: number;
	/** Part of bends that may come out above target + over. */
	risk: number;
	dialStep: number;
	maxAngle: number;
	/** Largest dial angle already reached in this seat, null in a fresh one: stopping there again moves nothing. */
	loadedBefore: number | null;
	/** Where the dial was told to stand with the bent tube snug before this pull, null where nobody looked: a stop there moves nothing. */
	snug?: number | null;
	/** Whether the angle finder has told anything of this tube, or is not asked. */
	measured: boolean;
	/** The operator pulls against the advice: stop at least one dial step where the tube is expected to move. */
	forced?: boolean;
}

export interface StopSuggestion {
	/** Loaded dial angle to stop at, a multiple of the dial step. */
	stop: number;
	/** Where to ease up; null when the stroke is too short for it. */
	lead: number | null;
	/** True angle after release, the operator stopping within his scatter. */
	expect: { angle: number; sd: number };
	/** Probability of coming out above target + over. */
	risk: number;
	/** The machine's largest angle caps the stop. */
	limit: boolean;
}

/** The dial's division that aims at or under the target and is worth most at the risk allowed. */
export function suggestStop(f: Filter, req: StopRequest): StopSuggestion {
	const wanted = Math.max(best(f, req), leastStop(f, req));
	const cap = floorTo(req.maxAngle, req.dialStep);
	const stop = Math.min(wanted, cap);
	const easing = stop - (req.loadedBefore ?? 0) > 2 * LEAD;
	return {
		stop,
		lead: easing ? floorTo(stop - LEAD, req.dialStep) : null,
		expect: expectedAfter(f, stop),
		risk: riskAt(f, stop, req.target + req.over),
		limit: wanted > cap,
	};
}

/** The stop that is worth most: a multiple of the dial step. */
function best(f: Filter, req: StopRequest): number {
	const outcome = (loaded: number) => outcomeAt(f, loaded);
	const stand = { angle: made(f).angle, first: f.pulls === 0 ? null : f.first };
	const risk = f.setting > 0 ? PLANNED_SET * req.risk : req.risk;
	return worthiest(outcome, { ...req, risk }, stand, handsOf(f));
}

/** The spreads that a plan reckons with. */
export function handsOf(f: Filter): Hands {
	return { stopping: Math.sqrt(stoppingVariance(f)), settled: knownTubeSd(f) };
}

/**
 * In the same seat a pull that stops no further than the last moves nothing, nor does one that stops where the dial stands before it; in a fresh one a
 * stop lies beyond what was held, but where the dial was told to have moved. A late bend's lies further beyond. One against the advice has to move the tube.
 */
function leastStop(f: Filter, req: StopRequest): number {
	const { dialStep, loadedBefore, snug, forced } = req;
	const stands = Math.max(loadedBefore ?? 0, snug ?? 0);
	const next = Math.max(floorTo(stands, dialStep) + dialStep, beyondHeld(f, dialStep), pastLateOnset(f, req));
	return roundedTo(forced ? Math.max(next, ceilTo(predictStop(f, made(f).angle) + dialStep, dialStep)) : next, 9);
}

/** The next division beyond what was held; where the dial has moved back since, as far as the furthest stop went. */
function beyondHeld(f: Filter, dialStep: number): number {
	const asFar = floorTo(asFarAsBefore(f), dialStep);
	if (f.moved < 0 || f.held === 0) return asFar;
	return Math.max(asFar, floorTo(f.held, dialStep) + dialStep);
}

/** A late bend's stop: beyond the furthest that left it short, by no more than what is missing. */
function pastLateOnset(f: Filter, req: StopRequest): number {
	const late = lateBy(f.pulls, req);
	if (late <= 0 || f.stopped === 0) return 0;
	return nearestTo(asFarAsBefore(f) + beyond(late, req.target - made(f).angle), req.dialStep);
}

/** The loaded dial angle that is expected to leave `angle`: springback and take-up added. */
export function predictStop(f: Filter, angle: number): number {
	return largest((loaded) => reach(f, loaded).mean <= angle);
}

function expectedAfter(f: Filter, stop: number): { angle: number; sd: number } {
	const now = reach(f, stop);
	const before = { mean: made(f).angle, variance: made(f).sd ** 2 };
	const max = maxMoments({ mean: now.mean, variance: now.variance + stoppingVariance(f) }, before, now.withAngle);
	return { angle: max.mean, sd: Math.sqrt(max.variance) };
}

/** Of the pull, or already so before it. */
function riskAt(f: Filter, stop: number, most: number): number {
	return Math.max(chanceAbove(outcomeAt(f, stop), most), madeAbove(f, most));
}

/** Probability that the bend in hand lies above `bound`. */
function madeAbove(f: Filter, bound: number): number {
	const { angle, sd } = made(f);
	return chanceAbove({ mean: angle, sd, variation: 0 }, bound);
}

export interface Acceptance {
	/** Probabilities that the bend in hand lies above its band, below it, within it. */
	over: number;
	under: number;
	within: number;
	/** Worth another pull: more probably short than not, and a late bend, or one whose next stop is too far, more probably yet. */
	short: boolean;
	/** The dial alone shows it short, and the stop suggested would move it: pull again without taking the tube out. */
	likelyShort: boolean;
	/** Taken although it is a little more probably short than not, since the next division has this risk to pass the tolerance; else null. */
	nextTooFar: number | null;
}

/** The risk of a pull in a fresh seat to the division beyond what was held, where that is too much for what it may bring; else null. */
function tooFar(f: Filter, req: StopRequest, within: number): number | null {
	if (f.held === 0) return null;
	const again = newSeat(f);
	const stop = beyondHeld(again, req.dialStep);
	const reached = chanceAbove(outcomeAt(again, stop), req.target - req.under);
	const risk = riskAt(again, stop, req.target + req.over);
	const gained = Math.max(reached, 1 - (1 - reached) * (1 - within)) - risk - within;
	const worth = f.setting > 0 ? WORTH_RISKING_SET : WORTH_RISKING;
	return risk > req.risk * Math.max(1, worth * gained) ? risk : null;
}

/** How the bend in hand lies to its tolerance. */
export function accept(f: Filter, req: StopRequest): Acceptance {
	const { angle, sd } = made(f);
	const over = madeAbove(f, req.target + req.over);
	const under = 1 - madeAbove(f, req.target - req.under);
	// A bend opens when it is let go, so one held below its band is short before the dial after release is read.
	const shown = f.seen || f.held < req.target - req.under;
	const surely = shown && under > (sd > SHORT_FOR_SURE.sd ? SHORT_FOR_SURE.wide : SHORT_FOR_SURE.probability);
	const told = req.measured || angle < req.target - req.under - FAR_SHORT;
	const likelyShort = surely && told && best(f, req) > (req.loadedBefore ?? 0);
	const within = 1 - over - under;
	const nextTooFar = under > 0.5 ? tooFar(f, req, within) : null;
	const short = nextTooFar === null && under > mayBeShort(lateBy(f.pulls, req));
	return { over, under, within, short, likelyShort, nextTooFar };
}

/** How far a tube held at this stop is expected to spring back, degrees; where the dial stands, by itself or since it moved, is no part of it. */
export function expectedSpringback(f: Filter, { stop }: StopSuggestion): number {
	const stands = f.moved === 0 ? zeroOf(f) : f.mean[SEAT]!;
	return stop - stands - reach(f, stop).mean;
}
