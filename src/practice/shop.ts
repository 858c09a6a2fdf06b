/**
 * A simulated bender with a tube in it. A pull to the loaded dial angle L leaves max(before, reach(L) - seating error): pulling
 * again only adds. After release the dial shows the angle with its own lag and the seating error.
 */
import type { Draw } from './random.ts';
import type { Onset, Range, World } from './world.ts';

export interface Shop {
	/** A fresh tube of the same material. */
	newTube(): void;
	/** A place on the tube that is bent to `angle` (0: straight) goes into the die. */
	seat(angle: number): void;
	/** Pulls towards the stop and lets go. */
	pull(stop: number): void;
	/** The dial as it is read: at the end of the stroke, and with the tube snug. Read again it may differ. */
	loaded(): number;
	snug(): number;
	/** The angle finder. */
	finder(): number;
	/** Opens the bend by about so much. */
	relieve(by: number): void;
	/** The bend in the die as it truly is. */
	readonly angle: number;
	/** What a pull stopping exactly at `loaded` leaves, seating error aside. */
	reach(loaded: number): number;
	/** The dial's lag on a bent tube. */
	readonly lag: number;
	/** The dial's play: after release the needle stands anywhere in so many degrees. */
	readonly play: number;
}

interface Machine {
	takeUp: number;
	proportion: number;
	hardening: number;
	curvature: number;
	buildUp: number;
	lag: number;
	backlash: number;
	drift: { takeUp: number; proportion: number };
}

/** `maxAngle`: the largest loaded dial angle that the machine reaches. */
export function openShop(world: World, draw: Draw, maxAngle: number): Shop {
	const machine = newMachine(world, draw);
	const error = (sd: number) => (world.tails === null ? draw.normal(0, sd) : draw.heavy(sd, world.tails));
	let tubes = 0;
	let tube = { takeUp: 0, proportion: 1 };
	let seating = 0;
	let angle = 0;
	let held = 0;

	const newTube = () => {
		const { drift } = machine;
		tube = {
			takeUp: draw.normal(0, world.tube.takeUp) + drift.takeUp * tubes,
			proportion: Math.exp(draw.normal(0, world.tube.proportion)) * (1 + drift.proportion * tubes),
		};
		tubes += 1;
		seat(0);
	};
	const seat = (from: number) => {
		angle = from;
		held = 0;
		seating = error(world.seating);
	};
	const reach = (loaded: number) => {
		const u = loaded / 90;
		const takeUp = (machine.takeUp + tube.takeUp) * built(world.machine.onset, loaded, machine.buildUp);
		const part = machine.proportion * tube.proportion * loaded * u ** machine.hardening;
		return loaded - takeUp - part - 4 * machine.curvature * u * (1 - u);
	};
	const dial = (value: number, sd: number) => rounded(value + error(sd), world.dial.division);
	newTube();
	return {
		newTube,
		seat,
		pull(stop) {
			held = Math.min(maxAngle, stop + error(world.operator.stopping));
			angle = Math.max(angle, reach(Math.max(0, held)) - seating);
		},
		loaded: () => dial(held, world.dial.loaded),
		snug() {
			const play = draw.uniform(-machine.backlash / 2, machine.backlash / 2);
			return dial(angle + (angle > 0 ? machine.lag : 0) + seating + play, world.dial.released);
		},
		finder: () => Math.max(0, rounded(angle + error(world.finder.sd), world.finder.division)),
		relieve(by) {
			angle = Math.max(0, angle - Math.max(0, draw.normal(by, 0.1 + 0.15 * by)));
		},
		get angle() {
			return angle;
		},
		reach,
		lag: machine.lag,
		play: machine.backlash,
	};
}

function newMachine({ machine }: World, draw: Draw): Machine {
	const from = ([low, high]: Range) => draw.uniform(low, high);
	const takeUp = draw.normal(machine.takeUp.mean, machine.takeUp.sd);
	const either = (range: Range) => from(range) * (draw.happens(0.5) ? 1 : -1);
	return {
		takeUp,
		proportion: from(machine.proportion),
		hardening: from(machine.hardening),
		curvature: draw.normal(0, machine.curvature.sd),
		buildUp: from(machine.buildUp),
		lag: machine.lagShare === null ? from(machine.lag) : from(machine.lagShare) * takeUp,
		backlash: from(machine.backlash),
		drift: { takeUp: either(machine.drift.takeUp), proportion: either(machine.drift.proportion) },
	};
}

/** Part of the take-up that is there at this dial angle. */
function built(onset: Onset, loaded: number, over: number): number {
	if (onset === 'ramp') return Math.min(1, loaded / over);
	return 1 - Math.exp(-((loaded / over) ** (onset === 'late' ? 2 : 1)));
}

/** A number as it is read on a scale with this division. */
export function rounded(value: number, division: number): number {
	return Number((Math.round(value / division) * division).toFixed(6));
}
