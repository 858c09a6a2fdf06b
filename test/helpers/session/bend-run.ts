/** One bend of the simulated shop driven by the filter and stop rule alone, as a session would drive them. */
import { type Filter, made, newBend, newSeat, pull } from '../../../src/springback/filter.ts';
import { doubtLoaded, doubtReading } from '../../../src/springback/gates.ts';
import { observe } from '../../../src/springback/reading.ts';
import { accept, type StopRequest, suggestStop } from '../../../src/springback/stop.ts';
import type { Shop } from '../shop/plain-shop.ts';

type Kind = 'angle' | 'released' | 'pointer';

/** Reads with `read`; asks again, once, what is doubtful, and takes the two as a session does. */
export function readInto(f: Filter, kind: Kind, first: number, read: () => number): Filter {
	if (!doubtReading(f, kind, first)) return observe(f, kind, first);
	const second = read();
	if (Math.abs(second - first) <= 1) return observe(f, kind, (first + second) / 2, { readings: 2, confirmed: true });
	const before = made(f).angle;
	const likelier =
		doubtReading(f, kind, second) && Math.abs(first - before) < Math.abs(second - before) ? first : second;
	return observe(f, kind, likelier, { setAside: 1 });
}

export interface BendRun {
	filter: Filter;
	pulls: number;
	seats: number;
	angle: number;
}

/** `known`: whether this tube was measured before. */
export function bendOnce(
	start: Filter,
	shop: Shop,
	wanted: Omit<StopRequest, 'loadedBefore' | 'measured'>,
	known: boolean,
): BendRun {
	let f = newBend(start);
	let seats = 1;
	let pulls = 0;
	let req = { ...wanted, measured: known };
	let loadedBefore: number | null = null;
	shop.newBend();
	for (;;) {
		const { stop } = suggestStop(f, { ...req, loadedBefore });
		const said = shop.pull(stop);
		pulls++;
		let loaded = said.loadedKeyed;
		if (doubtLoaded(stop, loaded)) loaded = shop.loaded();
		f = readInto(pull(f, stop, loaded), 'released', said.releasedKeyed, shop.pointer);
		loadedBefore = Math.max(loadedBefore ?? 0, stop);
		if (accept(f, { ...req, loadedBefore }).likelyShort) continue;
		f = measured(f, shop);
		req = { ...req, measured: true };
		const now = accept(f, { ...req, loadedBefore });
		if (!now.short || pulls >= 40) return { filter: f, pulls, seats, angle: shop.trueAngle() };
		f = newSeat(f);
		shop.seat();
		seats++;
		loadedBefore = null;
	}
}

function measured(f: Filter, shop: Shop): Filter {
	const first = shop.measure();
	// As in a session: where little is known a blunder would not stand out, so two readings.
	if (made(f).sd <= 0.6) return readInto(f, 'angle', first, shop.measure);
	const second = shop.measure();
	const agree = Math.abs(first - second) <= 1;
	const mean = agree ? (first + second) / 2 : shop.measure();
	if (agree && !doubtReading(f, 'angle', mean)) return observe(f, 'angle', mean, { readings: 2 });
	const again = agree ? shop.measure() : mean;
	const all = [first, second, again].sort((a, b) => a - b);
	return observe(f, 'angle', all[1]!, { readings: 2 });
}
