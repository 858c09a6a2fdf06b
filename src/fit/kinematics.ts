import { cosine, radians, sine } from '../tube/angles.ts';
import type { Point } from '../tube/job.ts';
import type { Shape } from '../tube/shape.ts';

/** The far end of a tube: its position and the unit direction of its last straight, in the first straight's frame. */
export interface FarEnd {
	end: Point;
	direction: Point;
}

/** A center line as plain lists: n+1 straights, n of all else. Lengths in one unit, degrees. */
export interface Chain {
	straights: readonly number[];
	angles: readonly number[];
	rotations: readonly number[];
	radii: readonly number[];
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

/** The same as numbers in a row: of each straight, angle and rotation six, the motion of the end and of the direction. */
export interface ChainMotion extends FarEnd {
	straights: Float64Array;
	angles: Float64Array;
	rotations: Float64Array;
}

/** Where each arc starts and bends about: tangent and start point, axis and center; twelve numbers an arc. */
export const ARC_NUMBERS = 12;

/** A chain walked from its start: the far end, each straight's direction in `along`, each arc's axes in `axes`. */
export interface Walk extends FarEnd {
	along: Float64Array;
	axes: Float64Array;
}

/**
 * Walks the chain once, in plain numbers, since a correction does so a hundred times: point p, travel t, and n toward the center
 * of the bend before.
 */
export function walk({ straights, angles, rotations, radii }: Chain): Walk {
	const along = new Float64Array(3 * straights.length);
	const axes = new Float64Array(ARC_NUMBERS * angles.length);
	let px = 0;
	let py = 0;
	let pz = 0;
	let tx = 1;
	let ty = 0;
	let tz = 0;
	let nx = 0;
	let ny = 1;
	let nz = 0;
	for (let k = 0; k < straights.length; k++) {
		const length = straights[k]!;
		along[3 * k] = tx;
		along[3 * k + 1] = ty;
		along[3 * k + 2] = tz;
		px += length * tx;
		py += length * ty;
		pz += length * tz;
		if (k === angles.length) break;
		const radius = radii[k]!;
		const cr = cosine(rotations[k]!);
		const sr = sine(rotations[k]!);
		const c = cosine(angles[k]!);
		const s = sine(angles[k]!);
		// The normal turned about the travel, then the axis of the bend.
		const mx = cr * nx + sr * (ty * nz - tz * ny);
		const my = cr * ny + sr * (tz * nx - tx * nz);
		const mz = cr * nz + sr * (tx * ny - ty * nx);
		const cx = px + radius * mx;
		const cy = py + radius * my;
		const cz = pz + radius * mz;
		const at = ARC_NUMBERS * k;
		axes[at] = tx;
		axes[at + 1] = ty;
		axes[at + 2] = tz;
		axes[at + 3] = px;
		axes[at + 4] = py;
		axes[at + 5] = pz;
		axes[at + 6] = ty * mz - tz * my;
		axes[at + 7] = tz * mx - tx * mz;
		axes[at + 8] = tx * my - ty * mx;
		axes[at + 9] = cx;
		axes[at + 10] = cy;
		axes[at + 11] = cz;
		nx = c * mx - s * tx;
		ny = c * my - s * ty;
		nz = c * mz - s * tz;
		tx = c * tx + s * mx;
		ty = c * ty + s * my;
		tz = c * tz + s * mz;
		px = cx - radius * nx;
		py = cy - radius * ny;
		pz = cz - radius * nz;
		// Back to unit length and square, as in tube/frames: what rounding takes off doubles with every bend, and after a hundred is the tube.
		const ofT = (3 - (tx * tx + ty * ty + tz * tz)) / 2;
		tx *= ofT;
		ty *= ofT;
		tz *= ofT;
		const lean = tx * nx + ty * ny + tz * nz;
		nx -= lean * tx;
		ny -= lean * ty;
		nz -= lean * tz;
		const ofN = (3 - (nx * nx + ny * ny + nz * nz)) / 2;
		nx *= ofN;
		ny *= ofN;
		nz *= ofN;
	}
	return { end: [px, py, pz], direction: [tx, ty, tz], along, axes };
}

/**
 * The far end and its exact derivatives by every straight, angle and rotation, in one pass: a straight only carries the tube
 * behind it along, and each angle or rotation turns that tube about one fixed axis w through a point c, so that
 * d end = w x (end - c) and d direction = w x direction (the spatial Jacobian of a product of exponentials).
 */
export function chainMotion({ along, axes, ...far }: Walk): ChainMotion {
	const bends = axes.length / ARC_NUMBERS;
	const straights = new Float64Array(6 * (bends + 1));
	for (let k = 0; k <= bends; k++) for (let i = 0; i < 3; i++) straights[6 * k + i] = along[3 * k + i]!;
	const angles = new Float64Array(6 * bends);
	const rotations = new Float64Array(6 * bends);
	for (let k = 0; k < bends; k++) {
		endTurned(axes, ARC_NUMBERS * k, far, rotations, 6 * k);
		endTurned(axes, ARC_NUMBERS * k + 6, far, angles, 6 * k);
	}
	return { ...far, straights, angles, rotations };
}

/** The far end of a shape with its derivatives, each by name. */
export function farEndMotion({ straights, bends }: Shape): FarEndMotion {
	const motion = chainMotion(
		walk({
			straights,
			angles: bends.map((bend) => bend.angle),
			rotations: bends.map((bend) => bend.rotation),
			radii: bends.map((bend) => bend.radius),
		}),
	);
	const named = (row: Float64Array) =>
		Array.from({ length: row.length / 6 }, (_, k): Motion => {
			const [x, y, z, dx, dy, dz] = row.subarray(6 * k, 6 * k + 6) as unknown as Six;
			return { end: [x, y, z], direction: [dx, dy, dz] };
		});
	const { end, direction } = motion;
	return {
		end,
		direction,
		straights: named(motion.straights),
		angles: named(motion.angles),
		rotations: named(motion.rotations),
	};
}

type Six = readonly [number, number, number, number, number, number];

export const DEGREE = radians(1);

/** How a point goes with a degree about the axis and through the point that stand at `from`: three numbers to `out` at `to`. */
export function carried(axes: Float64Array, from: number, point: Point, out: Float64Array, to: number): void {
	const wx = DEGREE * axes[from]!;
	const wy = DEGREE * axes[from + 1]!;
	const wz = DEGREE * axes[from + 2]!;
	const x = point[0] - axes[from + 3]!;
	const y = point[1] - axes[from + 4]!;
	const z = point[2] - axes[from + 5]!;
	out[to] = wy * z - wz * y;
	out[to + 1] = wz * x - wx * z;
	out[to + 2] = wx * y - wy * x;
}

/** A degree about the axis and through the point that stand at `from`: six numbers to `out` at `to`. */
function endTurned(axes: Float64Array, from: number, { end, direction }: FarEnd, out: Float64Array, to: number): void {
	carried(axes, from, end, out, to);
	const wx = DEGREE * axes[from]!;
	const wy = DEGREE * axes[from + 1]!;
	const wz = DEGREE * axes[from + 2]!;
	const [dx, dy, dz] = direction;
	out[to + 3] = wy * dz - wz * dy;
	out[to + 4] = wz * dx - wx * dz;
	out[to + 5] = wx * dy - wy * dx;
}
