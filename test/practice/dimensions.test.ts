import { describe, expect, it } from 'vitest';
import { moment } from '../../src/practice/laws.ts';
import { operatorAnswer } from '../../src/practice/operator.ts';
import { ELSEWHERE, FOREIGN, ROUGH } from '../../src/practice/other-shops.ts';
import { draws } from '../../src/practice/random.ts';
import { openShop } from '../../src/practice/shop.ts';
import { Station } from '../../src/practice/station.ts';
import { oneShop, type PointerHands, USUAL_SHOP, type World } from '../../src/practice/world.ts';
import { ask } from '../../src/session/ask.ts';
import { initial } from '../../src/session/log/fold.ts';
import type { SetAsk } from '../../src/session/protocol/asks.ts';
import { gaveUpWords } from '../../src/words/practice.ts';
import { startOf } from '../bench/fit-made.ts';
import { plainJob } from '../helpers/shop/plain-job.ts';

const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / values.length;
const shops = (world: World, many = 300) =>
	Array.from({ length: many }, (_, seed) => openShop(world, draws(seed), 240));
const still = {
	...USUAL_SHOP,
	dial: { division: 0.001, loaded: 0, released: 0 },
	finder: { ...USUAL_SHOP.finder, division: 0.001, sd: 0 },
};
const hands = (pointer: PointerHands, readsRelease = true): World => ({
	...USUAL_SHOP,
	operator: { ...USUAL_SHOP.operator, pointer, readsRelease },
});

describe('the moment of a tube that hardens', () => {
	/** By summing the stress round a thin wall: elastic to the yield strain, then at the plastic slope. */
	function summed(k: number, hardening: number): number {
		const many = 20_000;
		let sum = 0;
		for (let i = 0; i < many; i++) {
			const height = Math.sin(((i + 0.5) / many) * (Math.PI / 2));
			const strain = k * height;
			sum += height * (strain <= 1 ? strain : 1 + hardening * (strain - 1));
		}
		// A quarter of the wall of radius 1 and yield stress 1: the fully plastic moment of it is 1.
		return (sum * (Math.PI / 2)) / many;
	}

	it.each([
		[0.4, 0.01],
		[1, 0],
		[1.7, 0.02],
		[12, 0.005],
		[60, 0.02],
	])('at %f times the curvature of first yield, hardening %f', (k, hardening) => {
		expect(moment(k, hardening)).toBeCloseTo(summed(k, hardening), 5);
	});
});

describe('the ways a shop can be foreign', () => {
	it('springs back by other laws: more or less of each degree the larger the angle', () => {
		const perDegree = (world: World) =>
			shops({ ...world, tube: { takeUp: 0, proportion: 0 } }).map(({ reach }) => {
				const slope = (at: number) => reach(at + 5) - reach(at);
				return slope(35) - slope(135);
			});
		expect(perDegree(ELSEWHERE.saturating!).every((more) => more < 0)).toBe(true);
		expect(perDegree(ELSEWHERE.kink!).every((more) => more > 0)).toBe(true);
		const power = perDegree(ELSEWHERE['power law']!);
		expect(power.some((more) => more > 0.02) && power.some((more) => more < -0.02)).toBe(true);
		// The whole take-up is there where the die has given the tube its curvature: a straight line after that.
		expect(perDegree(ELSEWHERE.moment!).every((more) => Math.abs(more) < 1e-9)).toBe(true);
	});

	it('lags by its own, whatever the take-up', () => {
		const lags = shops(FOREIGN['lag -1 to 2']!).map(({ lag }) => lag);
		expect(Math.min(...lags)).toBeLessThan(-0.9);
		expect(Math.max(...lags)).toBeGreaterThan(1.9);
		expect(mean(lags)).toBeCloseTo(0.5, 0);
	});

	it('has a finder that always shows too much, or too little', () => {
		for (const shop of shops({ ...still, finder: { ...still.finder, bias: [-0.3, 0.3] } }, 20)) {
			shop.pull(60);
			expect(shop.finder() - shop.angle).toBeCloseTo(shop.bias, 2);
			expect(Math.abs(shop.bias)).toBeLessThanOrEqual(0.3);
		}
	});

	it('creeps after the dial was read and before the finder reads, and is at rest then', () => {
		const world: World = { ...still, machine: { ...still.machine, creep: [0.1, 0.4] } };
		for (const shop of shops(world, 20)) {
			shop.pull(60);
			const before = shop.snug();
			const angle = shop.finder();
			const opened = before - shop.snug();
			expect(opened).toBeGreaterThan(0.098);
			expect(opened).toBeLessThan(0.402);
			expect(shop.finder()).toBe(angle);
			expect(angle).toBeCloseTo(shop.angle, 2);
		}
	});

	it('walks from bend to bend, and only then', () => {
		const walk = (walks: number, from: number) =>
			shops({
				...USUAL_SHOP,
				machine: { ...USUAL_SHOP.machine, drift: { ...USUAL_SHOP.machine.drift, walk: walks } },
			}).map((shop) => {
				const before = shop.reach(90);
				for (let i = 0; i < 9; i++) shop.seat(from);
				return shop.reach(90) - before;
			});
		const bends = walk(0.1, 0);
		expect(Math.sqrt(mean(bends.map((x) => x * x)))).toBeCloseTo(0.3, 1);
		expect(walk(0.1, 30).every((moved) => moved === 0)).toBe(true);
		expect(walk(0, 0).every((moved) => moved === 0)).toBe(true);
	});

	it('scatters up to twice as much, all of it alike', () => {
		const rough = Array.from({ length: 200 }, (_, seed) => oneShop(ROUGH, draws(seed)));
		const times = rough.map(({ seating }) => seating / ROUGH.seating);
		expect(Math.min(...times)).toBeLessThan(1.05);
		expect(Math.max(...times)).toBeGreaterThan(1.95);
		for (const [i, world] of rough.entries()) {
			expect(world.operator.stopping / ROUGH.operator.stopping).toBeCloseTo(times[i]!, 9);
			expect(world.finder.sd / ROUGH.finder.sd).toBeCloseTo(times[i]!, 9);
		}
		expect(oneShop(USUAL_SHOP, draws(1))).toBe(USUAL_SHOP);
	});
});

