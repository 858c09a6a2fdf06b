/**
 * The oracle: knows the machine and the tube exactly (what a pull to L leaves, and the dial's lag) and every error's size. What
 * it does not know is how the tube sits and where the stroke ended. State: [seating error, angle], normal.
 */

import { tellsPointer } from '../../src/practice/world.ts';
import { soundness } from '../../src/springback/filter.ts';
import { type Gaussian, maxMoments, replaced, surprise, updated } from '../../src/springback/gaussian.ts';
import { normalCdf } from '../../src/springback/normal.ts';
import { worthiest } from '../../src/springback/worth.ts';
import { MOST_PULLS, type Rule, type Station, type Taken, type Wanted } from './stops-station.ts';

const [SEAT, ANGLE] = [0, 1];
const SHORT_FOR_SURE = 0.9;

export function oracle(station: Station): Rule {
	return { newTube: () => {}, bend: (wanted) => bendOnce(station, wanted) };
}

function bendOnce(station: Station, wanted: Wanted): Taken {
	const { shop, world } = station;
	const { target, under } = wanted;
	const division = world.dial.division;
	const stopping = world.operator.stopping ** 2;
	const keyed = world.dial.loaded ** 2 + division ** 2 / 12;
	const dial = world.dial.released ** 2 + (division ** 2 + shop.play ** 2) / 12;
	const finder = world.finder.sd ** 2 + world.finder.division ** 2 / 12;
	const seatVariance = world.seating ** 2;

	const hands = { stopping: world.operator.stopping, settled: Math.sqrt(stopping + seatVariance / 2) };
	let g: Gaussian = {
		mean: [0, 0],
		cov: [
			[seatVariance, 0],
			[0, 0],
		],
	};
	let [pulls, seats, before] = [0, 1, -1];
	const read = (of: readonly number[], shift: number, variance: number, take: () => number) => {
		g = taken(g, of, shift, variance, take, world.blunders.off + world.blunders.swapped);
	};
	const snug = () => {
		const bent = pulls > 0;
		if (bent) read([1, 1], shop.lag, dial, station.snug);
		else read([1, 0], 0, dial, station.snug);
	};
	// The same rule as the program's: what sets them apart is what they know.
	const best = () => {
		const outcome = (loaded: number) => {
			return { mean: shop.reach(loaded) - g.mean[SEAT]!, sd: Math.sqrt(g.cov[SEAT]![SEAT]! + stopping) };
		};
		return worthiest(outcome, { ...wanted, dialStep: division }, { angle: 0, first: null }, hands);
	};
	shop.seat(0);
	if (tellsPointer(world)) snug();
	for (;;) {
		const stop = Math.max(best(), before + division);
		shop.pull(stop);
		pulls += 1;
		before = stop;
		const weight = stopping / (stopping + keyed);
		const said = station.loaded();
		const held = Math.abs(said - stop) > 1 ? stop : stop + weight * (said - stop);
		g = pulled(g, shop.reach(held), stopping * (1 - weight));
		snug();
		const sure = (bound: number) => normalCdf((bound - g.mean[ANGLE]!) / Math.sqrt(g.cov[ANGLE]![ANGLE]!));
		if (sure(target - under) > SHORT_FOR_SURE && best() > before && pulls < MOST_PULLS) continue;
		read([0, 1], 0, finder, station.finder);
		if (sure(target - under) <= 0.5 || pulls >= MOST_PULLS) return { pulls, seats, angle: shop.angle };
		g = replaced(g, SEAT, 0, seatVariance);
		shop.seat(shop.angle);
		seats += 1;
		before = -1;
		if (tellsPointer(world)) snug();
	}
}

function pulled(g: Gaussian, reach: number, variance: number): Gaussian {
	const [d, t] = [g.mean[SEAT]!, g.mean[ANGLE]!];
	const [dd, dt, tt] = [g.cov[SEAT]![SEAT]!, g.cov[SEAT]![ANGLE]!, g.cov[ANGLE]![ANGLE]!];
	const max = maxMoments({ mean: reach - d, variance: dd + variance }, { mean: t, variance: tt }, -dt);
	const both = -dd * max.first + dt * (1 - max.first);
	return {
		mean: [d, max.mean],
		cov: [
			[dd, both],
			[both, max.variance],
		],
	};
}

function taken(
	g: Gaussian,
	row: readonly number[],
	shift: number,
	variance: number,
	take: () => number,
	wrong: number,
): Gaussian {
	const weigh = (value: number) => {
		const { miss, variance: expected } = surprise(g, row, value - shift, variance);
		return soundness(miss, expected, wrong);
	};
	const first = take();
	if (weigh(first) >= 0.5) return updated(g, row, first - shift, variance, weigh(first));
	const second = take();
	if (Math.abs(first - second) <= 1) return updated(g, row, (first + second) / 2 - shift, variance / 2);
	const best = weigh(first) > weigh(second) ? first : second;
	return updated(g, row, best - shift, variance, weigh(best));
}
