import { cosine, radians, sine } from '../../tube/angles.ts';
import type { Flat } from '../../tube/planes.ts';
import type { FlatCurve } from '../../tube/profile.ts';

/** A line of a drawing, in mm, y up: straight to the next place, or by a curve with two guides (cubic Bezier). */
export interface PenStroke {
	look: PenLook;
	from: Flat;
	steps: readonly { to: Flat; guides?: readonly [Flat, Flat] }[];
}

/** `edge`: of the tube or of a template; `thin`: what is measured from; `mark`: the mark; `center`, `guide`: dashed. */
export type PenLook = 'edge' | 'thin' | 'mark' | 'center' | 'guide';

/** Words beside a place. */
export interface DrawnNote {
	at: Flat;
	text: string;
	/** Which way the words lie from the place, of any length; `[0, 0]`: over it, in the middle. */
	away: Flat;
	bold?: boolean;
}

/** A drawing at full size, in mm, y up. */
export interface Drawing {
	strokes: readonly PenStroke[];
	notes: readonly DrawnNote[];
}

export interface Box {
	left: number;
	right: number;
	low: number;
	high: number;
}

/** Degrees of an arc that one curve stands for: it strays from the circle by less than a millionth of the radius. */
const BEZIER = 30;

export function penLine(look: PenLook, ...[from, ...places]: readonly [Flat, ...Flat[]]): PenStroke {
	return { look, from, steps: places.map((to) => ({ to })) };
}

/** A line or an arc of the tube as a stroke; `scale` brings its lengths to mm. */
export function curve(look: PenLook, drawn: FlatCurve, scale: number): PenStroke {
	const scaled = ([x, y]: Flat): Flat => [x * scale, y * scale];
	if (drawn.kind === 'straight') return penLine(look, scaled(drawn.from), scaled(drawn.to));
	return arc(look, { ...drawn, center: scaled(drawn.center), radius: drawn.radius * scale });
}

/**
 * An arc of a circle in cubic curves. Guides lie 4/3 tan(a/4) of the radius along the tangents, a being the angle of a piece (the usual
 * approximation, as in M. Goldapp, "Approximation of circular arcs by cubic polynomials", 1991).
 */
function arc(look: PenLook, { center, radius, start, sweep }: FlatCurve & { kind: 'arc' }): PenStroke {
	const pieces = Math.max(1, Math.ceil(Math.abs(sweep) / BEZIER));
	const step = radians(sweep / pieces);
	const guide = (4 / 3) * Math.tan(step / 4) * radius;
	const at = (i: number) => {
		const turned = radians(start) + i * step;
		const [c, s] = [Math.cos(turned), Math.sin(turned)];
		const place: Flat = [center[0] + radius * c, center[1] + radius * s];
		const beside = (by: number): Flat => [place[0] - by * s, place[1] + by * c];
		return { place, beside };
	};
	return {
		look,
		from: at(0).place,
		steps: Array.from({ length: pieces }, (_, i) => {
			const [one, next] = [at(i), at(i + 1)];
			return { to: next.place, guides: [one.beside(guide), next.beside(-guide)] as const };
		}),
	};
}

/** Turns places about the origin. */
export function turning(degrees: number): (place: Flat) => Flat {
	const [c, s] = [cosine(degrees), sine(degrees)];
	return ([x, y]) => [c * x - s * y, s * x + c * y];
}

/** The drawing with its places turned; words stay upright. */
export function moved({ strokes, notes }: Drawing, turn: (place: Flat) => Flat): Drawing {
	return {
		strokes: strokes.map(({ look, from, steps }) => ({
			look,
			from: turn(from),
			steps: steps.map(({ to, guides }) => ({
				to: turn(to),
				...(guides && { guides: [turn(guides[0]), turn(guides[1])] as const }),
			})),
		})),
		notes: notes.map((note) => ({ ...note, at: turn(note.at), away: turn(note.away) })),
	};
}

/** How long a stroke is at most: over its guides. */
export function strokeLength({ from, steps }: Omit<PenStroke, 'look'>): number {
	const corners = [from, ...steps.flatMap(({ to, guides = [] }) => [...guides, to])];
	return corners.slice(1).reduce((sum, next, i) => sum + flatDistance(corners[i]!, next), 0);
}

const flatDistance = (a: Flat, b: Flat): number => Math.hypot(b[0] - a[0], b[1] - a[1]);

/** Places along a stroke, no two further apart than `step`. */
export function placesAlong({ from, steps }: PenStroke, step: number): Flat[] {
	let at = from;
	const places: Flat[] = [from];
	for (const { to, guides } of steps) {
		const length = strokeLength({ from: at, steps: [guides ? { to, guides } : { to }] });
		const count = Math.max(1, Math.ceil(length / step));
		const begin = at;
		for (let i = 1; i <= count; i++) places.push(along(begin, to, guides, i / count));
		at = to;
	}
	return places;
}

function along(from: Flat, to: Flat, guides: readonly [Flat, Flat] | undefined, t: number): Flat {
	const u = 1 - t;
	if (guides === undefined) return [u * from[0] + t * to[0], u * from[1] + t * to[1]];
	const mix = (i: 0 | 1) =>
		u ** 3 * from[i] + 3 * u * u * t * guides[0][i] + 3 * u * t * t * guides[1][i] + t ** 3 * to[i];
	return [mix(0), mix(1)];
}

/** What the places take. */
export function boxOf(places: readonly Flat[]): Box {
	let [left, right, low, high] = [Infinity, -Infinity, Infinity, -Infinity];
	for (const [x, y] of places) {
		[left, right] = [Math.min(left, x), Math.max(right, x)];
		[low, high] = [Math.min(low, y), Math.max(high, y)];
	}
	return { left, right, low, high };
}
