/**
 * A simulated bender, tube and operator: a world to bend in that shares nothing with the program's own model of one.
 * A pull to the loaded dial angle L leaves max(before, L - springback - seating error); the operator stops near what he was
 * asked, reads dials to half a degree and a finder to a tenth, and now and then keys a wrong number.
 */
export interface ShopOptions {
	/** Part of keyed numbers that are 2 degrees wrong, and that have two digits swapped. */
	blunders: { off: number; swapped: number };
	/** Standard deviations, degrees: where the stroke ends, how the tube sits in the die. */
	stopping: number;
	seating: number;
	/** The machine's largest loaded dial angle. */
	maxAngle: number;
}

const USUAL: ShopOptions = { blunders: { off: 0.02, swapped: 0.01 }, stopping: 0.25, seating: 0.25, maxAngle: 400 };

export interface Draw {
	uniform(low: number, high: number): number;
	normal(mean: number, sd: number): number;
}

/** A seeded source of random numbers (Marsaglia's xorshift, 32 bit, with a scrambled seed; normals by Box and Muller). */
export function draws(seed: number): Draw {
	let state = (Math.imul(seed + 1, 0x9e3779b1) ^ 0x5bd1e995) >>> 0 || 1;
	const next = () => {
		state ^= state << 13;
		state ^= state >>> 17;
		state ^= state << 5;
		state >>>= 0;
		return state / 2 ** 32;
	};
	for (let i = 0; i < 20; i++) next();
	const uniform = (low: number, high: number) => low + (high - low) * next();
	const normal = (mean: number, sd: number) =>
		mean + sd * Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
	return { uniform, normal };
}

interface Machine {
	takeUp: number;
	proportion: number;
	curvature: number;
	buildUp: number;
	lag: number;
}

export interface Shop {
	/** A fresh tube of the same material. */
	newTube(): void;
	/** The next bend's mark in the die for the first time: straight there. */
	newBend(): void;
	/** The same bend again, after it was taken out. */
	seat(): void;
	/** Back to an earlier bend, which stood at `angle`, in a new seat. */
	reopen(angle: number): void;
	pull(stop: number): { loadedKeyed: number; releasedKeyed: number };
	/** The dial under load, read again. */
	loaded(): number;
	/** The dial after release, read again; with the tube snug before a pull the same. */
	pointer(): number;
	/** The angle finder. */
	measure(): number;
	/** Opens the bend by about this much. */
	relieve(by: number): void;
	trueAngle(): number;
	/** What a pull stopping exactly at `loaded` would leave, seating error aside. */
	trueReach(loaded: number): number;
}

export function newMachine(seed: number, options: Partial<ShopOptions> = {}): Shop {
	const set = { ...USUAL, ...options };
	const draw = draws(seed);
	const takeUp = draw.normal(3, 0.6);
	const machine: Machine = {
		takeUp,
		proportion: draw.uniform(0.02, 0.12),
		curvature: draw.normal(0, 0.35),
		buildUp: draw.uniform(4, 10),
		lag: draw.uniform(0.3, 0.7) * takeUp,
	};
	let tube = { takeUp: 0, proportion: 1 };
	let seating = 0;
	let angle = 0;
	let held = 0;

	const trueReach = (loaded: number) => {
		const u = loaded / 90;
		const offset = (machine.takeUp + tube.takeUp) * (1 - Math.exp(-loaded / machine.buildUp));
		return loaded - offset - machine.proportion * tube.proportion * loaded - 4 * machine.curvature * u * (1 - u);
	};
	const keyed = (value: number, division: number) => {
		const read = Number((Math.round(value / division) * division).toFixed(1));
		const luck = draw.uniform(0, 1);
		if (luck < set.blunders.off) return read + (draw.uniform(0, 1) < 0.5 ? 2 : -2);
		return luck < set.blunders.off + set.blunders.swapped ? swapped(read) : read;
	};
	const lag = () => (angle > 0 ? machine.lag : 0);
	const dial = () => keyed(angle + lag() + seating + draw.normal(0, 0.2), 0.5);
	const seat = () => {
		seating = draw.normal(0, set.seating);
	};
	const straight = () => {
		angle = 0;
		held = 0;
		seat();
	};
	const newTube = () => {
		tube = { takeUp: draw.normal(0, 0.25), proportion: Math.exp(draw.normal(0, 0.1)) };
		straight();
	};
	newTube();
	return {
		newTube,
		newBend: straight,
		seat,
		reopen(at) {
			angle = at;
			seat();
		},
		pull(stop) {
			held = Math.min(stop + draw.normal(0, set.stopping), set.maxAngle);
			angle = Math.max(angle, trueReach(held) - seating);
			return { loadedKeyed: keyed(held + draw.normal(0, 0.15), 0.5), releasedKeyed: dial() };
		},
		loaded: () => keyed(held + draw.normal(0, 0.15), 0.5),
		pointer: dial,
		measure: () => keyed(angle + draw.normal(0, 0.25), 0.1),
		relieve(by) {
			angle -= Math.max(0, draw.normal(by, 0.1 + 0.15 * by));
		},
		trueAngle: () => angle,
		trueReach,
	};
}

/** A number with its last two whole digits changed over: 31 for 13, 105 for 150. */
function swapped(value: number): number {
	const whole = Math.trunc(Math.abs(value));
	const [tens, ones] = [Math.trunc(whole / 10) % 10, whole % 10];
	const changed = Math.sign(value) * (whole - 10 * tens - ones + 10 * ones + tens);
	return Number((changed + value - Math.sign(value) * whole).toFixed(1));
}
