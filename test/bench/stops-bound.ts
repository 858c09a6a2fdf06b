/**
 * A bound: the fewest pulls a bend that any rule can take with no more than a given part of bends over their band and a given part short
 * of it. It is worked out for a rule that knows what no program can: machine, tube, and every error's size, so that only the seat and
 * the end of the stroke are left to chance; no number it reads is wrong; and whenever it goes on, it is told where the bend truly lies.
 * It reads the dial before, under and after the pull and then the angle finder, as everybody does. Its best plan is found
 * backwards over all stops (Bellman), an end over or short of the band having a price; the prices times the parts taken off, what is left is
 * a bound for every rule with no larger parts (weak duality of Lagrange). Nothing of the springback room is used.
 */
import { placeOfLeast } from '../../src/maths/golden-section.ts';
import { normalCdf, normalQuantile } from '../../src/maths/normal.ts';
import { clamp } from '../../src/maths/scalar.ts';

/** Standard deviations, degrees, rounding counted in. */
export interface Chances {
	stopping: number;
	seat: number;
	/** The dial under load; the dial with the tube snug before and after the pull, null where it is not read; all readings of the finder together. */
	loaded: number;
	before: number | null;
	after: number | null;
	finder: number;
}

/** The band about the target, and how far apart two stops leave a bend. Degrees. */
export interface Asked {
	under: number;
	over: number;
	step: number;
}

/** A kind of bend; `first`: how uncertain machine and tube make its first pull, after which both are known. 0: before it, too. */
export interface Kind {
	chances: Chances;
	asked: Asked;
	first: number;
}

/** Parts of bends that end over and short. */
export interface Parts {
	over: number;
	short: number;
}

/** Grains of the grid in one spread of a pull, and how many spreads below the band it begins and above it ends. */
const GRAINS = 8;
const BELOW = 4.5;
const ABOVE = 2.5;
/** Places of the target between two stops, and looks at the dial before a pull, that stand for all. */
const PLACES = 4;
const LOOKS = 5;
/** Bins of the finder in one of its deviations. */
const FINE = 1.5;
const MOST_ROUNDS = 100;
const STILL = 2e-4;
const UNLIKELY = 1e-7;

const evenly = (n: number) => Array.from({ length: n }, (_, i) => (i + 0.5) / n);

const together = (...sds: number[]) => 1 / Math.sqrt(sds.reduce((sum, sd) => sum + 1 / sd ** 2, 0));

/** One kind of bend, at prices in pulls. Angles are from the target, on a grid. */
class Plan {
	readonly #angles: number[];
	/** How far the seat is thought to lie off after the look at the dial: values of equal weight. */
	readonly #looks: readonly number[];
	readonly #grain: number;
	/** By what the dial tells, the angle that the pull would leave on a straight tube. */
	readonly #told: readonly Float64Array[];
	/** How far what the dial will tell may lie from the aim; in a bend's first pull, too. */
	readonly #untold: number;
	readonly #untoldFirst: number;
	/** What it will tell, by that and by the aim in grains. */
	readonly #aimed = new Map<string, Float64Array>();
	/** Of each bin of the finder, its probability at each angle. */
	readonly #found: readonly Float64Array[];
	/** What a pull is expected to cost at each angle, by the place of the target. */
	readonly #costs: Float64Array[];

