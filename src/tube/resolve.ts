import { setback } from './arcs.ts';
import { type GrowthByDie, radiusAt, toolingOf } from './dies.ts';
import type { Job } from './job.ts';
import { type BendList, NO_STRAIGHT, pointsToBends } from './points.ts';
import type { Shape } from './shape.ts';

/**
 * The finished tube: the drawing's sharp corners and ends, with arcs of each bend's die radius x `growth` between them. The corners are the
 * points, or follow from the bends with arcs of the drawing's own radius, or else of each bend's die. A straight may be negative where the radii leave no room: the caller
 * checks.
 */
export function finishedShape(job: Job, growth: GrowthByDie): Shape {
	const { shape, tooling } = job;
	if (shape.kind === 'points') {
		const radius = tooling.clr * growth.value;
		return withArcs(pointsToBends(shape.points, radius), () => radius);
	}
	const drawn = withArcs(shape, (bend) => shape.radius ?? toolingOf(job, bend).clr);
	const radii = drawn.bends.map((_, i) => radiusAt(job, growth, i + 1));
	const { straights, bends } = keepCorners(drawn, radii);
	const least = NO_STRAIGHT * Math.max(...radii);
	return { straights: straights.map((length) => (Math.abs(length) < least ? 0 : length)), bends };
}

/** The shape that sessions aimed at before corners held: straights given with bends stay as they are, however much the radius grows. */
export function straightsKept(job: Job): Shape {
	const { shape, tooling } = job;
	const radius = tooling.clr * (tooling.growth ?? 1);
	return withArcs(shape.kind === 'bends' ? shape : pointsToBends(shape.points, radius), () => radius);
}

function withArcs(
	{ bends, last }: Readonly<Pick<BendList, 'last'>> & { bends: readonly BendList['bends'][0][] },
	radius: (bend: number) => number,
): Shape {
	return {
		straights: [...bends.map((bend) => bend.straight), last],
		bends: bends.map(({ angle, rotation }, i) => ({ angle, rotation, radius: radius(i + 1) })),
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
