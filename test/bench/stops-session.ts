/** This program: the springback room driven as the session core drives it. */
import { nearestTo } from '../../src/maths/scalar.ts';
import { setsPointer, tellsPointer } from '../../src/practice/world.ts';
import { type Filter, filterPrior, newBend, newSeat, newTube, pull } from '../../src/springback/filter.ts';
import { doubtLoaded, doubtReading, manyWrong, narrowBand, slow } from '../../src/springback/gates.ts';
import { expectReading, observe } from '../../src/springback/reading.ts';
import { accept, type StopRequest, suggestStop } from '../../src/springback/stop.ts';
import { MOST_PULLS, type Rule, type Station, type Stroke, type Taken, type Wanted } from './stops-station.ts';

/** The part that mechanics gives for a common chassis tube: 1.5 by .095 in, 60 ksi, on a 6 in die. */
const MECHANICS = 0.021;
/** Readings of one thing further apart than this are asked again. */
const AGREE = 1;

type Kind = 'angle' | 'released' | 'pointer';

/** The rule, with what it believes in hand. */
export interface SessionRule extends Rule {
	readonly filter: Filter;
	/** A fresh tube of which this much is believed, as by what earlier sessions taught. */
	begin(believed: Filter): void;
}

export function session(station: Station): SessionRule {
	let filter = filterPrior(MECHANICS, station.world.dial.division);
	let measured = false;
	return {
		get filter() {
			return filter;
		},
		begin(believed) {
			filter = believed;
			measured = false;
		},
		newTube() {
			this.begin(newTube(filter));
		},
		bend(wanted) {
			const done = bendOnce(filter, station, wanted, measured);
			filter = done.filter;
			measured = true;
			return done.taken;
		},
	};
}

function bendOnce(before: Filter, station: Station, wanted: Wanted, known: boolean): { filter: Filter; taken: Taken } {
	const { shop, world } = station;
	const base = { ...wanted, dialStep: world.dial.division, maxAngle: 240 };
	let f = newBend(before);
	let measured = known;
	let seats = 1;
	const strokes: Stroke[] = [];
	let loadedBefore: number | null = null;
	shop.seat(0);
	f = pointerTold(f, station, 0);
	for (;;) {
		const { stop, risk } = suggestStop(f, { ...base, loadedBefore, measured });
		shop.pull(stop);
		strokes.push({ stop, stated: risk, angle: shop.angle });
		const pulls = strokes.length;
		const loaded = loadedAsTaken(stop, station);
		f = pull(f, stop, loaded);
		if (world.operator.readsRelease) f = readInto(f, 'released', station.snug);
		loadedBefore = Math.max(loadedBefore ?? 0, Math.min(stop, loaded));
		const request: StopRequest = { ...base, loadedBefore, measured };
		if (accept(f, request).likelyShort && pulls < MOST_PULLS) continue;
		f = measure(f, station, !measured || manyWrong(f) || narrowBand(f, wanted) || slow(f, wanted));
		measured = true;
		if (!accept(f, request).short || pulls >= MOST_PULLS) {
			return { filter: f, taken: { pulls, seats, angle: shop.angle, strokes } };
		}
		f = newSeat(f);
		shop.seat(shop.angle);
		seats += 1;
		loadedBefore = null;
		f = pointerTold(f, station, expectReading(f, 'pointer').value);
	}
}

/** What the hands do with the pointer of a tube just seated, the program giving `asked` for it, and what they tell of it. */
function pointerTold(f: Filter, station: Station, asked: number): Filter {
	const { shop, world } = station;
	if (setsPointer(world)) {
		const shown = nearestTo(asked, world.dial.division);
		shop.setPointer(shown);
		return tellsPointer(world) ? readInto(f, 'pointer', () => station.key(shown)) : f;
	}
	return tellsPointer(world) ? readInto(f, 'pointer', station.snug) : f;
}

/** The dial under load: asked again where it is far from the stop; then the mean of two that agree, else the likelier. */
function loadedAsTaken(stop: number, { loaded }: Station): number {
	const first = loaded();
	if (!doubtLoaded(stop, first)) return first;
	const second = loaded();
	if (Math.abs(first - second) <= AGREE) return (first + second) / 2;
	return Math.abs(second - stop) < Math.abs(first - stop) ? second : first;
}

/** A reading, asked again where it is doubted: two that agree count as two, else the likelier counts. */
function readInto(f: Filter, kind: Kind, read: () => number): Filter {
	const first = read();
	if (!doubtReading(f, kind, first)) return observe(f, kind, first);
	return settled(f, kind, first, read(), []);
}

function settled(f: Filter, kind: Kind, doubted: number, again: number, others: readonly number[]): Filter {
	for (const other of [doubted, ...others]) {
		if (Math.abs(again - other) <= AGREE) {
			return observe(f, kind, (again + other) / 2, { readings: 2, confirmed: true, setAside: others.length });
		}
	}
	const { value } = expectReading(f, kind);
	const [likelier = again] = [doubted, again, ...others].sort((a, b) => Math.abs(a - value) - Math.abs(b - value));
	return observe(f, kind, likelier, { setAside: 1 + others.length });
}

/** The angle finder, once or twice. */
function measure(f: Filter, { finder }: Station, twice: boolean): Filter {
	if (!twice) return readInto(f, 'angle', finder);
	const first = finder();
	if (doubtReading(f, 'angle', first)) return settled(f, 'angle', first, finder(), []);
	const second = finder();
	if (Math.abs(first - second) <= AGREE) return observe(f, 'angle', (first + second) / 2, { readings: 2 });
	const { value } = expectReading(f, 'angle');
	const [near, far] = Math.abs(first - value) < Math.abs(second - value) ? [first, second] : [second, first];
	return settled(f, 'angle', far, finder(), [near]);
}
