/**
 * The numbers of the published forms, reckoned here from their sentences alone: nothing of the program is used, so that the
 * two can be held against each other. Lengths in one unit, angles in degrees.
 */

export interface PlainBend {
	straight: number;
	angle: number;
	rotation: number;
}
export interface PlainTube {
	od: number;
	/** Finished radius: the die's times growth. */
	radius: number;
	stretch: number;
	markOffset: number;
	trim: { start: number; end: number };
	bends: PlainBend[];
	last: number;
}
export type Vector = readonly [number, number, number];

const rad = (degrees: number) => (degrees * Math.PI) / 180;
const deg = (radians: number) => (radians * 180) / Math.PI;
const at = (a: Vector, s: number, d: Vector): Vector => [a[0] + s * d[0], a[1] + s * d[1], a[2] + s * d[2]];
const mix = (c: number, a: Vector, s: number, b: Vector): Vector => at([c * a[0], c * a[1], c * a[2]], s, b);
const dot = (a: Vector, b: Vector) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Vector, b: Vector): Vector => [
	a[1] * b[2] - a[2] * b[1],
	a[2] * b[0] - a[0] * b[2],
	a[0] * b[1] - a[1] * b[0],
];
const length = (a: Vector) => Math.hypot(...a);
const minus = (a: Vector, b: Vector) => at(a, -1, b);

export function angleBetween(a: Vector, b: Vector): number {
	return deg(Math.atan2(length(cross(a, b)), dot(a, b)));
}

/** In (-180, 180]. */
export function wrapped(degrees: number): number {
	const turn = ((degrees % 360) + 360) % 360;
	return turn > 180 ? turn - 360 : turn;
}

export interface PlainArc {
	begin: Vector;
	end: Vector;
	/** Direction in which the arc begins, and the way it bends. */
	t: Vector;
	n: Vector;
	angle: number;
}

/** The center line walked from the origin along +x, the first bend toward +y when its rotation is 0. */
export function walk(tube: PlainTube) {
	let p: Vector = [0, 0, 0];
	let [t, n]: [Vector, Vector] = [
		[1, 0, 0],
		[0, 1, 0],
	];
	const corners: Vector[] = [p];
	const arcs: PlainArc[] = [];
	const directions: Vector[] = [t];
	for (const bend of tube.bends) {
		n = mix(Math.cos(rad(bend.rotation)), n, Math.sin(rad(bend.rotation)), cross(t, n));
		const begin = at(p, bend.straight, t);
		const setback = tube.radius * Math.tan(rad(bend.angle / 2));
		corners.push(at(begin, setback, t));
		const [c, s] = [Math.cos(rad(bend.angle)), Math.sin(rad(bend.angle))];
		const end = at(at(begin, tube.radius * s, t), tube.radius * (1 - c), n);
		arcs.push({ begin, end, t, n, angle: bend.angle });
		[t, n] = [mix(c, t, s, n), mix(c, n, -s, t)];
		p = end;
		directions.push(t);
	}
	corners.push(at(p, tube.last, t));
	return { corners, arcs, directions };
}

/** The same sharp corners and ends with another radius: each setback grows by the change of radius times tan(angle/2). */
export function keepCorners(tube: PlainTube, radius: number): PlainTube {
	const change = (i: number) => {
		const angle = tube.bends[i]?.angle;
		return angle === undefined ? 0 : (radius - tube.radius) * Math.tan(rad(angle) / 2);
	};
	const bends = tube.bends.map((bend, i) => ({ ...bend, straight: bend.straight - change(i - 1) - change(i) }));
	return { ...tube, radius, bends, last: tube.last - change(tube.bends.length - 1) };
}

