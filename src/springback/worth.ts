/**
 * What a pull is worth. A stop is chosen among the dial's own divisions by weighing two misfortunes: coming out short, which
 * costs the pulls still to come, and passing the upper tolerance, which has a price. The price is one for all pulls of a bend,
 * and such that the whole bend takes the risk allowed: so the risk is spent where it buys most.
 */
import { halved } from '../maths/halving.ts';
import { normalCdf } from '../maths/normal.ts';
import { nearestTo, roundedTo, stepsWithin } from '../maths/scalar.ts';
import { chanceAbove, type Outcome } from './outcome.ts';
import { type Band, farOver, type Hands, nextSpread, type Prices, type Prospects, prospects } from './prospect.ts';

export type { Band, Hands } from './prospect.ts';

/** What a pull to `loaded` may leave. */
export type PullOutcome = (loaded: number) => Outcome;

/** No single pull takes more than this many times the bend's risk, wherever the divisions lie. */
const MOST_RISK = 3;
/**
 * Passing the tolerance is never priced under so many pulls over the risk: a generous band is no license. Where the band is narrow above,
 * being far over has a price of its own instead.
 */
const LEAST_PRICE = 0.19;
const LEAST_NARROW = 0.5;
const FAR_PRICE = 23;
/**
 * A band too narrow for these hands is bent at this price: the risk that is left then is said before the first pull. Three times the price
 * brought a simulated shop's risk in a band of a quarter degree from 4.0 to 3.7 %, and its longest bend from 17 pulls to 21.
 */
const LARGEST_PRICE = 150;
/** A pull that passes the upper tolerance with less than this probability is far enough below it, whatever the price: creeping there tells little. */
const FAR_ENOUGH = 0.0082;
const FARTHEST = 270;
/** Halvings that bring a stop to a thousandth of a degree: it goes to a division of the dial anyway. */
const ENOUGH = 18;
/** Divisions closer than this are looked at in strides first. */
const STRIDE_DEGREES = 0.1;

/** Where the bend in hand stands: its angle (0 while it is straight), and the spread of its first pull (null before it). */
export interface Stand {
	angle: number;
	first: number | null;
}

/** Of what is still missing to the band a pull should be expected to make at least this part, but for so many of its standard deviations. */
const PROGRESS = { part: 0.3, slack: 0.5 };
/** The dial division to stop at, 0 or up. */
export function worthiest(outcome: PullOutcome, band: Band, { angle, first }: Stand, hands: Hands): number {
	const { target, under, over, dialStep } = band;
	// One step from the target is near enough: the spread changes slowly.
	const { sd } = outcome(Math.max(0, 2 * target - outcome(target).mean));
	const spread = Math.max(first ?? sd, hands.settled);
	const { prices, ahead } = planFor(band, hands, spread);
	const again = ahead(nextSpread(sd, hands)).cost;
	const most = Math.min(0.5, MOST_RISK * band.risk);
	const far = farOver(band);
	const cost = (division: number) => {
		const at = outcome(division * dialStep);
		const past = chanceAbove(at, target + over);
		if (at.mean > target || past > most) return Number.POSITIVE_INFINITY;
		const beyond = far > over ? prices.far * chanceAbove(at, target + far) : 0;
		return again * normalCdf((target - under - at.mean) / at.sd) + prices.over * past + beyond;
	};
	const missing = Math.max(0, target - under - angle);
	const progress = first === null ? 0 : angle + PROGRESS.part * missing - PROGRESS.slack * sd;
	const enough = (at: Outcome) => at.mean < progress || chanceAbove(at, target + over) < FAR_ENOUGH;
	const top = stepsWithin(
		largest((loaded) => outcome(loaded).mean <= target, ENOUGH),
		dialStep,
	);
	const stride = Math.max(1, Math.round(STRIDE_DEGREES / dialStep));
	const low = stepsWithin(
		largest((loaded) => enough(outcome(loaded)), ENOUGH),
		dialStep,
	);
	const near = cheapestDivision(cost, top, low, stride);
	const best = stride === 1 ? near : cheapestDivision(cost, Math.min(top, near + stride), low, 1);
	return roundedTo(best * dialStep, 9);
}

/**
 * The division from `top` down to `low` where the cost is least: it falls at first, and then rises. Where none of them is allowed
 * (their cost is infinite), the first one under them that is.
 */
function cheapestDivision(cost: (division: number) => number, top: number, low: number, stride: number): number {
	let [best, least] = [0, Number.POSITIVE_INFINITY];
	for (let division = top + stride; division >= 0; division -= stride) {
		if (division < low && least < Number.POSITIVE_INFINITY) break;
		const here = cost(division);
		if (here === Number.POSITIVE_INFINITY) continue;
		if (here >= least) break;
		[best, least] = [division, here];
	}
	return best;
}

interface BendPlan {
	prices: Prices;
	ahead: Prospects;
}

/** What a bend is planned to take, its first pull having this spread: pulls on average, and the part of bends that pass the tolerance. */
export function planned(band: Omit<Band, 'target'>, hands: Hands, spread: number): { pulls: number; risk: number } {
	const { prices, ahead } = planFor(band, hands, Math.max(spread, hands.settled));
	const { cost, risk } = ahead(spread);
	return { pulls: cost - prices.over * risk, risk };
}

/** Plans already made: a bench stays the same all through, and a plan takes a millisecond. */
const plans = new Map<string, BendPlan>();
const MOST_PLANS = 500;

/** The price at which a bend whose first pull has this spread takes the risk allowed. */
function planFor(band: Omit<Band, 'target'>, hands: Hands, first: number): BendPlan {
	const [spread, settled, stopping] = [
		nearestTo(first, 0.04),
		nearestTo(hands.settled, 0.02),
		nearestTo(hands.stopping, 0.02),
	];
	const { under, over, risk, dialStep } = band;
	const key = [under, over, risk, dialStep, spread, settled, stopping].join(' ');
	const before = plans.get(key);
	if (before) return before;
	const at = (price: number): BendPlan => {
		const prices = { over: price, far: FAR_PRICE };
		return { prices, ahead: prospects({ ...band, target: 0 }, { settled, stopping }, prices) };
	};
	const risky = (plan: BendPlan) => plan.ahead(spread).risk > risk;
	const least = Math.log(farOver(band) > over ? LEAST_NARROW : LEAST_PRICE / Math.max(risk, 1e-3));
	let plan = at(Math.exp(least));
	if (risky(plan)) {
		const [, price] = halved((price) => risky(at(Math.exp(price))), least, Math.log(LARGEST_PRICE), 12);
		plan = at(Math.exp(price));
	}
	if (plans.size >= MOST_PLANS) plans.clear();
	plans.set(key, plan);
	return plan;
}

/** The largest dial angle that `holds`, by bisection; `holds` is true up to somewhere and false from there. */
export function largest(holds: (loaded: number) => boolean, halvings = 30): number {
	return halved(holds, 0, FARTHEST, halvings)[0];
}
