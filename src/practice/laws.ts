/** How the part that springs back grows with the dial angle, and how fast the take-up is there. Degrees. */
import type { Draw } from './random.ts';
import { type DrawRange, drawnWithin, type Onset, type World } from './world.ts';

/** `back`: springback in units of the part that springs back at 90 degrees, times 90; `built`: part of the take-up that is there. */
export interface SpringbackLaw {
	back(loaded: number): number;
	built(loaded: number): number;
}

/** The law of one machine and material, the constants of its form drawn. `over`: degrees over which the take-up builds up. */
export function drawLaw(
	{ law, onset }: World['machine'],
	{ power, over }: { power: number; over: number },
	draw: Draw,
): SpringbackLaw {
	const from = (range: DrawRange) => drawnWithin(range, draw);
	const built = (loaded: number) => builtUp(onset, loaded, over);
	switch (law.form) {
		case 'power':
			return { back: (loaded) => loaded * (loaded / 90) ** power, built };
		case 'saturating': {
			const saturates = from(law.over);
			const at = (loaded: number) => 1 - Math.exp(-loaded / saturates);
			return { back: (loaded) => (90 * at(loaded)) / at(90), built };
		}
		case 'kink': {
			const [above, extra] = [from(law.above), from(law.extra)];
			return { back: (loaded) => loaded + extra * Math.max(0, loaded - above), built };
		}
		case 'moment':
			return momentLaw(from(law.zone), from(law.curvature), from(law.hardening));
	}
}

/** Part of the take-up that is there at this dial angle. */
function builtUp(onset: Onset, loaded: number, over: number): number {
	if (onset === 'ramp') return Math.min(1, loaded / over);
	return 1 - Math.exp(-((loaded / over) ** (onset === 'late' ? 2 : 1)));
}

/**
 * A zone of the tube takes on the die's curvature over the first `zone` degrees, all of it alike; after that the zone's length grows. On
 * release each piece of tube opens by M / (E I) times its length, and the frame, which the same moment held twisted, comes back by as
 * much as the take-up. `most`: the die's curvature over that at which yielding begins.
 */
function momentLaw(zone: number, most: number, hardening: number): SpringbackLaw {
	const full = moment(most, hardening);
	const part = (loaded: number) => moment(most * Math.min(1, loaded / zone), hardening) / full;
	return { back: (loaded) => Math.max(loaded, zone) * part(loaded), built: part };
}

/**
 * Moment of a thin-walled round tube over its fully plastic one, at so many times the curvature at which it begins to yield.
 * Elastic: pi/4 k. Beyond, elastic and perfectly plastic: half of k asin(1/k) + sqrt(1 - 1/k^2), from the wall's stress over its height
 * (any text on plastic bending). A linear hardening adds the elastic moment by its part of the slope.
 */
export function moment(k: number, hardening: number): number {
	const elastic = (Math.PI / 4) * k;
	const perfect = k <= 1 ? elastic : (k * Math.asin(1 / k) + Math.sqrt(1 - 1 / k ** 2)) / 2;
	return (1 - hardening) * perfect + hardening * elastic;
}
