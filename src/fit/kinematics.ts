import type { Point } from '../tube/job.ts';
import type { Shape } from '../tube/shape.ts';

const DEGREE = Math.PI / 180;

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

const cross = (a: Point, b: Point): Point => [
	a[1] * b[2] - a[2] * b[1],
	a[2] * b[0] - a[0] * b[2],
	a[0] * b[1] - a[1] * b[0],
];
/** a + s b + u c */
const along = (a: Point, s: number, b: Point, u = 0, c: Point = b): Point => [
	a[0] + s * b[0] + u * c[0],
	a[1] + s * b[1] + u * c[1],
	a[2] + s * b[2] + u * c[2],
];
const scaled = (s: number, a: Point): Point => [s * a[0], s * a[1], s * a[2]];
const STILL: Point = [0, 0, 0];

/** An axis that a change of one angle or rotation turns all the later tube about. */
interface Axis {
	through: Point;
	way: Point;
}

/** Walks the tube once; `see` gets each straight's direction and each bend's two axes on the way. */
function walk(
	shape: Shape,
	see: { straight(way: Point): void; rotation(axis: Axis): void; angle(axis: Axis): void },
): FarEnd {
	let p: Point = STILL;
	let t: Point = [1, 0, 0];
	let n: Point = [0, 1, 0];
	for (const [i, straight] of shape.straights.entries()) {
		see.straight(t);
		p = along(p, straight, t);
		const bend = shape.bends[i];
		if (bend === undefined) break;
		see.rotation({ through: p, way: t });
		const turn = bend.rotation * DEGREE;
		n = along(scaled(Math.cos(turn), n), Math.sin(turn), cross(t, n));
		see.angle({ through: along(p, bend.radius, n), way: cross(t, n) });
		const angle = bend.angle * DEGREE;
		const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
		p = along(p, bend.radius * sin, t, bend.radius * (1 - cos), n);
		[t, n] = [along(scaled(cos, t), sin, n), along(scaled(cos, n), -sin, t)];
	}
	return { end: p, direction: t };
}

/**
 * The far end of a shape: it starts at the origin with its first straight along +x, a first bend at rotation 0 goes towards +y,
 * and a rotation is right-handed about the direction of travel.
 */
export function farEnd(shape: Shape): FarEnd {
	const skip = () => {};
	return walk(shape, { straight: skip, rotation: skip, angle: skip });
}

/**
 * The far end and its exact derivatives by every straight, angle and rotation, in one pass: each change turns the tube behind it
 * about one fixed axis, so dp = w x (end - c) and dt = w x direction (the spatial Jacobian of a product of exponentials).
 */
export function farEndMotion(shape: Shape): FarEndMotion {
	const ways: Point[] = [];
	const turns: Axis[] = [];
	const bends: Axis[] = [];
	const { end, direction } = walk(shape, {
		straight: (way) => ways.push(way),
		rotation: (axis) => turns.push(axis),
		angle: (axis) => bends.push(axis),
	});
	const about = ({ through, way }: Axis): Motion => {
		const perDegree = scaled(DEGREE, way);
		return { end: cross(perDegree, along(end, -1, through)), direction: cross(perDegree, direction) };
	};
	return {
		end,
		direction,
		straights: ways.map((way) => ({ end: way, direction: STILL })),
		angles: bends.map(about),
		rotations: turns.map(about),
	};
}
