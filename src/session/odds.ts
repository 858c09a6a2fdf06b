import { chanceOf, giveOrTake, judged, keeps } from '../fit/verdict.ts';
import { frames } from '../tube/frames.ts';
import { at } from './as-built.ts';
import { limitsOf } from './design.ts';
import { checkReadingSd } from './estimate.ts';
import { type Left, type MightBe, mightBe } from './might-be.ts';
import { expectOvality, OVALITY_SD } from './ovality.ts';
import type { Numbers, Predicted } from './protocol.ts';
import type { State } from './state.ts';

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

/** Tubes that this one may be, each with its weight, whether it fits, and what its checks come to. */
export interface Cloud {
	tubes: MightBe[];
	weights: number[];
	fits: boolean[];
	values: number[][];
}

/**
 * How sure it is what these numbers lead to. `told`: what is said of it, which the give or take lies about. A few hundred tubes are reckoned
 * through: this is for what is shown, not for a search.
 */
export function oddsOf(state: State, numbers: readonly Numbers[], left: Left, told: Predicted): Odds {
	const limits = limitsOf(state);
	const round = state.design.checks.filter(({ check }) => check.kind === 'ovality');
	const tubes = mightBe(state, numbers, left, round.length);
	const verdicts = tubes.map(({ finished, more }) => withRoundness(state, judged(frames(finished), limits), more));
	const weights = weightsOf(
		state,
		verdicts.map(({ values }) => values),
	);
	const fits = verdicts.map((verdict) => keeps(verdict, limits));
	const spread = (of: (k: number) => number, value: number) =>
		giveOrTake(
			tubes.map((_, k) => of(k)),
			weights,
			value,
		);
	return {
		sd: {
			endOffset: spread((k) => at(verdicts, k).endOffset, told.endOffset),
			endAngle: spread((k) => at(verdicts, k).endAngle, told.endAngle),
		},
		checks: told.checks.map(({ value }, i) => spread((k) => at(at(verdicts, k).values, i), value)),
		chance: chanceOf(fits, weights),
		cloud: { tubes, weights, fits, values: verdicts.map(({ values }) => values) },
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

/** What readings say of each tube that the estimate could not take in: those near 0 that may be of either side. */
function weightsOf(state: State, values: readonly (readonly number[])[]): number[] {
	const taken = state.design.checks.flatMap(({ check }, i) => {
		const { reading = null, count = 1 } = state.checks[check.name] ?? {};
		return reading === null || count > 0 || check.kind === 'ovality' ? [] : [{ check, reading, i }];
	});
	return values.map((row) =>
		taken.reduce((weight, { check, reading, i }) => {
			const miss = (reading - row[i]!) / checkReadingSd(state.start.job, check);
			return weight * ((1 - BLUNDER) * Math.exp(-0.5 * miss * miss) + BLUNDER);
		}, 1),
	);
}