	constructor(readonly kind: Kind) {
		const { chances, asked, first } = kind;
		const { stopping, seat, loaded, before, after, finder } = chances;
		const left = before === null ? seat : together(seat, before);
		const spread = Math.hypot(stopping, left);
		const grain = spread / GRAINS;
		const low = -asked.under - BELOW * spread;
		const points = Math.ceil((asked.over + ABOVE * spread - low) / grain);
		this.#angles = Array.from({ length: points }, (_, i) => low + i * grain);
		const known = Math.hypot(together(stopping, loaded, ...(after === null ? [] : [after])), left);
		this.#grain = grain;
		this.#untold = Math.sqrt(spread ** 2 - known ** 2);
		this.#untoldFirst = Math.hypot(this.#untold, first);
		const looked = Math.sqrt(seat ** 2 - left ** 2);
		this.#looks = looked === 0 ? [0] : evenly(LOOKS).map((part) => looked * normalQuantile(part));
		this.#told = this.#angles.map((mean) => this.#weights(mean, known));
		const bin = finder / FINE;
		const bins = Math.ceil((points * grain) / bin);
		this.#found = Array.from({ length: bins }, (_, k) =>
			Float64Array.from(this.#angles, (angle) => {
				const up = k === bins - 1 ? 1 : normalCdf((low + (k + 1) * bin - angle) / finder);
				return k === 0 ? up : up - normalCdf((low + k * bin - angle) / finder);
			}),
		);
		this.#costs = evenly(PLACES).map(() => new Float64Array(points));
	}

	/** A normal distribution over the grid; what lies beyond it counts at its ends. */
	#weights(mean: number, sd: number): Float64Array {
		const last = this.#angles.length - 1;
		const ups = this.#angles.map((angle, i) => (i === last ? 1 : normalCdf((angle + this.#grain / 2 - mean) / sd)));
		return Float64Array.from(ups, (up, i) => up - (ups[i - 1] ?? 0));
	}

	/** Pulls and prices of a bend from straight. */
	cost(prices: Parts): number {
		const { asked } = this.kind;
		// Of what lies in a grain, the part beyond the band's edge.
		const part = (beyond: number) => clamp(beyond / this.#grain + 0.5, 0, 1);
		const ends = Float64Array.from(
			this.#angles,
			(angle) => prices.over * part(angle - asked.over) + prices.short * part(-asked.under - angle),
		);
		const all = evenly(PLACES).map((place, i) => {
			for (let round = 0; round < MOST_ROUNDS; round++) {
				const before = this.#costs[i]!;
				const next = this.#pulled(this.#ended(before, ends), this.#untold, place);
				this.#costs[i] = next;
				if (next.every((cost, k) => Math.abs(cost - before[k]!) < STILL)) break;
			}
			return this.#pulled(this.#ended(this.#costs[i]!, ends), this.#untoldFirst, place)[0]!;
		});
		return all.reduce((sum, cost) => sum + cost, 0) / all.length;
	}

	/** After a pull of which the dial tells this much, and the finder's readings: ended where that costs less than going on. By that, then by angle before. */
	#ended(goingOn: Float64Array, ends: Float64Array): Float64Array[] {
		const points = this.#angles.length;
		return this.#told.map((told) => {
			const sum = new Float64Array(points);
			for (const found of this.#found) {
				let [endsAbove, onAbove, below] = [0, 0, 1];
				// From the largest angle down: a bend that lay at `i` stays there where the pull would leave less.
				for (let i = points - 1; i >= 0; i--) {
					const stays = below * found[i]!;
					sum[i]! += Math.min(endsAbove + stays * ends[i]!, onAbove + stays * goingOn[i]!);
					const here = told[i]! * found[i]!;
					endsAbove += here * ends[i]!;
					onAbove += here * goingOn[i]!;
					below -= told[i]!;
				}
			}
			return sum;
		});
	}

	/** A pull to the best stop at each angle, over all looks at the dial. */
	#pulled(byTold: readonly Float64Array[], untold: number, place: number): Float64Array {
		const points = this.#angles.length;
		const best = new Float64Array(points).fill(1);
		const known = new Map<number, Float64Array>();
		for (const look of this.#looks) {
			const costs = this.#stops(place, look, untold).map((aim) => {
				const cost = known.get(aim) ?? mixed(this.#toldAfter(aim, untold), byTold);
				known.set(aim, cost);
				return cost;
			});
			for (let i = 0; i < points; i++) {
				let least = Number.POSITIVE_INFINITY;
				for (const cost of costs) least = Math.min(least, cost[i]!);
				best[i]! += least / this.#looks.length;
			}
		}
		return best;
	}

	/** The stops from the band's top down to where nothing is risked, as aims in grains above the grid's beginning; those of a wide first pull lie below it. */
	#stops(place: number, look: number, untold: number): number[] {
		const { step, over, under } = this.kind.asked;
		const lowest = Math.min(this.#angles[0]!, -under - BELOW * untold);
		const list: number[] = [];
		for (let aim = over - place * step - look; aim >= lowest; aim -= step) {
			list.push(Math.round((aim - this.#angles[0]!) / this.#grain));
		}
		return list;
	}

	#toldAfter(aim: number, untold: number): Float64Array {
		const key = `${aim} ${untold}`;
		const known = this.#aimed.get(key) ?? this.#weights(this.#angles[0]! + aim * this.#grain, untold);
		this.#aimed.set(key, known);
		return known;
	}
}

function mixed(weight: Float64Array, values: readonly Float64Array[]): Float64Array {
	const sum = new Float64Array(values[0]!.length);
	for (const [k, part] of weight.entries()) {
		if (part < UNLIKELY) continue;
		const value = values[k]!;
		for (let i = 0; i < sum.length; i++) sum[i]! += part * value[i]!;
	}
	return sum;
}

/** Prices looked at in turn, as logarithms. */
const LOOKED_AT = { over: [Math.log(2), Math.log(600)], short: [Math.log(0.1), Math.log(20)] } as const;
const TURNS = 2;
const STEPS = 6;

/** The fewest pulls a bend, of kinds of equal weight, at no more of either end; any prices give a bound, and these give nearly the highest. */
export function fewestPulls(kinds: readonly Kind[], parts: Parts): number {
	const plans = kinds.map((kind) => new Plan(kind));
	const prices: Parts = { over: 30, short: 2 };
	let highest = 0;
	const boundAt = (end: keyof Parts, price: number) => {
		prices[end] = Math.exp(price);
		const cost = plans.reduce((sum, plan) => sum + plan.cost(prices), 0) / plans.length;
		const bound = cost - prices.over * parts.over - prices.short * parts.short;
		highest = Math.max(highest, bound);
		return bound;
	};
	for (let turn = 0; turn < TURNS; turn++) {
		for (const end of ['over', 'short'] as const) {
			prices[end] = Math.exp(placeOfLeast(...LOOKED_AT[end], (price) => -boundAt(end, price), STEPS));
		}
	}
	return highest;
}
