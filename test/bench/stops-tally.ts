import { draws } from '../../src/practice/random.ts';
import type { World } from '../../src/practice/world.ts';
import { openStation, type Rule, type Station, type Taken, type Wanted } from './stops-station.ts';

/** What came of the bends with one number on their tube. */
export interface Count {
	bends: number;
	pulls: number;
	seats: number;
	over: number;
	within: number;
}

export interface Trial {
	world: World;
	tolerance: { under: number; over: number };
	risk: number;
	/** Angles of a tube's bends; null: four between 30 and 120. */
	angles: readonly number[] | null;
	/** Counts as over from here above the target; the upper tolerance where it is left out. */
	counted?: number;
	/** Earlier tubes on the same machine. */
	earlier: number;
}

const ANGLES = { bends: 4, low: 30, high: 120 };

/** Bends tube `earlier` + 1 on each of `machines` machines by one rule, and counts by bend number. */
export function tally(rule: (station: Station) => Rule, trial: Trial, machines: number, seed: number): Count[] {
	const counts: Count[] = [];
	for (let m = 0; m < machines; m++) {
		const draw = draws(seed + 2 * m);
		const station = openStation(trial.world, seed + 2 * m + 1);
		const used = rule(station);
		for (let tube = 0; tube <= trial.earlier; tube++) {
			station.shop.newTube();
			used.newTube();
			const angles = trial.angles ?? Array.from({ length: ANGLES.bends }, () => draw.uniform(ANGLES.low, ANGLES.high));
			for (const [at, target] of angles.entries()) {
				const wanted: Wanted = { target, ...trial.tolerance, risk: trial.risk };
				const taken = used.bend(wanted);
				if (tube === trial.earlier) counts[at] = added(counts[at], taken, wanted, trial.counted ?? wanted.over);
			}
		}
	}
	return counts;
}

function added(count: Count | undefined, { pulls, seats, angle }: Taken, wanted: Wanted, counted: number): Count {
	const { bends, pulls: p, seats: s, over, within } = count ?? { bends: 0, pulls: 0, seats: 0, over: 0, within: 0 };
	const past = angle > wanted.target + counted;
	const long = angle > wanted.target + wanted.over;
	const short = angle < wanted.target - wanted.under;
	return {
		bends: bends + 1,
		pulls: p + pulls,
		seats: s + seats,
		over: over + (past ? 1 : 0),
		within: within + (long || short ? 0 : 1),
	};
}

export function together(counts: readonly Count[]): Count {
	return counts.reduce((a, b) => ({
		bends: a.bends + b.bends,
		pulls: a.pulls + b.pulls,
		seats: a.seats + b.seats,
		over: a.over + b.over,
		within: a.within + b.within,
	}));
}

/** Upper bound of a share at 99 % confidence (Wilson's score interval, one-sided). */
export function upperBound(part: number, of: number): number {
	const z = 2.3263478740408408;
	const p = part / of;
	const middle = p + (z * z) / (2 * of);
	return (middle + z * Math.sqrt((p * (1 - p)) / of + (z * z) / (4 * of * of))) / (1 + (z * z) / of);
}
