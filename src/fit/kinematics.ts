import { radians } from '../tube/angles.ts';
import { frames } from '../tube/frames.ts';
import type { Point } from '../tube/job.ts';
import type { Shape } from '../tube/shape.ts';
import { cross, scale, subtract } from '../tube/vector.ts';

/** The far end of a tube: its position and the unit direction of its last straight, in the first straight's frame. */
export interface FarEnd {
	end: Point;
	direction: Point;
}

/** How the far end moves: per unit of length for a straight, per degree for an angle or a rotation. */
export interface Motion {
	end: Point;
	direction: Point;
}

export interface FarEndMotion extends FarEnd {
	/** One for each straight (n+1). */
	straights: Motion[];
	/** One for each bend (n), its radius held. */
	angles: Motion[];
	rotations: Motion[];
}

/**
 * The far end and its exact derivatives by every straight, angle and rotation, in one pass: a straight only carries the tube
 * behind it along, and each angle or rotation turns that tube about one fixed axis w through a point c, so that
 * d end = w x (end - c) and d direction = w x direction (the spatial Jacobian of a product of exponentials).
 */
export function farEndMotion(shape: Shape): FarEndMotion {
	const { straights, arcs } = frames(shape);
	const { end, direction } = straights.at(-1)!;
	const turned = (axis: Point, through: Point): Motion => {
		const perDegree = scale(axis, radians(1));
		return { end: cross(perDegree, subtract(end, through)), direction: cross(perDegree, direction) };
	};
	return {
		end,
		direction,
		straights: straights.map((straight) => ({ end: straight.direction, direction: [0, 0, 0] })),
		angles: arcs.map((arc) => turned(arc.binormal, arc.center)),
		rotations: arcs.map((arc) => turned(arc.tangent, arc.start)),
	};
}
