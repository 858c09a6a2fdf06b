/**
 * What the pulls to come of one bend will cost, looked at from before them. A bend is a chain of pulls, each better known than the
 * last; every one may end it, come out short (then the next follows) or pass the upper tolerance. Solved backwards, stage by
 * stage (Bellman's dynamic programming), over where the target may lie between the dial's divisions.
 */

import { normalCdf } from '../maths/normal.ts';
import { nearestTo } from '../maths/scalar.ts';

/** The band to come out in, the part of bends that may pass it, and the dial's division. */
export interface Band {
	target: number;
	under: number;
	over: number;
	risk: number;
	dialStep: number;
}

/** Spread of stopping alone, and of a pull where machine and tube are known: standard deviations, degrees. */
export interface Hands {
	stopping: number;
	settled: number;
}

/** The prices of a bend in pulls: of passing the upper tolerance, and of passing it by far. */
export interface Prices {
	over: number;
	far: number;
}

/** A narrow band on the upper side is not all: this far over the target a tube is as bad as it is as far under. */
export function farOver({ under, over }: Pick<Band, 'under' | 'over'>): number {
	return Math.max(under, over);
}

/** One pull and what is read of it tell what machine and tube take back to within this, degrees. */
const TOLD_BY_A_PULL = 0.34;
/** Places of the target between two divisions that stand for all. */
const PLACES = 10;
const MOST_PULLS_AHEAD = 5;
/** No stop aims further below the upper tolerance than this many standard deviations. */
const FARTHEST_BELOW = 4;
/** A dial finer than this is as good as one without divisions. */
const FINEST = 0.1;
const PLANNED_STEP = 0.02;
/** Where a pull may leave any angle at all there is nothing to plan: it counts as this wide, and takes no longer to think about. */
const WIDEST_SPREAD = 20;

/** Spread of the next pull, after one that had `spread`. */
export function nextSpread(spread: number, { stopping, settled }: Hands): number {
	const unknown = Math.max(0, spread ** 2 - stopping ** 2);
	const left = (unknown * TOLD_BY_A_PULL ** 2) / (unknown + TOLD_BY_A_PULL ** 2);
	return Math.max(settled, Math.sqrt(stopping ** 2 + left));
}

/** Expected cost of a bend in pulls, and the probability that it passes its upper tolerance. */
export interface Prospect {
	cost: number;
	risk: number;
}

/** What to expect before a pull with a `spread`, at these prices. */
export type Prospects = (spread: number) => Prospect;

export function prospects(band: Band, hands: Hands, prices: Prices): Prospects {
	const known = new Map<number, Prospect>();
	const at = (spread: number, ahead: number): Prospect => {
		const sd = grained(spread);
		const key = ahead + sd * 1000;
		const before = known.get(key);
		if (before) return before;
		const next = grained(nextSpread(sd, hands));
		const settled = ahead >= MOST_PULLS_AHEAD || next >= sd;
		const found = stage(band, sd, prices, settled ? null : at(next, ahead + 1));
		known.set(key, found);
		return found;
	};
	return (spread) => at(spread, 0);
}

/** One pull with the best stop for each place of the target; `after`: what follows a short one, null when it is another such pull. */
function stage(band: Band, sd: number, prices: Prices, after: Prospect | null): Prospect {
	const step = Math.max(band.dialStep, FINEST);
	let [cost, risk] = [0, 0];
	for (let place = 0; place < PLACES; place++) {
		let best: Prospect = { cost: Number.POSITIVE_INFINITY, risk: 0 };
		for (let aim = -((place + 0.5) / PLACES) * step; ; aim -= step) {
			const here = pulled(band, aim, sd, prices, after);
			// Written so that a number that is none ends it too.
			if (!(here.cost < best.cost)) break;
			best = here;
			if (aim < band.over - FARTHEST_BELOW * sd) break;
		}
		cost += best.cost / PLACES;
		risk += best.risk / PLACES;
	}
	return { cost, risk };
}

/** A pull that aims at `aim` from the target. */
function pulled({ under, over }: Band, aim: number, sd: number, prices: Prices, after: Prospect | null): Prospect {
	const short = normalCdf((-under - aim) / sd);
	const past = normalCdf((aim - over) / sd);
	const far = farOver({ under, over });
	const one = 1 + prices.over * past + (far > over ? prices.far * normalCdf((aim - far) / sd) : 0);
	if (after) return { cost: one + short * after.cost, risk: past + short * after.risk };
	// The same pull again and again until it is not short: a geometric series.
	const ends = Math.max(1e-9, 1 - short);
	return { cost: one / ends, risk: past / ends };
}

function grained(spread: number): number {
	return Math.max(PLANNED_STEP, nearestTo(Math.min(WIDEST_SPREAD, spread), PLANNED_STEP));
}
