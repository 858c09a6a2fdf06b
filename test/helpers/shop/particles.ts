/**
 * What is known of a bender after some pulls and readings, worked out by many guesses instead of by a normal distribution: a particle
 * filter whose guesses are moved after each choice among them ("resample-move": Gilks and Berzuini 2001, doi 10.1111/1467-9868.00280), the moves
 * by elliptical slice sampling (Murray, Adams and MacKay 2010, arXiv 1001.0808). Written from the model's description: a pull to L leaves
 * max(before, L - take-up - part - curvature - seat), readings err, and some of them are wrong numbers. Nothing of the filter is used.
 */
import type { Draw } from '../../../src/practice/random.ts';

/** Standard deviations, degrees, unless they say otherwise. */
export interface Beliefs {
	takeUp: { mean: number; sd: number };
	/** Springback in proportion to the angle, degrees at 90. */
	proportion: { mean: number; sd: number };
	curvature: number;
	lag: { mean: number; sd: number };
	/** Degrees over which the take-up builds up, and its spread as a logarithm. */
	buildUp: { common: number; log: number };
	/** One tube against the next: degrees, and a part of the proportion. */
	tube: { takeUp: number; proportion: number };
	seat: number;
	/** Where the stroke ends about the stop; what a pull does beside the model. */
	stopping: number;
	pull: number;
	/** Readings, rounding counted in: the dial under load, the dial with the tube snug, the angle finder. */
	loaded: number;
	dial: number;
	finder: number;
	/** Part of readings that are wrong numbers, and how far off these are. */
	wrong: { part: number; sd: number };
}

export type Happened =
	| { do: 'tube' }
	| { do: 'bend' }
	| { do: 'seat' }
	| { do: 'pull'; stop: number; loaded: number }
	| { do: 'read'; kind: 'angle' | 'released' | 'pointer'; value: number };

/** One guess: everything unknown, and what it makes of all that happened. */
export interface Guess {
	takeUp: number;
	proportion: number;
	curvature: number;
	lag: number;
	buildUp: number;
	tubeTakeUp: number;
	tubeProportion: number;
	seat: number;
	/** The bend at work, and those before it on any tube. */
	angle: number;
	made: number[];
	/** Logarithm of the likelihood of all that was read. */
	fit: number;
}

/** How many standard normal numbers a machine takes, and each thing that happens. */
const MACHINE = 5;
const TAKES = { tube: 2, bend: 1, seat: 1, pull: 2, read: 0 } as const;

/** The springback of a pull that ends at exactly `loaded`, the seat aside. */
export function leaves(guess: Guess, loaded: number): number {
	const u = loaded / 90;
	const there = 1 - Math.exp(-loaded / guess.buildUp);
	const back = (guess.takeUp + guess.tubeTakeUp) * there + (guess.proportion + guess.tubeProportion) * u;
	return loaded - back - 4 * guess.curvature * u * (1 - u);
}

/** What standard normal numbers `z` come to. */
function played(z: readonly number[], happened: readonly Happened[], beliefs: Beliefs): Guess {
	let next = MACHINE;
	const guess: Guess = {
		takeUp: beliefs.takeUp.mean + beliefs.takeUp.sd * z[0]!,
		proportion: beliefs.proportion.mean + beliefs.proportion.sd * z[1]!,
		curvature: beliefs.curvature * z[2]!,
		lag: beliefs.lag.mean + beliefs.lag.sd * z[3]!,
		buildUp: beliefs.buildUp.common * Math.exp(beliefs.buildUp.log * z[4]!),
		tubeTakeUp: 0,
		tubeProportion: 0,
		seat: 0,
		angle: 0,
		made: [],
		fit: 0,
	};
	let pulled = false;
	for (const each of happened) {
		const [first, second] = [z[next] ?? 0, z[next + 1] ?? 0];
		next += TAKES[each.do];
		switch (each.do) {
			case 'tube':
				guess.tubeTakeUp = beliefs.tube.takeUp * first;
				guess.tubeProportion = beliefs.tube.proportion * guess.proportion * second;
				break;
			case 'bend':
				if (pulled) guess.made.push(guess.angle);
				pulled = false;
				guess.angle = 0;
				guess.seat = beliefs.seat * first;
				break;
			case 'seat':
				guess.seat = beliefs.seat * first;
				break;
			case 'pull': {
				const held = each.stop + beliefs.stopping * first;
				guess.angle = Math.max(guess.angle, leaves(guess, held) - guess.seat + beliefs.pull * second);
				guess.fit += Math.log(density(each.loaded - held, beliefs.loaded));
				pulled = true;
				break;
			}
			case 'read': {
				const bent = pulled ? guess.angle + guess.lag : 0;
				const shown = each.kind === 'angle' ? guess.angle : bent + guess.seat;
				const sd = each.kind === 'angle' ? beliefs.finder : beliefs.dial;
				guess.fit += Math.log(mixed(each.value - shown, sd, beliefs.wrong));
				break;
			}
		}
	}
	return guess;
}

