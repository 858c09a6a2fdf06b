import { frames } from './frames.ts';
import type { Axis, Point, ShapeSource } from './job.ts';
import { axisOf } from './overall.ts';
import type { Shape } from './shape.ts';
import { cross, subtract, unit } from './vector.ts';

/**
 * The axes that the drawing has, in the frame in which a tube is laid out (straight 1 along +x): those of its points, else of bend 1. `shape` is
 * the tube laid out. Throws RangeError for points in a line, which are no tube.
 */
export function drawingAxes(source: ShapeSource, shape: Shape): Record<Axis, Point> {
	const at = frames(shape);
	if (source.kind === 'bends') return { x: axisOf(at, 'x'), y: axisOf(at, 'y'), z: axisOf(at, 'z') };
	// Straight 1 and bend 1's plane as the points have them; from points the first rotation is 0, so that its inside is +y.
	const [first, second, third] = source.points as [Point, Point, Point];
	const along = unit(subtract(second, first));
	const square = unit(cross(along, subtract(third, second)));
	const inside = cross(square, along);
	const axis = (i: 0 | 1 | 2): Point => [along[i], inside[i], square[i]];
	return { x: axis(0), y: axis(1), z: axis(2) };
}
