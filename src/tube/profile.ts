import { at } from '../maths/list.ts';
import { degrees, radians } from './angles.ts';
import { toolingOf } from './dies.ts';
import { pointAt, tangentAt } from './drop.ts';
import { type ArcFrame, cornerOf, type StraightFrame } from './frames.ts';
import type { EndName, Job, Point } from './job.ts';
import { marks } from './marks.ts';
import { type Flat, planesOf, type TubePlane } from './planes.ts';
import { type ProfileCope, profileCope } from './profile-cope.ts';
import type { Shape } from './shape.ts';
import { cross, distance, step } from './vector.ts';

/** A line of a flat drawing: straight, or round a center from one angle on (degrees, from the base line toward its off side), by `sweep`. */
export type FlatCurve =
	| { kind: 'straight'; from: Flat; to: Flat }
	| { kind: 'arc'; center: Flat; radius: number; start: number; sweep: number };

/** A line square across the tube, from edge to edge. */
export interface Across {
	from: Flat;
	to: Flat;
}

export interface ProfileBend {
	/** From 1. */
	bend: number;
	angle: number;
	/** At its two tangent points. */
	begins: Across;
	ends: Across;
	corner: Flat;
	/** Center of its arc. */
	center: Flat;
	/** Middle of its center line. */
	middle: Flat;
	/** Where its mark lies on the finished tube; null where that is neither on the straight before it nor in its arc. */
	mark: Across | null;
}

/** What is drawn of the tube in one plane, full size. `edge`: of a straight; `inner` and `outer`: of a bend. */
export interface Profile {
	plane: TubePlane;
	lines: readonly { what: 'center' | 'inner' | 'outer' | 'edge'; curve: FlatCurve }[];
	bends: readonly ProfileBend[];
	/** At the two ends of its straights, as the drawing has them. */
	starts: Across;
	stops: Across;
	/** Of those that are coped: edges end there. */
	copes: readonly ProfileCope[];
}

/** The finished tube plane by plane, from the start end on, in the job's unit. */
export function profiles(job: Job, shape: Shape): Profile[] {
	const before = marksBefore(job, shape);
	return planesOf(shape).map((plane) => {
		const copes = (['start', 'far'] as const).flatMap((end) => profileCope(end, plane, job, shape) ?? []);
		return profile(plane, job, before, copes);
	});
}

/** How far each bend's mark lies before its start tangent, along the tube as it is before it is bent. */
function marksBefore(job: Job, shape: Shape): number[] {
	return marks(job, shape, 0).map(({ fromStart, fromLastBend }, i) =>
		fromLastBend === null ? job.trim.start + at(shape.straights, i) - fromStart : at(shape.straights, i) - fromLastBend,
	);
}

function profile(plane: TubePlane, job: Job, before: readonly number[], copes: readonly ProfileCope[]): Profile {
	const half = job.tube.od / 2;
	const { arcs, straights, flat, bends } = plane;
	// Square to the plane, so that its cross with a direction of travel lies in it.
	const up = at(arcs, 0).binormal;
	const across = (place: Point, direction: Point): Across => {
		const side = cross(up, direction);
		return { from: flat(step(place, -half, side)), to: flat(step(place, half, side)) };
	};
	const [start, end] = [at(straights, 0), at(straights, straights.length - 1)];
	return {
		plane,
		lines: straights.flatMap((straight, i) => {
			const arc = arcs[i];
			const cut = {
				start: i === 0 ? copes.find(({ end: which }) => which === 'start') : undefined,
				far: arc === undefined ? copes.find(({ end: which }) => which === 'far') : undefined,
			};
			return [...straightLines(straight, { half, up, flat, cut }), ...(arc ? arcLines(arc, half, flat) : [])];
		}),
		bends: arcs.map((arc, i) => {
			const bend = bends[0] + i;
			const { stretch } = toolingOf(job, bend);
			const mark = markPlace(at(straights, i), arc, before[bend - 1]!, 1 + stretch);
			return {
				bend,
				angle: arc.angle,
				begins: across(arc.start, arc.tangent),
				ends: across(arc.end, arc.endTangent),
				corner: flat(cornerOf(arc)),
				center: flat(arc.center),
				middle: flat(pointAt(arc, radians(arc.angle) / 2)),
				mark: mark && across(mark.place, mark.direction),
			};
		}),
		starts: across(start.start, start.direction),
		stops: across(end.end, end.direction),
		copes,
	};
}

interface StraightBy {
	half: number;
	up: Point;
	flat: TubePlane['flat'];
	/** Of the ends of the tube that it has. */
	cut: Readonly<Partial<Record<EndName, ProfileCope>>>;
}

function straightLines(straight: StraightFrame, { half, up, flat, cut }: StraightBy): Profile['lines'] {
	const side = cross(up, straight.direction);
	const [from, to] = [flat(straight.start), flat(straight.end)];
	const beside = (place: Point, by: number): Flat => flat(step(place, by, side));
	/** Where an edge of the tube ends: at the cut, whose two sides lie on the two edges. */
	const edgeEnd = (place: Point, by: number, cope: ProfileCope | undefined): Flat => {
		if (cope === undefined) return beside(place, by);
		const [one, other] = [cope.near[0]!, cope.near.at(-1)!];
		return isLeftOf(one, from, to) === isLeftOf(beside(place, by), from, to) ? one : other;
	};
	const edge = (by: number): FlatCurve => {
		return { kind: 'straight', from: edgeEnd(straight.start, by, cut.start), to: edgeEnd(straight.end, by, cut.far) };
	};
	return [
		{ what: 'center', curve: { kind: 'straight', from, to } },
		{ what: 'edge', curve: edge(half) },
		{ what: 'edge', curve: edge(-half) },
	];
}

/** Whether a place lies to the left of the line from one place to another. */
const isLeftOf = (place: Flat, [x, y]: Flat, to: Flat): boolean =>
	(to[0] - x) * (place[1] - y) - (to[1] - y) * (place[0] - x) > 0;

function arcLines(arc: ArcFrame, half: number, flat: TubePlane['flat']): Profile['lines'] {
	const center = flat(arc.center);
	const from = flat(arc.start);
	const along = flat(step(arc.start, 1, arc.tangent));
	const spoke = [from[0] - center[0], from[1] - center[1]] as const;
	const travel = [along[0] - from[0], along[1] - from[1]] as const;
	const sweep = Math.sign(spoke[0] * travel[1] - spoke[1] * travel[0]) * arc.angle;
	const start = degrees(Math.atan2(spoke[1], spoke[0]));
	const round = (radius: number): FlatCurve => ({ kind: 'arc', center, radius, start, sweep });
	return [
		{ what: 'center', curve: round(arc.radius) },
		{ what: 'outer', curve: round(arc.radius + half) },
		// A tube bent about less than its own radius has no inner line.
		...(arc.radius > half ? [{ what: 'inner' as const, curve: round(arc.radius - half) }] : []),
	];
}

/** Where a mark lies on the finished tube, `before` the start tangent on the raw one. */
function markPlace(
	straight: StraightFrame,
	arc: ArcFrame,
	before: number,
	stretched: number,
): { place: Point; direction: Point } | null {
	if (before >= 0) {
		const length = distance(straight.start, straight.end);
		if (before > length) return null;
		return { place: step(straight.end, -before, straight.direction), direction: straight.direction };
	}
	const turn = (-before * stretched) / arc.radius;
	return turn > radians(arc.angle) ? null : { place: pointAt(arc, turn), direction: tangentAt(arc, turn) };
}
