import { radians } from '../tube/angles.ts';
import { rawArc } from '../tube/arcs.ts';
import type { Frames } from '../tube/frames.ts';
import type { Shape } from '../tube/shape.ts';
import type { Grip } from './grip.ts';
import { radiusSlopesOf, slopesOf } from './grips.ts';
import { type Walk, walk } from './kinematics.ts';
import type { RawTube } from './raw-tube.ts';

/** How a reading goes with each number of a made bend: per unit of length, per degree, and per unit of the logarithm of its radius. */
export interface BendSlopes {
	mark: number;
	angle: number;
	rotation: number;
	radius: number;
}

/** The same of one reading on a whole tube; `stretch` is what all its arcs share. */
export interface ReadingSlopes {
	bends: BendSlopes[];
	stretch: number;
}

/** A raw tube as it lies: its centre line, laid out and walked. */
export interface Lying {
	tube: RawTube;
	uncut: Shape;
	laid: Frames;
}

/**
 * The exact derivatives of readings that follow these grips. A bend's mark lengthens the straight before it and shortens the one behind; what
 * an arc takes of the raw tube shortens the straight behind it too. While a bend is pulled, its angle takes tube; once it is opened the
 * wrapped length stays, so that R = R_wrapped wrapped / angle and dR/dangle = -R / angle.
 */
export function readingSlopes({ tube, uncut, laid }: Lying, readings: readonly (readonly Grip[])[]): ReadingSlopes[] {
	const way = walkOf(uncut);
	const { stretch } = tube;
	const taken = tube.bends.map(({ wrapped, radius }) => rawArc(wrapped, radius, stretch));
	return readings.map((grips) => {
		const { straights, angles, rotations } = slopesOf(grips, way);
		const radii = radiusSlopesOf(grips, laid.arcs);
		return {
			bends: tube.bends.map(({ angle, wrapped, radius }, i): BendSlopes => {
				const [finished, behind] = [uncut.bends[i]!.radius, straights[i + 1]!];
				const follows = wrapped > angle ? (-radii[i]! * finished) / angle : (-behind * radians(radius)) / (1 + stretch);
				return {
					mark: straights[i]! - behind,
					angle: angles[i]! + follows,
					rotation: rotations[i]!,
					radius: radii[i]! * finished - behind * taken[i]!,
				};
			}),
			stretch: taken.reduce((sum, arc, i) => sum + (straights[i + 1]! * arc) / (1 + stretch), 0),
		};
	});
}

function walkOf({ straights, bends }: Shape): Walk {
	return walk({
		straights,
		angles: bends.map(({ angle }) => angle),
		rotations: bends.map(({ rotation }) => rotation),
		radii: bends.map(({ radius }) => radius),
	});
}
