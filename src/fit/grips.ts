import { degrees, halfTangent, radians } from '../tube/angles.ts';
import { farthestFromLine, pointAt, tangentAt } from '../tube/drop.ts';
import { type ArcFrame, cornerOf, type Frames, type StraightFrame } from '../tube/frames.ts';
import type { Check, CornerName, Point, StraightPlace } from '../tube/job.ts';
import { across, combine, cross, dot, norm, scale, step, subtract } from '../tube/vector.ts';
import {
	before,
	type Carrier,
	chordAt,
	directionGrip,
	type Grip,
	placeGrip,
	straightGrip,
	withinGrip,
} from './grip.ts';
import { ARC_NUMBERS, DEGREE, type Walk } from './kinematics.ts';
import { overallGrips } from './overall-grips.ts';

/** What a check follows on a tube, to first order; nothing where it has no slope, as a distance at 0. Degrees for an angle. */
export function gripsOf(check: Check, tube: Frames, { od }: { od: number }): Grip[] {
	switch (check.kind) {
		case 'ovality':
			return [];
		case 'angle':
			return angleGrips(check.between, tube);
		case 'span': {
			const [from, to] = [cornerGrip(check.from, tube), cornerGrip(check.to, tube)];
			const way = direction(subtract(to([0, 0, 0]).at, from([0, 0, 0]).at));
			return way === null ? [] : [to(way), from(scale(way, -1))];
		}
		case 'out':
			return outGrips(check, tube);
		case 'drop':
			return dropGrips(check, tube, check.surface === 'across' ? od / 2 : 0);
		case 'width':
			return dropGrips(check, tube, 0);
		case 'overall':
			return overallGrips(check, tube, od / 2);
	}
}

/** A value's slopes by every straight (per unit of length), angle and rotation (per degree). */
export interface Slopes {
	straights: Float64Array;
	angles: Float64Array;
	rotations: Float64Array;
}

/**
 * A straight carries what lies behind it along; a degree of an angle or a rotation turns it about one axis w through c, so that the value
 * grows by w . ((p - c) x pull) with a point p and by w . (d x pull) with a direction d (the spatial Jacobian, as in `chainMotion`).
 */
export function slopesOf(grips: readonly Grip[], { along, axes }: Walk): Slopes {
	const bends = axes.length / ARC_NUMBERS;
	const [straights, angles, rotations] = [bends + 1, bends, bends].map((n) => new Float64Array(n)) as [
		Float64Array,
		Float64Array,
		Float64Array,
	];
	for (const grip of grips) {
		if (grip.of === 'point')
			for (let k = 0; k < grip.straights; k++)
				straights[k]! +=
					grip.pull[0] * along[3 * k]! + grip.pull[1] * along[3 * k + 1]! + grip.pull[2] * along[3 * k + 2]!;
		for (let k = 0; k < grip.rotations; k++) rotations[k]! += gripTurned(grip, axes, ARC_NUMBERS * k);
		for (let k = 0; k < grip.angles; k++) angles[k]! += gripTurned(grip, axes, ARC_NUMBERS * k + 6);
		if (grip.own !== 0) angles[grip.angles]! += grip.own;
	}
	return { straights, angles, rotations };
}

/** Slopes by every bend's radius, its angle held: a wider arc carries what lies behind it by its chord over R, sin th t + (1 - cos th) n. */
export function radiusSlopesOf(grips: readonly Grip[], arcs: readonly ArcFrame[]): Float64Array {
	const radii = new Float64Array(arcs.length);
	const chords = arcs.map((arc) => chordAt(arc, radians(arc.angle)));
	for (const { of, pull, angles, wider } of grips) {
		if (of === 'direction') continue;
		for (let k = 0; k < angles; k++) radii[k]! += dot(pull, chords[k]!);
		if (wider !== 0) radii[angles]! += wider;
	}
	return radii;
}

/** What the length of a straight follows. `straight` counts from 1. */
export function legGrips(straight: number, { straights }: Frames): Grip[] {
	const { direction: along } = straights[straight - 1]!;
	return [
		straightGrip({ straight, at: 'end' }, straights, along),
		straightGrip({ straight }, straights, scale(along, -1)),
	];
}

function gripTurned({ of, at, pull }: Grip, axes: Float64Array, from: number): number {
	const arm: Point =
		of === 'direction' ? at : [at[0] - axes[from + 3]!, at[1] - axes[from + 4]!, at[2] - axes[from + 5]!];
	const turn = cross(arm, pull);
	return DEGREE * (axes[from]! * turn[0] + axes[from + 1]! * turn[1] + axes[from + 2]! * turn[2]);
}

/** A vector at length 1; null where it has none. */
function direction(v: Point): Point | null {
	const length = norm(v);
	return length > 0 ? scale(v, 1 / length) : null;
}

function angleGrips([j, k]: readonly [number, number], { straights }: Frames): Grip[] {
	const [a, b] = [straights[j - 1]!.direction, straights[k - 1]!.direction];
	const axis = direction(cross(a, b));
	if (axis === null) return [];
	// Each direction turns the angle by moving within the plane of both.
	const [away, on] = [cross(a, axis), cross(axis, b)];
	return [
		directionGrip(a, scale(away, degrees(1)), before(j - 1)),
		directionGrip(b, scale(on, degrees(1)), before(k - 1)),
	];
}

