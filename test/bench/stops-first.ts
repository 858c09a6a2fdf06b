/** What a bend's first stop can do alone where nobody knows which machine it is: of all stops, the one that leaves most bends within their band at no more than the risk. */
import { sumOf } from '../../src/maths/list.ts';
import { normalCdf } from '../../src/maths/normal.ts';
import { openStation } from './stops-station.ts';
import type { Trial } from './stops-tally.ts';

/** Stops lie nearer to each other than any dial's divisions, up to so far past the target. */
const STEP = 0.05;
const FURTHEST = 12;

/** Parts of first pulls at `target` that lie within the band and over it, of that stop. */
export function bestFirstStop(
	{ world, tolerance: { under, over }, risk }: Trial,
	target: number,
	machines: number,
	seed: number,
): { within: number; over: number } {
	const shops = Array.from({ length: machines }, (_, m) => openStation(world, seed + 2 * m + 1).shop);
	let best = { within: 0, over: 0 };
	for (let stop = target; stop < target + FURTHEST; stop += STEP) {
		const shares = shops.map((shop) => {
			const { operator, seating } = shop.world;
			const sd = Math.hypot(operator.stopping, seating);
			const past = (bound: number) => normalCdf((shop.reach(stop) - target - bound) / sd);
			return { over: past(over), within: past(-under) - past(over) };
		});
		const [within, past] = [sumOf(shares.map((s) => s.within)) / machines, sumOf(shares.map((s) => s.over)) / machines];
		if (past <= risk && within > best.within) best = { within, over: past };
	}
	return best;
}