/** Density of a miss, up to the root of 2 pi. */
function density(miss: number, sd: number): number {
	return Math.exp(-0.5 * (miss / sd) ** 2) / sd;
}

/** A reading is right, or a wrong number that lies anywhere within some degrees. */
function mixed(miss: number, sd: number, { part, sd: off }: Beliefs['wrong']): number {
	return (1 - part) * density(miss, sd) + part * density(miss, Math.hypot(sd, off));
}

/** Where no more than this part of the guesses counts, they are chosen anew, and each is moved so many times. */
const FEW = 0.4;
const MOVES = 12;

export class Particles {
	readonly #beliefs: Beliefs;
	readonly #draw: Draw;
	readonly #happened: Happened[] = [];
	#all: number[][];
	#guesses: Guess[];
	#weights: number[];

	constructor(beliefs: Beliefs, draw: Draw, many: number) {
		this.#beliefs = beliefs;
		this.#draw = draw;
		this.#all = Array.from({ length: many }, () => this.#normals(MACHINE));
		this.#guesses = this.#all.map((z) => played(z, [], beliefs));
		this.#weights = this.#all.map(() => 1);
	}

	/** Mean and standard deviation of something by all guesses. */
	estimate(of: (guess: Guess) => number): { mean: number; sd: number } {
		const values = this.#guesses.map(of);
		const total = sum(this.#weights);
		const mean = sum(values.map((value, i) => this.#weights[i]! * value)) / total;
		return { mean, sd: Math.sqrt(sum(values.map((value, i) => this.#weights[i]! * (value - mean) ** 2)) / total) };
	}

	/** Takes in what happened, in its order. */
	take(...list: readonly Happened[]): void {
		for (const each of list) {
			this.#happened.push(each);
			this.#all = this.#all.map((z) => [...z, ...this.#normals(TAKES[each.do])]);
			const before = this.#guesses;
			this.#guesses = this.#all.map((z) => played(z, this.#happened, this.#beliefs));
			const gains = this.#guesses.map(({ fit }, i) => fit - before[i]!.fit);
			const most = Math.max(...gains);
			this.#weights = this.#weights.map((weight, i) => weight * Math.exp(gains[i]! - most));
			const counting = sum(this.#weights) ** 2 / sum(this.#weights.map((weight) => weight ** 2));
			if (counting < FEW * this.#weights.length) this.#choose();
		}
	}

	/** Chooses guesses anew by how well they foretold what was read, by systematic resampling, and moves them. */
	#choose(): void {
		const total = sum(this.#weights);
		const many = this.#weights.length;
		const from = this.#draw.uniform(0, 1);
		let [upTo, i] = [this.#weights[0]!, 0];
		this.#all = Array.from({ length: many }, (_, k) => {
			while (upTo < ((k + from) / many) * total && i < many - 1) {
				i += 1;
				upTo += this.#weights[i]!;
			}
			return this.#moved(this.#all[i]!);
		});
		this.#guesses = this.#all.map((z) => played(z, this.#happened, this.#beliefs));
		this.#weights = this.#all.map(() => 1);
	}

	/** Elliptical slice sampling: leaves the distribution as it is. */
	#moved(from: readonly number[]): number[] {
		let z = [...from];
		let fit = this.#fit(z);
		for (let k = 0; k < MOVES; k++) {
			const other = this.#normals(z.length);
			const tried = [...z];
			const least = fit + Math.log(1 - this.#draw.uniform(0, 1));
			let turn = this.#draw.uniform(0, 2 * Math.PI);
			let [low, high] = [turn - 2 * Math.PI, turn];
			for (;;) {
				const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
				for (let i = 0; i < z.length; i++) tried[i] = z[i]! * cos + other[i]! * sin;
				fit = this.#fit(tried);
				if (fit >= least || high - low < 1e-9) break;
				if (turn < 0) low = turn;
				else high = turn;
				turn = this.#draw.uniform(low, high);
			}
			z = tried;
		}
		return z;
	}

	#fit(z: readonly number[]): number {
		return played(z, this.#happened, this.#beliefs).fit;
	}

	#normals(many: number): number[] {
		return Array.from({ length: many }, () => this.#draw.normal(0, 1));
	}
}

function sum(values: readonly number[]): number {
	return values.reduce((a, b) => a + b, 0);
}
