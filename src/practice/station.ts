/**
 * A simulated bender as a session sees it: for every ask it does what the hands would do (seat the tube, make the stroke) and
 * shows what the dial, the angle finder or the tape then read. What has been done is not undone by taking a number back.
 */

import { nearestTo } from '../maths/scalar.ts';
import type { Action } from '../session/protocol/action.ts';
import type { Ask, CheckAsk, ConfirmAsk, DecideAsk, PullAsk, SetAsk } from '../session/protocol/asks.ts';
import { dieOf, diesOf, toolingOf } from '../tube/dies.ts';
import type { Check, Job } from '../tube/job.ts';
import type { Draw } from './random.ts';
import { openShop, type Shop } from './shop.ts';
import { type StationDie, stationDie } from './station-die.ts';
import { type TrueBend, trueCheck } from './true-tube.ts';
import { setsPointer, type World } from './world.ts';

/** What the instruments show at an ask; what does not belong to it is left out. */
export interface Sight {
	/** The dial: with the tube snug, at the end of the stroke, after release; `stop`: where that stroke was to stop. */
	pointer?: number;
	stop?: number;
	loaded?: number;
	released?: number;
	/** The raw piece as cut, at the first seat. */
	length?: number;
	/** The one number that a measurement, a check or a second look gives. */
	reading?: number;
}

/** Log-normal spread of the finished radius of one bend. */
const BEND_RADIUS = 0.005;
/** Least over greatest diameter of a bend (common practice, no source). */
const OVALITY = { mean: 0.96, sd: 0.01 };
/** Where nobody said by how much a bend is opened. */
const LITTLE = 1;

export class Station {
	readonly #job: Job;
	readonly #world: World;
	readonly #draw: Draw;
	readonly #shop: Shop;
	readonly #dies: ReadonlyMap<string, StationDie>;
	readonly #bends: TrueBend[] = [];
	readonly #ovality = new Map<string, number>();
	readonly #done = new Map<string, Sight>();
	#piece = 0;
	#bend = 0;
	#seat = 0;

	constructor(job: Job, world: World, draw: Draw) {
		this.#job = job;
		this.#draw = draw;
		const scaled = { ...world, dial: { ...world.dial, division: job.tooling.dialStep } };
		this.#shop = openShop(scaled, draw, job.tooling.maxAngle);
		this.#world = this.#shop.world;
		this.#dies = new Map(diesOf(job).map((die, i) => [die, stationDie(job, die, draw, i === 0)]));
	}

	/** True angle of every bend seated so far, in degrees. */
	get trueAngles(): readonly number[] {
		return this.#bends.map(({ angle }) => angle);
	}

	/** Every bend seated so far as it truly is. */
	get trueBends(): readonly TrueBend[] {
		return this.#bends;
	}

	/** Length of the raw piece as truly cut; 0 before the first seat. */
	get piece(): number {
		return this.#piece;
	}