describe('hands on the pointer', () => {
	it('shift all that the dial shows from then on, and where a stroke to a stop ends', () => {
		const world: World = { ...still, operator: { ...still.operator, stopping: 0 } };
		const shop = openShop(world, draws(4), 240);
		shop.pull(50);
		const [angle, shown] = [shop.angle, shop.snug()];
		shop.setPointer(shown - 3);
		expect(shop.snug()).toBeCloseTo(shown - 3, 2);
		expect(shop.angle).toBe(angle);
		expect(shop.loaded()).toBeCloseTo(47, 2);
		// To 47 on the dial as it was turned is to 50 as it was before: the tube does not move.
		shop.pull(47);
		expect(shop.angle).toBe(angle);
		shop.pull(48);
		expect(shop.angle).toBeCloseTo(angle + shop.reach(51) - shop.reach(50), 2);
		shop.newTube();
		shop.pull(48);
		expect(shop.loaded()).toBeCloseTo(48, 2);
	});

	const first = (world: World) => {
		const job = plainJob();
		const draw = draws(11);
		const station = new Station(job, world, draw);
		const open = { ...(ask(initial(startOf(job))) as SetAsk), pointer: 7.2 };
		const sight = station.see(open);
		return {
			sight,
			said: operatorAnswer(open, sight, { ...world, blunders: { off: 0, swapped: 0 } }, draw, gaveUpWords),
		};
	};

	it('tell what it shows, or nothing', () => {
		const read = first(hands('reads'));
		expect(Math.abs(read.sight.pointer ?? 9)).toBeLessThan(2);
		expect(read.said).toMatchObject({ pointer: read.sight.pointer });
		expect(first(hands('leaves')).sight).toEqual(read.sight);
		expect(first(hands('leaves')).said).not.toHaveProperty('pointer');
	});

	it('turn the dial to the number that is given, to a division, and tell that number or nothing', () => {
		expect(first(hands('sets'))).toMatchObject({ sight: { pointer: 7 }, said: { pointer: 7 } });
		expect(first(hands('setsSilent')).sight.pointer).toBe(7);
		expect(first(hands('setsSilent')).said).not.toHaveProperty('pointer');
	});

	it('leave out what the dial shows after release where they do not read it', () => {
		const open = { ask: 'pull', entry: 1, bend: 1, pull: 1, stop: 30 } as never;
		const sight = { stop: 30, loaded: 30, released: 27 };
		expect(operatorAnswer(open, sight, hands('reads', false), draws(2), gaveUpWords)).toEqual({
			do: 'loaded',
			loaded: 30,
		});
		expect(operatorAnswer(open, sight, hands('reads'), draws(2), gaveUpWords)).toMatchObject({ released: 27 });
	});
});
