import { cosine, sine } from './angles.ts';
import { setback } from './arcs.ts';
import type { Point } from './job.ts';
import type { ArcBend, Shape } from './shape.ts';
import { across, dot, scale, step } from './vector.ts';

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

/**
 * Where every straight and arc of a tube lies. The start end is the origin, straight 1 runs along +x, bend 1 bends toward
 * +y when its rotation is 0; a rotation turns the bend's plane about the direction of travel by the right-hand rule.
 */
export function frames({ straights: lengths, bends }: Shape): Frames {
	const straights: StraightFrame[] = [];
	const arcs: ArcFrame[] = [];
	let start: Point = [0, 0, 0];
	let direction: Point = [1, 0, 0];
	let normal: Point = [0, 1, 0];
	for (let i = 0; i < lengths.length; i++) {
		const end = step(start, lengths[i]!, direction);
		straights.push({ start, end, direction });
		const bend = bends[i];
		if (!bend) continue;
		const arc = arcFrame(bend, end, direction, normal);
		arcs.push(arc);
		start = arc.end;
		direction = nearUnit(arc.endTangent);
		normal = squareTo(direction, arc.endNormal);
	}
	return { straights, arcs };
}

// In plain numbers, since a chance is read off hundreds of tubes: a list for each sum of two vectors took most of the time.
function arcFrame({ angle, rotation, radius }: ArcBend, start: Point, tangent: Point, before: Point): ArcFrame {
	const tx = tangent[0];
	const ty = tangent[1];
	const tz = tangent[2];
	const cr = cosine(rotation);
	const sr = sine(rotation);
	const nx = cr * before[0] + sr * (ty * before[2] - tz * before[1]);
	const ny = cr * before[1] + sr * (tz * before[0] - tx * before[2]);
	const nz = cr * before[2] + sr * (tx * before[1] - ty * before[0]);
	const c = cosine(angle);
	const s = sine(angle);
	const ex = c * nx - s * tx;
	const ey = c * ny - s * ty;
	const ez = c * nz - s * tz;
	const cx = start[0] + radius * nx;
	const cy = start[1] + radius * ny;
	const cz = start[2] + radius * nz;
	return {
		start,
		end: [cx - radius * ex, cy - radius * ey, cz - radius * ez],
		center: [cx, cy, cz],
		radius,
		angle,
		tangent,
		normal: [nx, ny, nz],
		binormal: [ty * nz - tz * ny, tz * nx - tx * nz, tx * ny - ty * nx],
		endTangent: [c * tx + s * nx, c * ty + s * ny, c * tz + s * nz],
		endNormal: [ex, ey, ez],
	};
}

/** A vector of nearly length 1 brought to it. What rounding takes off doubles with every bend: without this, after a hundred it is the tube. */
const nearUnit = (a: Point): Point => scale(a, (3 - dot(a, a)) / 2);

/** The same, made square to the unit vector u. */
const squareTo = (u: Point, a: Point): Point => nearUnit(across(a, u));

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