/** Raw length, marks from three places, and where each bend lies round the tube. */
export function marks(tube: PlainTube) {
	const { radius, stretch, markOffset, trim } = tube;
	const arcs = tube.bends.map((bend) => radius * rad(bend.angle));
	const developed =
		tube.bends.reduce((sum, bend) => sum + bend.straight, tube.last) +
		arcs.reduce((sum, arc) => sum + arc / (1 + stretch), 0);
	const cut = developed + trim.start + trim.end;
	let [position, around] = [trim.start, 0];
	const rows = tube.bends.map((bend, i) => {
		position += bend.straight;
		if (i > 0) around += bend.rotation;
		const fromStart = position - markOffset;
		position += (arcs[i] ?? 0) / (1 + stretch);
		return {
			fromStart,
			fromFarEnd: cut - fromStart,
			fromLastBend: i === 0 ? null : bend.straight - markOffset,
			arc: arcs[i] ?? 0,
			setback: radius * Math.tan(rad(bend.angle) / 2),
			external: radius * (1 / Math.cos(rad(bend.angle) / 2) - 1),
			around: { degrees: wrapped(around), length: (wrapped(around) / 360) * Math.PI * tube.od },
		};
	});
	return { developed, cut, rows };
}

/** `10 3/8` from 10.375: whole and reduced fraction of a division that is a power of two. */
export function tapeText(value: number, division: number): string {
	const steps = Math.round(value / division);
	const whole = Math.floor(steps * division + 1e-9);
	let [top, bottom] = [Math.round((steps * division - whole) / division), Math.round(1 / division)];
	while (top > 0 && top % 2 === 0 && bottom % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
	if (top === 0) return `${whole}`;
	return whole === 0 ? `${top}/${bottom}` : `${whole} ${top}/${bottom}`;
}

/** Largest distance of bend `to`'s arc from the line of straight `from`, by trying points; the acute angle there beside it. */
export function dropToBend(tube: PlainTube, from: number, to: number) {
	const { arcs, directions } = walk(tube);
	const arc = arcs[to - 1] as PlainArc;
	const [origin, line] = [startOf(tube, from), directions[from - 1] as Vector];
	let best = { distance: -1, acute: 0 };
	const steps = 20_000;
	for (let i = 0; i <= steps; i++) {
		const a = rad((arc.angle * i) / steps);
		const p = at(at(arc.begin, tube.radius * Math.sin(a), arc.t), tube.radius * (1 - Math.cos(a)), arc.n);
		const distance = length(cross(minus(p, origin), line));
		if (distance <= best.distance) continue;
		const along = mix(Math.cos(a), arc.t, Math.sin(a), arc.n);
		const angle = angleBetween(along, line);
		best = { distance, acute: Math.min(angle, 180 - angle) };
	}
	return best;
}

/** The start of straight k: the finished start end, or the end tangent of the bend before it. */
export function startOf(tube: PlainTube, straight: number): Vector {
	return straight === 1 ? [0, 0, 0] : (walk(tube).arcs[straight - 2] as PlainArc).end;
}

export function dropToStraight(tube: PlainTube, from: number, to: number) {
	const { directions } = walk(tube);
	const line = directions[from - 1] as Vector;
	const angle = angleBetween(directions[to - 1] as Vector, line);
	return {
		distance: length(cross(minus(startOf(tube, to), startOf(tube, from)), line)),
		acute: Math.min(angle, 180 - angle),
	};
}

/** With `surface: across`. */
export const across = (drop: { distance: number; acute: number }, od: number) =>
	drop.distance + (od / 2) * (1 + Math.cos(rad(drop.acute)));

/** Sharp corner to sharp corner; 0 is the start end, bends + 1 the far end. */
export function span(tube: PlainTube, from: number, to: number): number {
	const { corners } = walk(tube);
	return length(minus(corners[to] as Vector, corners[from] as Vector));
}

export function out(tube: PlainTube, [j, k]: readonly [number, number], to: number): number {
	const { directions } = walk(tube);
	const normal = cross(directions[j - 1] as Vector, directions[k - 1] as Vector);
	return dot(minus(startOf(tube, to), startOf(tube, j)), normal) / length(normal);
}

/** Far end and last direction of one tube against another, both laid on the first straight with bend 1's plane as set. */
export function endMiss(made: PlainTube, design: PlainTube) {
	const [a, b] = [walk(made), walk(design)];
	return {
		offset: length(minus(a.corners.at(-1) as Vector, b.corners.at(-1) as Vector)),
		angle: angleBetween(a.directions.at(-1) as Vector, b.directions.at(-1) as Vector),
	};
}
