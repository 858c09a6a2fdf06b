import { rawArc } from '../tube/arcs.ts';
import type { ArcBend, Shape } from '../tube/shape.ts';

/** One bend as it lies on the piece it was bent from. */
export interface RawBend {
	/** From the raw start end. */
	mark: number;
	/** Degrees; `rotation` from the plane of the bend before. */
	angle: number;
	rotation: number;
	/** Center-line radius with which it was wrapped. */
	radius: number;
	/** Largest angle that it ever had: so much of the tube is wrapped. */
	wrapped: number;
	/** The die it is bent on: 0, or absent, the tube's first; k: `further[k - 1]`. */
	die?: number;
}

/** What a die does to the bends that it makes. */
export interface RawDie {
	/** Part by which an arc comes out longer than the straight tube it took. */
	stretch: number;
	/** How far past the die's index line a bend really starts. */
	markOffset: number;
	/** Radius that a bend still to come is expected to get. */
	radius: number;
}

/** A tube by its bends, from the start end, and what its first die does, and each further one. Lengths in one unit. */
export interface RawTube extends RawDie {
	bends: readonly RawBend[];
	further?: readonly RawDie[];
}

/** What the die of a bend does. */
export function dieOn(tube: Omit<RawTube, 'bends'>, { die = 0 }: { die?: number }): RawDie {
	return die === 0 ? tube : tube.further![die - 1]!;
}

/** Raw tube used from the start end to the end of each bend; entry 0 is the start end itself. */
export function rawBendEnds(tube: RawTube): number[] {
	const end = (bend: RawBend) => {
		const { stretch, markOffset } = dieOn(tube, bend);
		return bend.mark + markOffset + rawArc(bend.wrapped, bend.radius, stretch);
	};
	return [0, ...tube.bends.map(end)];
}

/** Opened further than this a bend is straight, degrees: as an arc it would have no radius. */
const STRAIGHT = 1e-6;

/**
 * The center line of the uncut piece of length `piece`. An arc keeps the length it was wrapped with, so that opening it lets its
 * radius grow.
 */
export function uncutShape(tube: RawTube, piece: number): Shape {
	const used = rawBendEnds(tube);
	const straights = tube.bends.map((bend, i) => bend.mark + dieOn(tube, bend).markOffset - used[i]!);
	const bends = tube.bends.map(({ angle, rotation, radius, wrapped }): ArcBend => {
		const left = Math.abs(angle) < STRAIGHT ? STRAIGHT : angle;
		return { angle: left, rotation, radius: (radius * wrapped) / left };
	});
	return { straights: [...straights, piece - used.at(-1)!], bends };
}