/** The corner of a bend, or a finished end, by how a value follows it. */
function cornerGrip(name: CornerName, { straights, arcs }: Frames): (pull: Point) => Grip {
	if ('bend' in name) {
		const arc = arcs[name.bend - 1]!;
		const further = (DEGREE * arc.radius * (1 + halfTangent(arc.angle) ** 2)) / 2;
		const by = { straights: name.bend, rotations: name.bend - 1, angles: name.bend - 1 };
		return (pull) => {
			const ahead = dot(pull, arc.tangent);
			return { ...placeGrip(cornerOf(arc), pull, by), own: further * ahead, wider: halfTangent(arc.angle) * ahead };
		};
	}
	const place: StraightPlace = name.end === 'start' ? { straight: 1 } : { straight: straights.length, at: 'end' };
	return (pull) => straightGrip(place, straights, pull);
}

/** Height (P - S) . n over the plane with the normal n = c / |c|, c = t x u: n follows c by the part of P - S in the plane. */
function outGrips({ plane: [j, k], to }: Extract<Check, { kind: 'out' }>, { straights }: Frames): Grip[] {
	const [one, other] = [straights[j - 1]!, straights[k - 1]!];
	const normal = cross(one.direction, other.direction);
	const n = direction(normal);
	if (n === null) return [];
	const { at } = straightGrip(to, straights, n);
	const lean = scale(across(subtract(at, one.start), n), 1 / norm(normal));
	return [
		straightGrip(to, straights, n),
		placeGrip(one.start, scale(n, -1), before(j - 1)),
		directionGrip(one.direction, cross(other.direction, lean), before(j - 1)),
		directionGrip(other.direction, cross(lean, one.direction), before(k - 1)),
	];
}

/** `half`: half the outside diameter where the drop is read across the surfaces, else 0. */
function dropGrips(
	{ from, to }: Pick<Extract<Check, { kind: 'drop' }>, 'from' | 'to'>,
	tube: Frames,
	half: number,
): Grip[] {
	const line = tube.straights[from - 1]!;
	if (!('bend' in to)) {
		const place = (pull: Point) => straightGrip(to, tube.straights, pull);
		const ahead = tube.straights[to.straight - 1]!.direction;
		return lineGrips(line, from, place, { at: ahead, by: before(to.straight - 1) }, half);
	}
	const arc = tube.arcs[to.bend - 1]!;
	const { turn } = farthestFromLine(line, arc);
	const atEnd = turn === radians(arc.angle);
	// At an end of the arc the place goes with that end, within it the highest place does not move the height.
	const by: Carrier = { straights: to.bend, rotations: to.bend, angles: atEnd ? to.bend : to.bend - 1 };
	const place = (pull: Point) => withinGrip(arc, turn, pull, by);
	const ahead = { at: tangentAt(arc, turn), by };
	const grips = lineGrips(line, from, place, ahead, half);
	return atEnd || turn === 0 || half === 0 ? grips : [...grips, ...crownGrips(line, from, arc, turn, half, by)];
}

interface CarriedPoint {
	at: Point;
	by: Carrier;
}

/** The distance of a place from a line, and `half` of the cosine between the line and the tube there. */
function lineGrips(
	line: StraightFrame,
	from: number,
	place: (pull: Point) => Grip,
	ahead: CarriedPoint,
	half: number,
): Grip[] {
	const u = line.direction;
	const v = subtract(place([0, 0, 0]).at, line.start);
	const up = direction(across(v, u));
	const by = before(from - 1);
	const away = up
		? [place(up), placeGrip(line.start, scale(up, -1), by), directionGrip(u, scale(up, -dot(v, u)), by)]
		: [];
	if (half === 0) return away;
	const rise = half * Math.sign(dot(u, ahead.at));
	return [...away, directionGrip(ahead.at, scale(u, rise), ahead.by), directionGrip(u, scale(ahead.at, rise), by)];
}

/**
 * How the tube's slope at the highest place follows from that place moving along the arc: out of plane the tube runs not quite along the line
 * there. The place is where g = (v - (v.u) u) . t is 0, v from the line's start to it, t the tube's direction; so it moves by -dg / g'.
 */
function crownGrips(line: StraightFrame, from: number, arc: ArcFrame, turn: number, half: number, by: Carrier): Grip[] {
	const u = line.direction;
	const at = pointAt(arc, turn);
	const v = subtract(at, line.start);
	const t = tangentAt(arc, turn);
	const inward = combine(-Math.sin(turn), arc.tangent, Math.cos(turn), arc.normal);
	const [vu, ut] = [dot(v, u), dot(u, t)];
	const bending = arc.radius * (1 - ut * ut) + dot(v, inward) - vu * dot(u, inward);
	const rise = (-half * Math.sign(ut) * dot(u, inward)) / bending;
	if (!Number.isFinite(rise)) return [];
	const of = before(from - 1);
	const flat = scale(step(t, -ut, u), rise);
	return [
		withinGrip(arc, turn, flat, by),
		placeGrip(line.start, scale(flat, -1), of),
		directionGrip(t, scale(step(v, -vu, u), rise), by),
		directionGrip(u, scale(combine(-ut, v, -vu, t), rise), of),
	];
}
