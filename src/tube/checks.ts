import { angleBetween } from './angles.ts';
import { acrossSurface, acuteAngle, distanceFromLine, farthestFromLine, runsParallel, tangentAt } from './drop.ts';
import { cornerOf, type Frames, frames } from './frames.ts';
import type { Check, CornerName, Point, StraightPlace } from './job.ts';
import { overallIn } from './overall.ts';
import type { Shape } from './shape.ts';
import { cross, distance, dot, subtract, unit } from './vector.ts';

type DropCheck = Extract<Check, { kind: 'drop' }>;
type WidthCheck = Extract<Check, { kind: 'width' }>;
type OutCheck = Extract<Check, { kind: 'out' }>;

function straightPoint(to: StraightPlace, { straights }: Frames): Point {
	const straight = straights[to.straight - 1]!;
	return to.at === 'end' ? straight.end : straight.start;
}

function dropValue(check: DropCheck, at: Frames, od: number): number {
	const { straights, arcs } = at;
	const line = straights[check.from - 1]!;
	let depth: number;
	let tangent: Point;
	if ('bend' in check.to) {
		const arc = arcs[check.to.bend - 1]!;
		const farthest = farthestFromLine(line, arc);
		depth = farthest.distance;
		tangent = tangentAt(arc, farthest.turn);
	} else {
		depth = distanceFromLine(line, straightPoint(check.to, at));
		tangent = straights[check.to.straight - 1]!.direction;
	}
	if (check.surface === 'centre') return depth;
	return depth + acrossSurface(od, acuteAngle(line.direction, tangent));
}

function cornerPoint(name: CornerName, { straights, arcs }: Frames): Point {
	if ('bend' in name) return cornerOf(arcs[name.bend - 1]!);
	return name.end === 'start' ? straights[0]!.start : straights.at(-1)!.end;
}

/** Throws RangeError where the two straights are parallel and so make no plane; a job file with that is refused before. */
function outValue(check: OutCheck, at: Frames): number {
	const [j, k] = check.plane.map((straight) => at.straights[straight - 1]!) as [
		Frames['straights'][0],
		Frames['straights'][0],
	];
	const normal = unit(cross(j.direction, k.direction));
	return dot(subtract(straightPoint(check.to, at), j.start), normal);
}

/**
 * What a check measures on a tube of this shape: a length, degrees for `angle`, a ratio for `ovality` (1, the round tube).
 * `out` is signed. A span to a finished end leaves the trim out. Needs only the outside diameter of the tube.
 */
export function checkValue(check: Check, shape: Shape, tube: { od: number }): number {
	return checkIn(check, frames(shape), tube);
}

/** The same of a tube that has been laid out already: several checks then share the work. */
export function checkIn(check: Check, at: Frames, tube: { od: number }): number {
	switch (check.kind) {
		case 'ovality':
			return 1;
		case 'drop':
			return dropValue(check, at, tube.od);
		case 'angle': {
			const [j, k] = check.between;
			return angleBetween(at.straights[j - 1]!.direction, at.straights[k - 1]!.direction);
		}
		case 'span':
			return distance(cornerPoint(check.from, at), cornerPoint(check.to, at));
		case 'out':
			return outValue(check, at);
		case 'width':
			return distanceFromLine(at.straights[check.from - 1]!, straightPoint(check.to, at)) + overCenters(check, tube);
		case 'overall':
			return overallIn(at, tube.od, check.axis, check.at);
	}
}

/** By how much a width reads more than the center lines lie apart. */
export function overCenters({ surface }: Pick<WidthCheck, 'surface'>, { od }: { od: number }): number {
	if (surface === 'center') return 0;
	return surface === 'outside' ? od : -od;
}

const straightNeeds = (straight: number): number => straight - 1;

/** A straight ends where the bend after it begins; the last one with the tube. */
const placeNeeds = ({ straight, at }: StraightPlace, bends: number): number =>
	at === 'end' ? Math.min(straight, bends) : straightNeeds(straight);

const cornerNeeds = (name: CornerName, bends: number): number =>
	'bend' in name ? name.bend : name.end === 'far' ? bends : 0;

/**
 * The bend after which a check can be taken: the largest number that anything it names needs. Straight j needs bend j - 1, the
 * far end the last of the tube's `bends`. 0 where it could be taken on the straight piece.
 */
export function checkAfter(check: Check, bends: number): number {
	switch (check.kind) {
		case 'drop':
			return Math.max(straightNeeds(check.from), 'bend' in check.to ? check.to.bend : placeNeeds(check.to, bends));
		case 'width':
			return Math.max(straightNeeds(check.from), placeNeeds(check.to, bends));
		case 'overall':
			return bends;
		case 'angle':
			return Math.max(...check.between.map(straightNeeds));
		case 'span':
			return Math.max(cornerNeeds(check.from, bends), cornerNeeds(check.to, bends));
		case 'out':
			return Math.max(...check.plane.map(straightNeeds), placeNeeds(check.to, bends));
		case 'ovality':
			return check.bend;
	}
}

/** False for a drop to a bend in which the tube nowhere runs parallel to the straight, so that no highest place can be felt. */
export function hasCrown(check: Check, shape: Shape): boolean {
	if (check.kind !== 'drop' || !('bend' in check.to)) return true;
	const { straights, arcs } = frames(shape);
	return runsParallel(straights[check.from - 1]!, arcs[check.to.bend - 1]!);
}
