/** A simulated bender with its operator, as the rules under comparison use it: what is read comes as keyed, blunders included. */
import { keyed } from '../../src/practice/keyed.ts';
import { draws } from '../../src/practice/random.ts';
import { openShop, type Shop } from '../../src/practice/shop.ts';
import type { World } from '../../src/practice/world.ts';

export interface Station {
	shop: Shop;
	world: World;
	/** A number as it is keyed. */
	key(value: number): number;
	/** Readings as keyed: the dial under load, the dial with the tube snug, the angle finder. */
	loaded(): number;
	snug(): number;
	finder(): number;
}

const MAX_ANGLE = 240;

export function openStation(world: World, seed: number): Station {
	const draw = draws(seed);
	const shop = openShop(world, draw, MAX_ANGLE);
	const key = (value: number) => keyed(value, world, draw);
	return {
		shop,
		world: shop.world,
		key,
		loaded: () => key(shop.loaded()),
		snug: () => key(shop.snug()),
		finder: () => key(shop.finder()),
	};
}

/** What is asked of a bend. */
export interface Wanted {
	target: number;
	under: number;
	over: number;
	risk: number;
}

/** One pull: the stop asked for, the risk that was stated for it (null by rules that state none), and the true angle it left. */
export interface Stroke {
	stop: number;
	stated: number | null;
	angle: number;
}

/** What a bend took, and its true angle in the end. */
export interface Taken {
	pulls: number;
	seats: number;
	angle: number;
	strokes: readonly Stroke[];
}

/** A way of deciding where to stop, with what it remembers of this bender. */
export interface Rule {
	newTube(): void;
	bend(wanted: Wanted): Taken;
}

/** A bend that will not end is given up here, and counts as it stands. */
export const MOST_PULLS = 40;
