/**
 * What a pull is worth. A stop is chosen among the dial's own divisions by weighing two misfortunes: coming out short, which
 * costs another pull, and passing the upper tolerance, which costs `price` times as much. A fixed price spends the risk where it
 * buys most; a fixed margin would waste what rounding down gives away. The price follows from the risk that is allowed.
 */
import { SEAT_SD, STOPPING_SD } from './model.ts';
import { normalCdf } from './student-t.ts';

/** What a pull to `loaded` leaves: mean and standard deviation of the angle. */
export type Outcome = (loaded: number) => { mean: number; sd: number };

/** The band to come out in, the part of bends that may pass it, and the dial's division. */
export interface Band {
	target: number;
	under: number;
	over: number;
	risk: number;
	dialStep: number;
}

/** How a normalised miss is distributed: P(x or less). */
export type Tail = (x: number) => number;

/** A pull where machine and tube are known: stopping, and a seat known by one look at the dial. */
const SETTLED_SD = Math.hypot(STOPPING_SD, 0.7 * SEAT_SD);
/** Part of a bend's risk that one such pull may take, on average over where the target lies between the dial's divisions. */
const SHARE = 0.68;
/** No single pull takes more than this many times the bend's risk, wherever the divisions lie. */
const MOST = 3;
/** A pull wider than this many settled ones will hardly end the bend: it is priced higher, by this power of how much wider. */
const WIDE = { from: 1.3, power: 1 };
/** So is each further pull of a bend, since those before it took their part of the risk. */
const FURTHER = 0.5;
/** So many standard deviations below the upper tolerance is far enough, whatever the price: creeping there tells little. */
const FAR_ENOUGH = 2.5;
const FARTHEST = 270;
/** Halvings that bring a stop to a thousandth of a degree: it goes to a division of the dial anyway. */
const ENOUGH = 18;
/** The price is never under this over the risk: a generous band is no licence. */
const LEAST = 0.16;
const LARGEST_PRICE = 1e5;
const OFFSETS = 50;

/** The dial division to stop at, 0 or up; `pulls` were made of this bend already. `tail` with its `quantile`. */
export function worthiest(outcome: Outcome, band: Band, pulls: number, tail: Tail, quantile: Tail): number {
	// One step from the target is near enough: the spread changes slowly.
	const near = Math.max(0, 2 * band.target - outcome(band.target).mean);
	const wide = outcome(near).sd / (WIDE.from * SETTLED_SD);
	const price = priceOf(band) * Math.max(1, wide) ** WIDE.power * (1 + pulls) ** FURTHER;
	const margin = quantile(1 - Math.min(0.5, MOST * band.risk));
	const allowed: Allowed = ({ mean, sd }) => mean <= band.target && mean + margin * sd <= band.target + band.over;
	return divisionFor(outcome, band, price, tail, allowed);
}

type Allowed = (at: ReturnType<Outcome>) => boolean;

function divisionFor(outcome: Outcome, band: Band, price: number, tail: Tail, allowed: Allowed): number {
	const { target, dialStep } = band;
	const [low, high] = [target - band.under, target + band.over];
	// Where the two densities stand as 1 to `price`: the best of all stops, had the dial no divisions.
	const back = Math.log(price) / (high - low);
	const aim = largest((loaded) => {
		const at = outcome(loaded);
		const dear = (low + high) / 2 - at.sd * at.sd * back;
		return allowed(at) && at.mean <= Math.max(dear, high - FAR_ENOUGH * at.sd);
	}, ENOUGH);
	const below = Math.floor(aim / dialStep + 1e-9);
	const [lower, upper] = [outcome(below * dialStep), outcome((below + 1) * dialStep)];
	const cost = ({ mean, sd }: ReturnType<Outcome>) => tail((low - mean) / sd) + price * tail((mean - high) / sd);
	const up = allowed(upper) && cost(upper) < cost(lower);
	return Number(((up ? below + 1 : below) * dialStep).toFixed(9));
}

/** The last price worked out: a job's band, risk and dial stay the same all through, and the search takes a millisecond. */
let last = { band: '', price: 1 };

/** At which price settled pulls take their share of the risk: the more may pass, the less it costs. */
function priceOf({ under, over, risk, dialStep }: Band): number {
	const band = [under, over, risk, dialStep].join(' ');
	if (last.band === band) return last.price;
	let [low, high] = [Math.log(Math.max(1, LEAST / risk)), Math.log(LARGEST_PRICE)];
	for (let i = 0; i < 25; i++) {
		const middle = (low + high) / 2;
		if (settledRisk({ target: 0, under, over, risk, dialStep }, Math.exp(middle)) > SHARE * risk) low = middle;
		else high = middle;
	}
	last = { band, price: Math.exp(high) };
	return last.price;
}

/** Probability that a settled pull at this price passes the band, over all ways the divisions may lie. */
function settledRisk(band: Band, price: number): number {
	const far = 100 * band.dialStep + 10;
	let sum = 0;
	for (let i = 0; i < OFFSETS; i++) {
		const outcome = (loaded: number) => ({ mean: loaded - far + (i / OFFSETS) * band.dialStep, sd: SETTLED_SD });
		const { mean, sd } = outcome(divisionFor(outcome, band, price, normalCdf, () => true));
		sum += normalCdf((mean - band.over) / sd);
	}
	return sum / OFFSETS;
}

/** The largest dial angle that `holds`, by bisection; `holds` is true up to somewhere and false from there. */
export function largest(holds: (loaded: number) => boolean, halvings = 30): number {
	let [low, high] = [0, FARTHEST];
	for (let i = 0; i < halvings; i++) {
		const middle = (low + high) / 2;
		if (holds(middle)) low = middle;
		else high = middle;
	}
	return low;
}
