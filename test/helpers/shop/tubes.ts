import fc from 'fast-check';
import type { Point } from '../../../src/tube/job.ts';
import type { Shape } from '../../../src/tube/shape.ts';

export interface TubeLimits {
	bends: { min: number; max: number };
	straight?: { min: number; max: number };
	angle?: { min: number; max: number };
	radius?: number;
}

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });

/** Any 3-D tube within the limits, lengths in mm: straights 150 to 400, angles 20 to 110, all of one radius. */
export function anyTube({
	bends,
	straight = { min: 150, max: 400 },
	angle = { min: 20, max: 110 },
	radius = 152,
}: TubeLimits) {
	const bend = fc.record({
		angle: between(angle.min, angle.max),
		rotation: between(-179.9, 180),
		radius: fc.constant(radius),
	});
	return fc.array(bend, { minLength: bends.min, maxLength: bends.max }).chain((list) =>
		fc.record<Shape>({
			bends: fc.constant(list),
			straights: fc.array(between(straight.min, straight.max), {
				minLength: list.length + 1,
				maxLength: list.length + 1,
			}),
		}),
	);
}

/** Corner points of a three-bend tube that lies in no plane. */
export const OUT_OF_PLANE: Point[] = [
	[0, 0, 0],
	[30, 0, 0],
	[30, 40, 0],
	[40, 55, 12],
	[70, 55, 12],
];
