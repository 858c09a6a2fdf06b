/**
 * A simulated bender with a tube in it. A pull to the loaded dial angle L leaves max(before, reach(L) - seating error): pulling
 * again only adds. After release the dial shows the angle with its own lag and the seating error. Whoever turns the dial shifts all
 * that it shows from then on.
 */
import { nearestTo } from '../maths/scalar.ts';
import { drawLaw, type SpringbackLaw } from './laws.ts';
import type { Draw } from './random.ts';
import { type DrawRange, drawnWithin, oneShop, type World } from './world.ts';

/** What is special about one tube: take-up in degrees, and a factor on the part that springs back. */
export interface TubeOddity {
	takeUp: number;
	proportion: number;
}

/** How another die in the same machine differs from the first one: take-up and lag in degrees, and a factor on the part that springs back. */
export interface DieOddity {
	takeUp: number;
	lag: number;
	proportion: number;
}

const FIRST_DIE: DieOddity = { takeUp: 0, lag: 0, proportion: 1 };

export interface Shop {
	/** The world with what scatters as it does in this shop. */
	readonly world: World;
	/** A fresh tube of the same material. */
	newTube(): void;
	/** Another die goes in (the first without an oddity); the machine then reaches as far as `maxAngle`. */
	putIn(maxAngle: number, die?: DieOddity): void;
	/** A place on the tube that is bent to `angle` (0: straight) goes into the die. */
	seat(angle: number): void;
	/** Pulls toward the stop and lets go. */
	pull(stop: number): void;
	/** The dial as it is read: at the end of the stroke, and with the tube snug. Read again it may differ. */
	loaded(): number;
	snug(): number;
	/** Turns the dial, the tube snug, until it shows `to` as near as it is read. */
	setPointer(to: number): void;
	/** The angle finder. */
	finder(): number;
	/** Opens the bend by about so much. */
	relieve(by: number): void;
	/** From now on its take-up is so much larger, and the part that springs back: a worn die, other steel. */
	wear(takeUp: number, part?: number): void;
	/** The bend in the die as it truly is, once it has come to rest. */
	readonly angle: number;
	/** What a pull to exactly `loaded` leaves on this tube or another one, seating error and creep aside, with the dial as it came. */
	reach(loaded: number, tube?: TubeOddity): number;
	/** The dial's lag on a bent tube. */
	readonly lag: number;
	/** The dial's play: after release the needle stands anywhere in so many degrees. */
	readonly play: number;
	/** What the finder always shows too much. */
	readonly bias: number;
}

interface Machine {
	takeUp: number;
	proportion: number;
	law: SpringbackLaw;
	curvature: number;
	lag: number;
	backlash: number;
	drift: { takeUp: number; proportion: number };
	bias: number;
}

/** `maxAngle`: the largest loaded dial angle that the machine reaches with its first die. */
export function openShop(anyShop: World, draw: Draw, maxAngle: number): Shop {
	let [reaches, die] = [maxAngle, FIRST_DIE];
	const world = oneShop(anyShop, draw);
	const machine = newMachine(world, draw);
	const error = (sd: number) => (world.tails === null ? draw.normal(0, sd) : draw.heavy(sd, world.tails));
	let tubes = 0;
	let own: TubeOddity = { takeUp: 0, proportion: 1 };
	let walked = 0;
	let seating = 0;
	let angle = 0;
	/** What the bend will still open by itself. */
	let creep = 0;
	let held = 0;
	/** By how much the dial was turned. */
	let zero = 0;

	const seat = (from: number) => {
		angle = from;
		creep = 0;
		held = 0;
		seating = error(world.seating);
	};
	const reach = (loaded: number, tube = own) => {
		const u = loaded / 90;
		const day = tubes - 1;
		const takeUp = machine.takeUp + die.takeUp + tube.takeUp + machine.drift.takeUp * day + walked;
		const part = machine.proportion * die.proportion * tube.proportion * (1 + machine.drift.proportion * day);
		const { back, built } = machine.law;
		return loaded - takeUp * built(loaded) - part * back(loaded) - 4 * machine.curvature * u * (1 - u);
	};
	const dial = (value: number, sd: number) => nearestTo(value + error(sd), world.dial.division);
	const needle = () => {
		const play = draw.uniform(-machine.backlash / 2, machine.backlash / 2);
		return angle + creep + (angle > 0 ? machine.lag + die.lag : 0) + seating + play;
	};
	const newTube = () => {
		tubes += 1;
		own = {
			takeUp: draw.normal(0, world.tube.takeUp),
			proportion: Math.exp(draw.normal(0, world.tube.proportion)),
		};
		seat(0);
	};
	newTube();
	return {
		world,
		newTube,
		putIn(maxDial, oddity = FIRST_DIE) {
			[reaches, die] = [maxDial, oddity];
		},
		seat(from) {
			if (from === 0 && world.machine.drift.walk > 0) walked += draw.normal(0, world.machine.drift.walk);
			seat(from);
		},
		pull(stop) {
			held = Math.min(reaches, stop - zero + error(world.operator.stopping));
			const to = reach(Math.max(0, held)) - seating;
			if (to <= angle) return;
			creep = drawnWithin(world.machine.creep, draw);
			angle = Math.max(angle, to - creep);
		},
		loaded: () => dial(held + zero, world.dial.loaded),
		snug: () => dial(needle() + zero, world.dial.released),
		setPointer(to) {
			zero = to + error(world.dial.released) - needle();
		},
		finder() {
			creep = 0;
			return Math.max(0, nearestTo(angle + machine.bias + error(world.finder.sd), world.finder.division));
		},
		relieve(by) {
			angle = Math.max(0, angle - Math.max(0, draw.normal(by, 0.1 + 0.15 * by)));
		},
		wear(takeUp, part = 0) {
			machine.takeUp += takeUp;
			machine.proportion += part;
		},
		get angle() {
			return angle;
		},
		reach,
		lag: machine.lag,
		play: machine.backlash,
		bias: machine.bias,
	};
}

function newMachine({ machine, finder }: World, draw: Draw): Machine {
	const from = ([low, high]: DrawRange) => draw.uniform(low, high);
	const either = (range: DrawRange) => from(range) * (draw.happens(0.5) ? 1 : -1);
	const takeUp = 'mean' in machine.takeUp ? draw.normal(machine.takeUp.mean, machine.takeUp.sd) : from(machine.takeUp);
	const proportion = from(machine.proportion);
	const power = from(machine.hardening);
	const curvature = draw.normal(0, machine.curvature.sd);
	const over = from(machine.buildUp);
	return {
		takeUp,
		proportion,
		curvature,
		lag: machine.lagShare === null ? from(machine.lag) : from(machine.lagShare) * takeUp,
		backlash: from(machine.backlash),
		drift: { takeUp: either(machine.drift.takeUp), proportion: either(machine.drift.proportion) },
		bias: drawnWithin(finder.bias, draw),
		law: drawLaw(machine, { power, over }, draw),
	};
}
