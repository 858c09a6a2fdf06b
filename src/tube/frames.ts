import { cosine, sine } from './angles.ts';
import { setback } from './arcs.ts';
import type { Point } from './job.ts';
import type { ArcBend, Shape } from './shape.ts';
import { across, combine, cross, dot, scale, step } from './vector.ts';

export interface StraightFrame {
	start: Point;
	end: Point;
	/** Unit vector of travel from the start end to the far end. */
	direction: Point;
}

/** An arc; the frame's vectors are units. `binormal` is the axis that the bend turns about, tangent x normal. */
export interface ArcFrame {
	start: Point;
	end: Point;
	center: Point;
	radius: number;
	/** Degrees. */
	angle: number;
	/** Direction of travel at the arc's start. */
	tangent: Point;
	/** From the arc's start toward its center, after the bend's rotation. */
	normal: Point;
	binormal: Point;
	endTangent: Point;
	endNormal: Point;
}

/** `straights[k - 1]` is straight k, `arcs[k - 1]` is bend k. */
export interface Frames {
	straights: StraightFrame[];
	arcs: ArcFrame[];
}

function arcFrame(bend: ArcBend, start: Point, tangent: Point, before: Point): ArcFrame {
	const normal = combine(cosine(bend.rotation), before, sine(bend.rotation), cross(tangent, before));
	const c = cosine(bend.angle);
	const s = sine(bend.angle);
	const center = step(start, bend.radius, normal);
	const endNormal = combine(-s, tangent, c, normal);
	return {
		start,
		end: step(center, -bend.radius, endNormal),
		center,
		radius: bend.radius,
		angle: bend.angle,
		tangent,
		normal,
		binormal: cross(tangent, normal),
		endTangent: combine(c, tangent, s, normal),
		endNormal,
	};
}

/**
 * Where every straight and arc of a tube lies. The start end is the origin, straight 1 runs along +x, bend 1 bends toward
 * +y when its rotation is 0; a rotation turns the bend's plane about the direction of travel by the right-hand rule.
 */
export function frames(shape: Shape): Frames {
	const straights: StraightFrame[] = [];
	const arcs: ArcFrame[] = [];
	let start: Point = [0, 0, 0];
	let direction: Point = [1, 0, 0];
	let normal: Point = [0, 1, 0];
	shape.straights.forEach((length, i) => {
		const end = step(start, length, direction);
		straights.push({ start, end, direction });
		const bend = shape.bends[i];
		if (!bend) return;
		const arc = arcFrame(bend, end, direction, normal);
		arcs.push(arc);
		start = arc.end;
		direction = nearUnit(arc.endTangent);
		normal = nearUnit(across(arc.endNormal, direction));
	});
	return { straights, arcs };
}

/** A vector of nearly length 1 brought to it. What rounding takes off doubles with every bend: without this, after a hundred it is the tube. */
const nearUnit = (a: Point): Point => scale(a, (3 - dot(a, a)) / 2);

/** The sharp corner of an arc: where the lines of the straights on its two sides meet. */
export const cornerOf = (arc: ArcFrame): Point => step(arc.start, setback(arc.angle, arc.radius), arc.tangent);

/** The sharp-corner points, both finished ends included: bend k's corner is entry k. */
export function corners(shape: Shape): Point[] {
	return cornersOn(frames(shape));
}

/** The same of a tube whose straights and arcs were found before. */
export function cornersOn({ straights, arcs }: Frames): Point[] {
	return [straights[0]!.start, ...arcs.map(cornerOf), straights.at(-1)!.end];
}

/** The far end of the finished tube and the direction in which its last straight runs. */
export function shapeEnd(shape: Shape): { end: Point; direction: Point } {
	const { end, direction } = frames(shape).straights.at(-1)!;
	return { end, direction };
}
