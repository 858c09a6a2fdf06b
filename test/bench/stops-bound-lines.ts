/** The program beside the bound: the same parts of bends over and short, and the fewest pulls that any rule can take for them. */
import { draws } from '../../src/practice/random.ts';
import { openShop, type TubeOddity } from '../../src/practice/shop.ts';
import type { World } from '../../src/practice/world.ts';
import { type Chances, fewestPulls, type Kind } from './stops-bound.ts';
import type { Case } from './stops-cases.ts';
import { type Run, SEED } from './stops-lines.ts';
import { partOver, tally, together } from './stops-tally.ts';

/** The cases that a bound is worked out for: those whose limit was missed. */
export const BOUNDED = ['small 5 degrees', 'narrow .25 step 0.1', 'rough', 'set, no release, usual'];
/** Sizes of a shop's scatter that stand for all between its least and its most, and machines that stand for all. */
const SIZES = 3;
const MACHINES = 400;
const MOST_DIAL = 240;

export function* boundLines({ name, rules, trial, earlier, tubes }: Case, { quick, seed }: Run): Generator<string> {
	const machines = quick ? Math.ceil(tubes / 20) : tubes;
	const watched = earlier.filter((before) => before === 0 || before === 3);
	const counts = tally(rules.session!, trial, watched, machines, seed);
	for (const [i, before] of watched.entries()) {
		const all = together(counts[i]!);
		const { pulls, bends, within, most } = all;
		const { part: over } = partOver(all);
		const parts = { over, short: 1 - over - within / bends };
		const fewest = fewestPulls(kindsOf(trial, before === 0), parts);
		const shown = [pulls / bends, 100 * parts.over, 100 * parts.short, fewest].map((value) => value.toFixed(2));
		yield `${name.padEnd(24)} ${before} earlier: ${shown[0]} pulls, most ${most}, ${shown[1]} % over, ${shown[2]} % short; no rule under ${shown[3]} pulls`;
	}
}

/** The bends of a tube. On a first one neither machine nor tube is known before the first pull, later the tube alone is not; then both are. */
function kindsOf({ world, tolerance, angles }: Case['trial'], cold: boolean): Kind[] {
	const bends = 'bends' in angles ? angles.bends : angles.length;
	const middle = 'bends' in angles ? (angles.low + angles.high) / 2 : angles[0]!;
	return sizesOf(world).flatMap((size) => {
		const { first, slope } = firstPull(world, middle, size, cold);
		const asked = { ...tolerance, step: slope * world.dial.division };
		return Array.from({ length: bends }, (_, bend) => ({
			chances: chancesOf(world, size),
			asked,
			first: bend === 0 ? first : 0,
		}));
	});
}

function sizesOf({ scatter: [least, most] }: World): number[] {
	if (least === most) return [least];
	return Array.from({ length: SIZES }, (_, i) => least + ((i + 0.5) / SIZES) * (most - least));
}

/** Two readings of the finder every time. Who sets the dial tells nothing of the seat. */
function chancesOf({ operator, seating, dial, finder }: World, size: number): Chances {
	const read = (sd: number, division: number) => Math.hypot(size * sd, division / Math.sqrt(12));
	const snug = read(dial.released, dial.division);
	return {
		stopping: size * operator.stopping,
		seat: size * seating,
		loaded: read(dial.loaded, dial.division),
		before: operator.pointer === 'reads' ? snug : null,
		after: operator.readsRelease ? snug : null,
		finder: read(finder.sd, finder.division) / Math.SQRT2,
	};
}

/** How differently machines and tubes, or the tubes of one machine, answer a pull that leaves `angle` on average; and by how much more for a degree more. */
function firstPull(world: World, angle: number, size: number, cold: boolean): { first: number; slope: number } {
	const draw = draws(SEED - 1);
	const shops = Array.from({ length: cold ? MACHINES : 1 }, () =>
		openShop({ ...world, scatter: [1, 1] }, draw, MOST_DIAL),
	);
	const tubes = Array.from({ length: MACHINES }, (_, i): readonly [(typeof shops)[number], TubeOddity] => [
		shops[i % shops.length]!,
		{
			takeUp: draw.normal(0, size * world.tube.takeUp),
			proportion: Math.exp(draw.normal(0, size * world.tube.proportion)),
		},
	]);
	const left = (loaded: number) => tubes.map(([shop, tube]) => shop.reach(loaded, tube));
	const mean = (list: readonly number[]) => list.reduce((sum, value) => sum + value, 0) / list.length;
	let loaded = angle;
	for (let i = 0; i < 20; i++) loaded += angle - mean(left(loaded));
	const middle = mean(left(loaded));
	return {
		first: Math.sqrt(mean(left(loaded).map((value) => (value - middle) ** 2))),
		slope: mean(left(loaded + 1)) - middle,
	};
}
