import { type Judged, judged, keeps } from '../../fit/judged.ts';
import { at } from '../../maths/list.ts';
import { ROUNDING } from '../../maths/scalar.ts';
import { halfBand, weightedChance } from '../../maths/weighted.ts';
import { frames } from '../../tube/frames.ts';
import type { State } from '../log/state.ts';
import { limitsOf } from '../plan/design.ts';
import type { Numbers, Predicted } from '../protocol/asks.ts';
import { expectOvality, OVALITY_SD } from '../reading/ovality.ts';
import { checkReadingSd, handsNow } from './hands.ts';
import { type BendsLeft, type Might, type MightBe, mightBe } from './might-be.ts';

/** How sure a prediction is. */
export interface Odds {
	/** Give or take: nine in ten true values lie within 1.645 of it from what is told. */
	sd: { endOffset: number; endAngle: number };
	/** Of each check, in the file's order. */
	checks: number[];
	/** Probability that the tube truly fits. */
	chance: number;
	cloud: Cloud;
}

/** Tubes that this one may be, each made when it is asked for, with its weight, whether it fits, and what its checks come to. */
export interface Cloud extends Might {
	weights: number[];
	fits: boolean[];
	values: number[][];
}

/**
 * How sure it is what these numbers lead to. `told`: what is said of it, which the give or take lies about. A few hundred tubes are reckoned
 * through: this is for what is shown, not for a search.
 */
export function oddsOf(state: State, numbers: readonly Numbers[], left: BendsLeft, told: Predicted): Odds {
	const { count, tube, tried, fits } = trialsOf(state, numbers, left);
	const trials = Array.from({ length: count }, (_, k) => tried(k));
	const verdicts = trials.map(({ verdict }) => verdict);
	const weights = trials.map(({ weight }) => weight);
	const keeping = verdicts.map(fits);
	const spread = (of: (verdict: Judged) => number, value: number) => halfBand(verdicts.map(of), weights, value);
	return {
		sd: {
			endOffset: spread(({ endOffset }) => endOffset, told.endOffset),
			endAngle: spread(({ endAngle }) => endAngle, told.endAngle),
		},
		checks: told.checks.map(({ value }, i) => spread(({ values }) => at(values, i), value)),
		chance: weightedChance(keeping, weights),
		cloud: { count, tube, weights, fits: keeping, values: verdicts.map(({ values }) => values) },
	};
}

/** The chance alone that `oddsOf` tells. */
export function chanceToFit(state: State, numbers: readonly Numbers[], left: BendsLeft): number {
	return chanceUntil(state, numbers, left, () => false);
}

/** Whether the chance that `oddsOf` tells is at least so much: reckoned until the tubes that are left cannot change the answer. */
export function isLikely(state: State, numbers: readonly Numbers[], left: BendsLeft, least: number): boolean {
	// No tube weighs more than 1.
	const isSettled = (yes: number, all: number, rest: number) =>
		yes >= least * (all + rest) + ROUNDING || yes + rest < least * (all + rest) - ROUNDING;
	return chanceUntil(state, numbers, left, isSettled) >= least;
}

/** The part that fits of the tubes looked at until it is settled, by weight; `rest`: how many are left then. Each is made, judged and forgotten. */
function chanceUntil(
	state: State,
	numbers: readonly Numbers[],
	left: BendsLeft,
	isSettled: (yes: number, all: number, rest: number) => boolean,
): number {
	const { count, tried, fits } = trialsOf(state, numbers, left);
	let [yes, all] = [0, 0];
	for (let k = 0; k < count && !isSettled(yes, all, count - k); k++) {
		const { verdict, weight } = tried(k);
		all += weight;
		if (fits(verdict)) yes += weight;
	}
	return yes / all;
}

/** The tubes that this may be, and how each is judged. */
function trialsOf(state: State, numbers: readonly Numbers[], left: BendsLeft) {
	const limits = limitsOf(state);
	const round = state.design.checks.filter(({ check }) => check.kind === 'ovality');
	const weigh = weightByReadings(state);
	const might = mightBe(state, numbers, left, round.length);
	const judge = ({ finished, more }: MightBe): Judged => {
		const verdict = judged(frames(finished), limits);
		return round.length === 0 ? verdict : withRoundness(state, verdict, more);
	};
	return {
		...might,
		tried: (k: number): { verdict: Judged; weight: number } => {
			const maybe = might.tube(k);
			const verdict = judge(maybe);
			return { verdict, weight: weigh(verdict, maybe) };
		},
		fits: (verdict: Judged) => keeps(verdict, limits),
	};
}

/** Ovality follows from nothing else that is known of the tube: it is what the caliper said, or what is usual. */
function withRoundness<T extends { values: number[] }>(state: State, verdict: T, more: readonly number[]): T {
	let next = 0;
	const values = verdict.values.map((value, i) => {
		const { check } = at(state.design.checks, i);
		if (check.kind !== 'ovality') return value;
		const reading = state.checks[check.name]?.reading ?? null;
		const told = reading === null ? expectOvality() : { value: reading, sd: OVALITY_SD };
		return Math.min(1, told.value + told.sd * more[next++]!);
	});
	return { ...verdict, values };
}

/** A reading that is not told apart from a blunder is worth no more than this part of its likelihood. */
const BLUNDER = 0.03;

/** How likely each tube's hands are, and what readings say of it that the estimate could not take in: those near 0 that may be of either side. */
function weightByReadings(state: State): (verdict: Judged, maybe: MightBe) => number {
	const taken = state.design.checks.flatMap(({ check }, i) => {
		const { reading = null, count = 1 } = state.checks[check.name] ?? {};
		if (reading === null || count > 0 || check.kind === 'ovality') return [];
		const finest = Math.min(...handsNow(state).map((hands) => checkReadingSd(hands, check)));
		return [{ check, reading, i, finest }];
	});
	return ({ values }, { hands, weight }) =>
		taken.reduce((part, { check, reading, i, finest }) => {
			const sd = checkReadingSd(hands, check);
			const miss = (reading - at(values, i)) / sd;
			return part * ((1 - BLUNDER) * (finest / sd) * Math.exp(-0.5 * miss * miss) + BLUNDER);
		}, weight);
}
