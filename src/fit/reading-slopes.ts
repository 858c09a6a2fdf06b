import { radians } from '../tube/angles.ts';
import { rawArc } from '../tube/arcs.ts';
import type { Frames } from '../tube/frames.ts';
import type { Shape } from '../tube/shape.ts';
import type { Grip } from './grip.ts';
import { radiusSlopesOf, slopesOf } from './grips.ts';
import { type Walk, walk } from './kinematics.ts';
import { dieOn, type RawTube } from './raw-tube.ts';

/** How a reading goes with each number of a made bend: per unit of length, per degree, and per unit of the logarithm of its radius. */
export interface BendSlopes {
	mark: number;
	angle: number;
	rotation: number;
	radius: number;
	/** Per unit of the part by which its arc comes out longer. */
	stretch: number;
}

/** A raw tube as it lies: its center line, laid out and walked. */
export interface Lying {
	tube: RawTube;
	uncut: Shape;
	laid: Frames;
}

/**
 * The exact derivatives of readings that follow these grips, of each reading one of every bend. A bend's mark lengthens the straight before it and shortens the one behind; what
 * an arc takes of the raw tube shortens the straight behind it too. While a bend is pulled, its angle takes tube; once it is opened the
 * wrapped length stays, so that R = R_wrapped wrapped / angle and dR/dangle = -R / angle.
 */
export function readingSlopes({ tube, uncut, laid }: Lying, readings: readonly (readonly Grip[])[]): BendSlopes[][] {
	const way = walkAlong(uncut);
	const taken = tube.bends.map((bend) => rawArc(bend.wrapped, bend.radius, dieOn(tube, bend).stretch));
	return readings.map((grips) => {
		const { straights, angles, rotations } = slopesOf(grips, way);
		const radii = radiusSlopesOf(grips, laid.arcs);
		return tube.bends.map((bend, i): BendSlopes => {
			const { angle, wrapped, radius } = bend;
			const { stretch } = dieOn(tube, bend);
			const [finished, behind] = [uncut.bends[i]!.radius, straights[i + 1]!];
			const follows = wrapped > angle ? (-radii[i]! * finished) / angle : (-behind * radians(radius)) / (1 + stretch);
			return {
				mark: straights[i]! - behind,
				angle: angles[i]! + follows,
				rotation: rotations[i]!,
				radius: radii[i]! * finished - behind * taken[i]!,
				stretch: (behind * taken[i]!) / (1 + stretch),
			};
		});
	});
}

function walkAlong({ straights, bends }: Shape): Walk {
	return walk({
		straights,
		angles: bends.map(({ angle }) => angle),
		rotations: bends.map(({ rotation }) => rotation),
		radii: bends.map(({ radius }) => radius),
	});
}
