import { radians } from '../../tube/angles.ts';
import { corners } from '../../tube/frames.ts';
import type { Point } from '../../tube/job.ts';
import { principalViews, type View } from '../../tube/principal-views.ts';
import type { Shape } from '../../tube/shape.ts';
import { combine, cross } from '../../tube/vector.ts';

/** Degrees that a key turns the tube by. */
export const TURN = 15;

/** The view of a shape that shows it best, turned by so many steps about the screen's upright and then about its level line. */
export function turnedView(shape: Shape, across: number, over: number): View {
	const [front] = principalViews(corners(shape));
	const { right, up } = front!;
	const out = cross(right, up);
	const [right2, out2] = axesTurned(right, out, across * TURN);
	const [up2] = axesTurned(up, out2, over * TURN);
	return { name: 'turned', right: right2, up: up2 };
}

/** Two directions square to one another, turned in their plane. */
function axesTurned(a: Point, b: Point, degrees: number): [Point, Point] {
	const [c, s] = [Math.cos(radians(degrees)), Math.sin(radians(degrees))];
	return [combine(c, a, s, b), combine(-s, a, c, b)];
}
