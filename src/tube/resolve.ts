import { setback } from './arcs.ts';
import type { Job } from './job.ts';
import { pointsToBends } from './points.ts';
import type { Shape } from './shape.ts';

/** Finished radius over the die's as far as the drawing knows it: what a test piece showed, else 1. */
export const designGrowth = (job: Job): number => job.tooling.growth ?? 1;

/**
 * The designed shape when arcs come out at die radius x `growth`. Straights given with bends stay as given; from points they
 * follow from that radius, and may be negative when a large growth leaves no room between corners (the caller checks).
 */
export function resolveShape(job: Job, growth: number): Shape {
	const radius = job.tooling.clr * growth;
	const { bends, last } = job.shape.kind === 'bends' ? job.shape : pointsToBends(job.shape.points, radius);
	return {
		straights: [...bends.map((bend) => bend.straight), last],
		bends: bends.map(({ angle, rotation }) => ({ angle, rotation, radius })),
	};
}

/**
 * The same sharp corners and ends with other bend radii, one a bend. A straight is what the setbacks leave between its
 * corners and may be negative: the caller checks.
 */
export function keepCorners(shape: Shape, radii: readonly number[]): Shape {
	// How much each bend's tangent points move away from its corner.
	const moved = shape.bends.map(({ angle, radius }, i) => setback(angle, radii[i]! - radius));
	return {
		straights: shape.straights.map((length, i) => length - (moved[i - 1] ?? 0) - (moved[i] ?? 0)),
		bends: shape.bends.map((bend, i) => ({ ...bend, radius: radii[i]! })),
	};
}
