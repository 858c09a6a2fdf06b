/**
 * Oracles: they know the machine exactly (what a pull to L leaves on a tube like this, the dial's lag, the finder's bias) and every
 * error's size. What they do not know is how the tube sits and where the stroke ended; one knows the tube too, the other learns it
 * from its own pulls. State: [seating error, angle, the tube's take-up, log of its factor on the part that springs back], normal.
 */

import { covarianceWith, type Gaussian, maxMoments, replaced, surprise, updated } from '../../src/maths/gaussian.ts';
import { dot } from '../../src/maths/matrix.ts';
import { normalCdf } from '../../src/maths/normal.ts';
import type { TubeOddity } from '../../src/practice/shop.ts';
import { tellsPointer } from '../../src/practice/world.ts';
import { beyond, lateBy } from '../../src/springback/late.ts';
import { soundness } from '../../src/springback/reading.ts';
import { worthiest } from '../../src/springback/worth.ts';
import { MOST_PULLS, type Rule, type Station, type Stroke, type Taken, type Wanted } from './stops-station.ts';

const [SEAT, ANGLE, TAKE_UP, PROPORTION] = [0, 1, 2, 3];
const SHORT_FOR_SURE = 0.9;

/** It knows the tube as well. */
export function oracle(station: Station): Rule {
	const known = unknowns(0, 0);
	return { newTube: () => {}, bend: (wanted) => bendOnce(station, known, wanted, true).taken };
}

/** It knows machine and hands, and each tube only from the pulls it has made on it. */
export function tubeOracle(station: Station): Rule {
	const { takeUp, proportion } = station.world.tube;
	let g = unknowns(takeUp, proportion);
	return {
		newTube() {
			g = unknowns(takeUp, proportion);
		},
		bend(wanted) {
			const done = bendOnce(station, g, wanted, false);
			g = done.g;
			return done.taken;
		},
	};
}

function unknowns(takeUp: number, proportion: number): Gaussian {
	const variances = [0, 0, takeUp ** 2, proportion ** 2];
	return { mean: [0, 0, 0, 0], cov: variances.map((v, i) => variances.map((_, j) => (i === j ? v : 0))) };
}

function bendOnce(station: Station, before: Gaussian, wanted: Wanted, knowsTube: boolean) {
	const { shop, world } = station;
	const { target, under } = wanted;
	const division = world.dial.division;
	const stopping = world.operator.stopping ** 2;
	const keyed = world.dial.loaded ** 2 + division ** 2 / 12;
	const dial = world.dial.released ** 2 + (division ** 2 + shop.play ** 2) / 12;
	const finder = world.finder.sd ** 2 + world.finder.division ** 2 / 12;
	const seatVariance = world.seating ** 2;
	const [least, most] = world.machine.creep;
	const creep = { mean: (least + most) / 2, variance: (most - least) ** 2 / 12 };

	const hands = { stopping: world.operator.stopping, settled: Math.sqrt(stopping + seatVariance / 2) };
	let g = replaced(replaced(before, ANGLE, 0, 0), SEAT, 0, seatVariance);
	const strokes: Stroke[] = [];
	let [seats, held, first] = [1, -1, null as number | null];
	const read = (of: readonly number[], shift: number, variance: number, take: () => number) => {
		g = taken(g, of, shift, variance, take, world.blunders.off + world.blunders.swapped);
	};
	const snug = (opening: number) => {
		if (strokes.length > 0) read([1, 1, 0, 0], shop.lag + opening, dial, station.snug);
		else read([1, 0, 0, 0], 0, dial, station.snug);
	};
	/** What a pull to `loaded` leaves, and how that hangs on what is not known. */
	const reach = (loaded: number): { mean: number; row: number[] } => {
		if (knowsTube) return { mean: shop.reach(loaded) - creep.mean, row: [-1, 0, 0, 0] };
		const tube: TubeOddity = { takeUp: g.mean[TAKE_UP]!, proportion: Math.exp(g.mean[PROPORTION]!) };
		const mean = shop.reach(loaded, tube);
		const perDegree = shop.reach(loaded, { ...tube, takeUp: tube.takeUp + 1 }) - mean;
		const perFactor = mean - shop.reach(loaded, { ...tube, proportion: 0 });
		return { mean: mean - creep.mean, row: [-1, 0, perDegree, perFactor] };
	};
	// The same rule as the program's: what sets them apart is what they know.
	const outcome = (loaded: number) => {
		const { mean, row } = reach(loaded);
		return { mean: mean - g.mean[SEAT]!, sd: Math.sqrt(dot(row, covarianceWith(g, row)) + stopping), variation: 0 };
	};
	const best = () => {
		const stand = { angle: knowsTube ? 0 : g.mean[ANGLE]!, first: knowsTube ? null : first };
		return worthiest(outcome, { ...wanted, dialStep: division }, stand, hands);
	};
	/** As the program's late bends: beyond the furthest stop that left it short. */
	const further = () => {
		const late = lateBy(strokes.length, wanted);
		if (late <= 0) return 0;
		const furthest = Math.max(...strokes.map(({ stop }) => stop));
		return Math.round((furthest + beyond(late, target - g.mean[ANGLE]!)) / division) * division;
	};
	const ended = (): { g: Gaussian; taken: Taken } => ({
		g,
		taken: { pulls: strokes.length, seats, angle: shop.angle, strokes },
	});
	shop.seat(0);
	if (tellsPointer(world)) snug(0);
	for (;;) {
		const stop = Math.max(best(), held + division, further());
		first ??= outcome(stop).sd;
		shop.pull(stop);
		strokes.push({ stop, stated: null, angle: shop.angle });
		held = stop;
		const weight = stopping / (stopping + keyed);
		const said = station.loaded();
		const ends = Math.abs(said - stop) > 1 ? stop : stop + weight * (said - stop);
		const { mean, row } = reach(ends);
		g = pulled(g, mean, row, stopping * (1 - weight) + creep.variance);
		if (world.operator.readsRelease) snug(creep.mean);
		const sure = (bound: number) => normalCdf((bound - g.mean[ANGLE]!) / Math.sqrt(g.cov[ANGLE]![ANGLE]!));
		if (sure(target - under) > SHORT_FOR_SURE && best() > held && strokes.length < MOST_PULLS) continue;
		read([0, 1, 0, 0], shop.bias, finder, station.finder);
		if (sure(target - under) <= 0.5 || strokes.length >= MOST_PULLS) return ended();
		g = replaced(g, SEAT, 0, seatVariance);
		shop.seat(shop.angle);
		seats += 1;
		held = -1;
		if (tellsPointer(world)) snug(0);
	}
}

/** After a pull that leaves `reach` where what is not known is as expected; `row`: how it hangs on that. */
function pulled(g: Gaussian, reach: number, row: readonly number[], variance: number): Gaussian {
	const c = covarianceWith(g, row);
	const now = { mean: reach - g.mean[SEAT]!, variance: dot(row, c) + variance };
	const max = maxMoments(now, { mean: g.mean[ANGLE]!, variance: g.cov[ANGLE]![ANGLE]! }, c[ANGLE]!);
	const withAngle = c.map((value, i) => value * max.first + g.cov[i]![ANGLE]! * (1 - max.first));
	withAngle[ANGLE] = max.variance;
	return {
		mean: g.mean.map((value, i) => (i === ANGLE ? max.mean : value)),
		cov: g.cov.map((line, i) =>
			line.map((value, j) => (i === ANGLE ? withAngle[j]! : j === ANGLE ? withAngle[i]! : value)),
		),
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
