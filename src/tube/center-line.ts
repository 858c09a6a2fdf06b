import { radians } from './angles.ts';
import type { ArcFrame, Frames } from './frames.ts';
import type { Point } from './job.ts';
import { combine } from './vector.ts';

/** Points along an arc, its ends among them, `steps` equal turns apart. */
export function arcPoints({ center, radius, angle, tangent, normal }: ArcFrame, steps: number): Point[] {
	return Array.from({ length: steps + 1 }, (_, at) => {
		const turned = radians((at / steps) * angle);
		const spoke = combine(radius * Math.sin(turned), tangent, -radius * Math.cos(turned), normal);
		return combine(1, center, 1, spoke);
	});
}

/** The center line from end to end as points: straights by their ends, arcs by `steps` steps each. */
export function centerLine({ straights, arcs }: Frames, steps: number): Point[] {
	return straights.flatMap(({ start, end }, at) => {
		const arc = arcs[at];
		return arc === undefined ? [start, end] : [start, end, ...arcPoints(arc, steps).slice(1, -1)];
	});
}
