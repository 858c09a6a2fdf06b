import { sumOf } from '../../src/maths/list.ts';
import { type Draw, draws } from '../../src/practice/random.ts';
import type { World } from '../../src/practice/world.ts';
import { openStation, type Rule, type Station, type Taken, type Wanted } from './stops-station.ts';

/** What was stated as the risk of a pull, whether it left the bend over, and whether it was the bend's first. */
export interface Risk {
	stated: number;
	over: boolean;
	first: boolean;
}

/** What came of the bends with one number on their tube, or of all. */
export interface Count {
	bends: number;
	pulls: number;
	seats: number;
	/** Of each machine in turn, its bends that came out over. */
	over: number[];
	within: number;
	/** Most pulls on one bend, and how many stops were at or below one held before at the same bend. */
	most: number;
	again: number;
	risks: Risk[];
}

export interface Trial {
	world: World;
	tolerance: { under: number; over: number };
	risk: number;
	/** Angles of a tube's bends: as listed, or so many drawn evenly from a range. */
	angles: readonly number[] | { bends: number; low: number; high: number };
	/** Counts as over from here above the target; the upper tolerance where it is left out. */
	counted?: number;
}

/** Bends tubes on each of `machines` machines by one rule; of those with so many tubes `earlier` it counts by bend number. */
export function tally(
	rule: (station: Station) => Rule,
	trial: Trial,
	earlier: readonly number[],
	machines: number,
	seed: number,
): Count[][] {
	const counts: Count[][] = earlier.map(() => []);
	for (let m = 0; m < machines; m++) {
		const draw = draws(seed + 2 * m);
		const station = openStation(trial.world, seed + 2 * m + 1);
		const used = rule(station);
		for (let tube = 0; tube <= Math.max(...earlier); tube++) {
			station.shop.newTube();
			used.newTube();
			for (const [at, target] of anglesOf(trial, draw).entries()) {
				const wanted: Wanted = { target, ...trial.tolerance, risk: trial.risk };
				const taken = used.bend(wanted);
				const list = counts[earlier.indexOf(tube)];
				if (!list) continue;
				list[at] ??= nothing(machines);
				add(list[at], m, taken, wanted, trial.counted ?? wanted.over);
			}
		}
	}
	return counts;
}

function anglesOf({ angles }: Trial, draw: Draw): readonly number[] {
	if (!('bends' in angles)) return angles;
	return Array.from({ length: angles.bends }, () => draw.uniform(angles.low, angles.high));
}

function nothing(machines: number): Count {
	return {
		bends: 0,
		pulls: 0,
		seats: 0,
		over: new Array<number>(machines).fill(0),
		within: 0,
		most: 0,
		again: 0,
		risks: [],
	};
}

function add(
	count: Count,
	machine: number,
	{ pulls, seats, angle, strokes }: Taken,
	wanted: Wanted,
	counted: number,
): void {
	const most = wanted.target + wanted.over;
	count.bends += 1;
	count.pulls += pulls;
	count.seats += seats;
	if (angle > wanted.target + counted) count.over[machine]! += 1;
	if (angle <= most && angle >= wanted.target - wanted.under) count.within += 1;
	count.most = Math.max(count.most, pulls);
	let highest = Number.NEGATIVE_INFINITY;
	for (const [i, { stop, stated, angle: left }] of strokes.entries()) {
		if (stop <= highest) count.again += 1;
		highest = Math.max(highest, stop);
		if (stated !== null) count.risks.push({ stated, over: left > most, first: i === 0 });
	}
}

export function together(counts: readonly Count[]): Count {
	return counts.reduce((a, b) => ({
		bends: a.bends + b.bends,
		pulls: a.pulls + b.pulls,
		seats: a.seats + b.seats,
		over: a.over.map((over, machine) => over + b.over[machine]!),
		within: a.within + b.within,
		most: Math.max(a.most, b.most),
		again: a.again + b.again,
		risks: [...a.risks, ...b.risks],
	}));
}

/** The part of bends that came out over, and its standard error: machines differ, so each with all its bends is one draw. */
export function partOver({ over, bends }: Count): { part: number; error: number } {
	const part = sumOf(over) / bends;
	const each = bends / over.length;
	return { part, error: Math.sqrt(sumOf(over.map((many) => (many - part * each) ** 2))) / bends };
}

/** Upper bound of a share at 99 % confidence (Wilson's score interval, one-sided). */
export function upperBound(part: number, of: number): number {
	const z = 2.3263478740408408;
	const p = part / of;
	const middle = p + (z * z) / (2 * of);
	return (middle + z * Math.sqrt((p * (1 - p)) / of + (z * z) / (4 * of * of))) / (1 + (z * z) / of);
}
