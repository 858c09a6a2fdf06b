/**
 * The program's own rule on a first tube, told what no shop tells: every error's size, and what its machine takes back. It learns the rest from its
 * own pulls, as the program does: how much better it is than the program is what the program has still to learn before it begins.
 * The machine has to be one that the program's model can be (a power law of power 0, an exponential onset).
 */
import type { Filter } from '../../src/springback/filter.ts';
import {
	BUILD_UP,
	COMMON_BUILD_UP,
	CURVATURE,
	LAG,
	PROPORTION,
	TAKE_UP,
	TUBE_PROPORTION,
	TUBE_TAKE_UP,
} from '../../src/springback/model.ts';
import type { Scatter, Tally } from '../../src/springback/scatter.ts';
import { session } from './stops-session.ts';
import type { Rule, Station } from './stops-station.ts';

/** So many deviations tallied that what is learned besides counts for nothing. */
const TOLD = 1e6;
/** What is told is not doubted, but for rounding. */
const NEARLY_NOTHING = 1e-6;
/** Where the take-up has begun to build up. */
const EARLY = 5;
const ROUNDS = 30;

/** The rule for a first tube, told the sizes of all errors and, if so, the machine. */
export function told({ machine }: { machine: boolean }): (station: Station) => Rule {
	return (station) => {
		const rule = session(station);
		return {
			newTube() {
				const cold = { ...rule.filter, scatter: scatterOf(station) };
				// The machine may have drifted since the last tube.
				rule.begin(machine ? machineTold(station, cold) : cold);
			},
			bend: (wanted) => rule.bend(wanted),
		};
	};
}

function machineTold(station: Station, f: Filter): Filter {
	const { world } = station;
	const mean = machineOf(station, f.mean);
	const machine = [TAKE_UP, PROPORTION, CURVATURE, LAG, BUILD_UP];
	const own = new Map(machine.map((i) => [i, NEARLY_NOTHING]));
	own.set(TUBE_TAKE_UP, world.tube.takeUp ** 2);
	own.set(TUBE_PROPORTION, (world.tube.proportion * mean[PROPORTION]!) ** 2);
	const cov = f.cov.map((line, i) => line.map((v, j) => (own.has(i) || own.has(j) ? (i === j ? own.get(i)! : 0) : v)));
	return { ...f, mean, cov };
}

/** The unknowns of a machine as it is today, from what pulls to three dial angles would leave on a tube without springback of its own, and on a common one. */
function machineOf({ shop }: Station, mean: readonly number[]): number[] {
	const lost = (loaded: number) => loaded - shop.reach(loaded, { takeUp: 0, proportion: 0 });
	const takeUp = lost(90);
	// The shares of take-up and curvature at a small angle and half-way up: each from what the other leaves.
	let [over, curvature] = [COMMON_BUILD_UP, 0];
	for (let i = 0; i < ROUNDS; i++) {
		curvature = lost(45) - takeUp * (1 - Math.exp(-45 / over));
		const early = (lost(EARLY) - bow(EARLY) * curvature) / takeUp;
		over = -EARLY / Math.log(1 - early);
	}
	const told = mean.slice();
	told[TAKE_UP] = takeUp;
	told[PROPORTION] = shop.reach(90, { takeUp: 0, proportion: 0 }) - shop.reach(90, { takeUp: 0, proportion: 1 });
	told[CURVATURE] = curvature;
	told[LAG] = shop.lag;
	told[BUILD_UP] = Math.log(over / COMMON_BUILD_UP);
	return told;
}

const bow = (loaded: number) => 4 * (loaded / 90) * (1 - loaded / 90);

function scatterOf({ world: { operator, seating, dial, finder, blunders } }: Station): Scatter {
	const told = (square: number): Tally => ({ sum: TOLD * square, count: TOLD });
	return {
		stop: told(operator.stopping ** 2),
		seat: told(seating ** 2),
		dial: told(dial.released ** 2),
		finder: told(finder.sd ** 2 + finder.division ** 2 / 12),
		wrong: told(blunders.off + blunders.swapped),
	};
}