	/** Another tube on the same bender and die. */
	freshTube(): void {
		this.#bends.length = 0;
		this.#ovality.clear();
		this.#done.clear();
		[this.#piece, this.#bend, this.#seat] = [0, 0, 0];
		this.#shop.newTube();
	}

	/** What a check would read now without any error, ovality aside. Throws RangeError where the job has none of that name. */
	trueCheck(name: string): number {
		return trueCheck(this.#checkOf(name), this.#bends, this.#piece, this.#job);
	}

	/** Does what the ask wants done, once, and gives what is seen. Asked again, a reading that was taken stands. */
	see(ask: Ask): Sight {
		if ('bend' in ask && ask.bend !== undefined && ask.ask !== 'set') this.#goTo(ask.bend);
		switch (ask.ask) {
			case 'set':
				return this.#once(`set-${ask.bend}-${ask.seat}`, () => this.#set(ask));
			case 'pull':
				return this.#once(`pull-${ask.bend}-${this.#seat}-${ask.pull}`, () => this.#pull(ask));
			case 'measure':
				return this.#once(`entry-${ask.entry}`, () => ({ reading: this.#shop.finder() }));
			case 'confirm':
				return this.#once(`entry-${ask.entry}`, () => this.#again(ask));
			case 'check':
				return this.#once(`entry-${ask.entry}`, () => ({ reading: this.#check(ask.name) }));
			case 'decide':
				return this.#once(`entry-${ask.entry}`, () => this.#measureAgain(ask));
		}
	}

	/** What the advice wants measured again before anything is decided. */
	#measureAgain({ advice, of, bend }: DecideAsk): Sight {
		if (advice !== 'measure' || typeof of !== 'object') return {};
		if (of.kind === 'check') return { reading: this.#check(of.name ?? '') };
		if (of.kind !== 'angle') return { reading: this.#lies(of.kind, of.bend ?? bend) };
		this.#goTo(of.bend ?? bend);
		return { reading: this.#shop.finder() };
	}

	/** Where a bend's mark lies, or how its plane, as it is read on the tube. */
	#lies(kind: 'mark' | 'rotation', bend: number): number {
		const { mark, rotation } = this.#at(bend);
		return kind === 'mark' ? this.#taped(mark) : nearestTo(rotation, 0.5);
	}

	/** Does what an answer had done to the tube. */
	did(ask: Ask, action: Action): void {
		if (ask.ask === 'decide' && action.do === 'relieve') this.#relieve(ask.bend, ask.open ?? LITTLE);
		if (action.do === 'reopen' && action.how === 'relieve') this.#relieve(action.bend, LITTLE);
	}

	#once(key: string, act: () => Sight): Sight {
		const before = this.#done.get(key);
		if (before) return before;
		const sight = act();
		this.#done.set(key, sight);
		return sight;
	}

	#set({ bend, seat, mark, rotation, pointer: asked }: SetAsk): Sight {
		const tape = this.#world.operator.marking * this.#job.tooling.tape;
		const first = this.#piece === 0;
		if (first) this.#piece = mark.fromStart + mark.fromFarEnd + this.#draw.normal(0, tape);
		this.#bends[bend - 1] ??= {
			mark: mark.fromStart + this.#draw.normal(0, tape),
			rotation: bend === 1 ? 0 : rotation + this.#draw.normal(0, this.#world.operator.turning),
			angle: 0,
			wrapped: 0,
			radius: this.#dieOf(bend).radius * Math.exp(this.#draw.normal(0, BEND_RADIUS)),
		};
		this.#seat = seat;
		this.#seatAt(bend);
		const pointer = this.#pointer(asked);
		return first ? { pointer, length: this.#taped(this.#piece) } : { pointer };
	}

	/** The dial with the tube snug, once the hands have done with it what they do. */
	#pointer(asked: number): number {
		if (!setsPointer(this.#world)) return this.#shop.snug();
		const shown = nearestTo(asked, this.#world.dial.division);
		this.#shop.setPointer(shown);
		return shown;
	}

	#pull({ stop }: PullAsk): Sight {
		this.#shop.pull(stop);
		this.#keep();
		return { stop, loaded: this.#shop.loaded(), released: this.#shop.snug() };
	}

	#again(ask: ConfirmAsk): Sight {
		switch (ask.of) {
			case 'loaded':
				return { reading: this.#shop.loaded() };
			case 'released':
			case 'pointer':
				return { reading: this.#shop.snug() };
			case 'angle':
				return { reading: this.#shop.finder() };
			case 'mark':
			case 'rotation':
				return { reading: this.#lies(ask.of, ask.bend ?? this.#bend) };
			case 'length':
				return { reading: this.#taped(this.#piece) };
			case 'check':
				return { reading: this.#check(ask.name ?? '') };
		}
	}

	#check(name: CheckAsk['name']): number {
		const check = this.#checkOf(name);
		if (check.kind === 'ovality') return this.#roundness(name);
		const value = trueCheck(check, this.#bends, this.#piece, this.#job);
		if (check.kind !== 'angle')
			return this.#taped(value + this.#draw.normal(0, this.#world.operator.taping * this.#job.tooling.tape));
		const { sd, division } = this.#world.finder;
		return Math.max(0, nearestTo(value + this.#shop.bias + this.#draw.normal(0, sd), division));
	}

	#checkOf(name: string): Check {
		const check = this.#job.checks.find((each) => each.name === name);
		if (!check) throw new RangeError(`the job has no check called "${name}"`);
		return check;
	}

	#roundness(name: string): number {
		const made = this.#ovality.get(name) ?? Math.min(1, this.#draw.normal(OVALITY.mean, OVALITY.sd));
		this.#ovality.set(name, made);
		return nearestTo(made, 0.001);
	}

	/** A length as the tape is read: to half a division. */
	#taped(length: number): number {
		return nearestTo(length, this.#job.tooling.tape / 2);
	}

	#relieve(bend: number, by: number): void {
		this.#goTo(bend);
		this.#shop.relieve(by);
		this.#keep();
	}

	/** Another bend than the one before is at work: as it lies, not in a new seat. */
	#goTo(bend: number): void {
		if (bend !== this.#bend) this.#seatAt(bend);
	}

	#seatAt(bend: number): void {
		this.#bend = bend;
		const { oddity } = this.#dieOf(bend);
		this.#shop.putIn(toolingOf(this.#job, bend).maxAngle, oddity);
		this.#shop.seat(this.#at(bend).angle);
	}

	#dieOf(bend: number): StationDie {
		return this.#dies.get(dieOf(this.#job, bend))!;
	}

	#keep(): void {
		const bend = this.#at(this.#bend);
		bend.angle = this.#shop.angle;
		bend.wrapped = Math.max(bend.wrapped, bend.angle);
	}

	#at(bend: number): TrueBend {
		const found = this.#bends[bend - 1];
		if (!found) throw new RangeError(`bend ${bend} has not been seated in this practice`);
		return found;
	}
}
