import { ofLast } from '../maths/least-squares.ts';
import type { Frames } from '../tube/frames.ts';
import type { Point } from '../tube/job.ts';
import type { Shape } from '../tube/shape.ts';
import { dot, norm, scale, step, subtract } from '../tube/vector.ts';
import type { FitMeasure } from './correction-input.ts';
import type { Grip } from './grip.ts';

/** One row of a measure: what it is off by, and what that follows, both before they are taken in tolerances. */
export interface MeasurePart {
	off(shape: Shape, tube: Frames): number;
	grips(tube: Frames): Grip[];
	tolerance: number;
}

const AXES: readonly Point[] = [
	[1, 0, 0],
	[0, 1, 0],
	[0, 0, 1],
];

export const partCount = ({ side }: Pick<FitMeasure, 'side'>): number => (side ? AXES.length : 1);

/**
 * What a measure is off by: its value, or near where it turns back the vector that it reads the length of. Along the drawing's own that counts in
 * full; aside of it in units of what makes the length one tolerance too much, (d + t)^2 = d^2 + aside^2. At 0 that is the square of the length.
 */
export function partsOf({ design, tolerance, value, grips, side }: FitMeasure): MeasurePart[] {
	if (!side) return [{ off: (shape, tube) => value(shape, tube) - design, grips, tolerance }];
	const { aim } = side;
	const on = ofLast(side.on);
	const length = norm(aim);
	const way = length > 0 ? scale(aim, 1 / length) : aim;
	const aside = Math.sqrt(tolerance / (tolerance + 2 * length));
	return AXES.map((axis) => {
		const pull = step(scale(axis, aside), (1 - aside) * dot(axis, way), way);
		return {
			off: (_shape, tube) => dot(pull, subtract(on(tube).vector, aim)),
			grips: (tube) => on(tube).follows(pull),
			tolerance,
		};
	});
}
