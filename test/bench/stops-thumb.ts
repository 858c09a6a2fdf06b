/** The rules of thumb: creeping up by a degree, and adding what the last bend sprang back. */
import { MOST_PULLS, type Rule, type Station, type Stroke, type Taken, type Wanted } from './stops-station.ts';

export function creep(station: Station): Rule {
	return { newTube: () => {}, bend: (wanted) => approach(station, wanted, wanted.target, () => 1).taken };
}

export function carryOver(station: Station): Rule {
	let back = 0;
	return {
		newTube: () => {},
		bend(wanted) {
			const done = approach(station, wanted, wanted.target + back, (short) => short);
			back = done.back;
			return done.taken;
		},
	};
}

/** Pulls, measures, and adds `more` of what it is short by, until it measures within the tolerance or over. */
function approach(station: Station, { target, under }: Wanted, first: number, more: (short: number) => number) {
	const { shop, world } = station;
	const division = world.dial.division;
	let stop = first;
	const strokes: Stroke[] = [];
	shop.seat(0);
	for (;;) {
		const asked = Math.round(stop / division) * division;
		shop.pull(asked);
		strokes.push({ stop: asked, stated: null, angle: shop.angle });
		const pulls = strokes.length;
		const angle = station.finder();
		if (angle >= target - under || pulls >= MOST_PULLS) {
			const taken: Taken = { pulls, seats: pulls, angle: shop.angle, strokes };
			return { taken, back: asked - angle };
		}
		stop = Math.max(asked + division, asked + more(target - angle));
		shop.seat(shop.angle);
	}
}
