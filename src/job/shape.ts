/** Reads `shape`: bends with their straights, or the sharp-corner points. */
import * as z from 'zod/mini';
import { normalizeRotation } from '../tube/angles.ts';
import { BOUNDS } from '../tube/bounds.ts';
import { frames } from '../tube/frames.ts';
import type { Bend, Point, ShapeSource, Units } from '../tube/job.ts';
import { bendsWanting, pointFaults, pointsToBends } from '../tube/points.ts';
import { keepCorners } from '../tube/resolve.ts';
import { trimmed } from '../units/format.ts';
import { inside, type Report, show } from './fault.ts';
import { isObject, length, number, readObject, reportUnknown } from './fields.ts';

/** More bends than any tube has: a sign of a file gone wrong. */
const MOST_BENDS = 200;

/** Lengths that differ by no more than this part of the radius are the same. */
const ROUNDING = 1e-9;

/** What could be read of the shape. `bends` counts them as written, whether or not each is right; null: not known. */
export interface ReadShape {
	source: ShapeSource | null;
	bends: number | null;
	/** Unit direction of each straight, as far as the angles and rotations before it are right. */
	directions: readonly Point[];
}

const NONE: ReadShape = { source: null, bends: null, directions: [] };

/** The die's centre-line radius, and that of a finished bend as far as the job or the die states it. */
export interface Radii {
	die: number;
	finished: number;
}

/** What a shape is read by. */
export interface ReadBy {
	units: Units;
	/** Undefined where they could not be read. */
	radii: Radii | undefined;
	/** Those that a bend may name; null: not known. */
	dies: readonly string[] | null;
	report: Report;
}

export function readShape(value: unknown, by: ReadBy): ReadShape {
	const { report } = by;
	const right = 'an object { … } with "bends" and "last", or with "points"';
	if (!isObject(value)) {
		report({ at: 'shape', found: show(value), right });
		return NONE;
	}
	const [bends, points] = [Object.hasOwn(value, 'bends'), Object.hasOwn(value, 'points')];
	if (bends === points) {
		reportUnknown(value, 'shape', ['bends', 'last', 'points'], report);
		const found = bends ? 'both "bends" and "points"' : 'neither "bends" nor "points"';
		report({ at: 'shape', found, right: 'one of the two: "bends" with "last", or "points" alone' });
		return bends ? faultsOfBoth(value, by) : NONE;
	}
	return points ? readPoints(value, by) : readBends(value, by);
}

/** Which of two shapes is meant cannot be known; the faults in each are said all the same. */
function faultsOfBoth({ points, ...byBends }: Record<string, unknown>, by: ReadBy): ReadShape {
	readPoints({ points }, by);
	return { ...readBends(byBends, by), source: null };
}

function readBends(value: Record<string, unknown>, { units, radii, dies, report }: ReadBy): ReadShape {
	const schemas = {
		bends: z.unknown(),
		last: length(units, BOUNDS.straight),
		radius: length(units, BOUNDS.radius),
	};
	const { last, radius } = readObject(value, 'shape', schemas, ['bends', 'last'], report);
	const list = readList(value.bends, 'shape.bends', 'bends, at least one', 1, MOST_BENDS, report);
	if (list === null) return NONE;
	const bendSchemas = bendSchemasFor(units, dies);
	const read = list.map((item, i) => readBend(item, inside('shape.bends', i), bendSchemas, report));
	const bends = read.filter((bend): bend is Bend => bend.straight !== undefined && isTurn(bend));
	const turns = leadingTurns(read);
	const complete = last !== undefined && bends.length === read.length;
	const source: BentSource | null = complete
		? { kind: 'bends', bends, last, ...(radius === undefined ? {} : { radius }) }
		: null;
	const isRadiusKnown = radius !== undefined || !Object.hasOwn(value, 'radius');
	// A bend on another die has another radius.
	const isOneDie = bends.every(({ die }) => die === undefined || die === dies?.[0]);
	if (source && radii && isRadiusKnown && isOneDie) reportNoRoom(source, radii, report);
	return {
		source,
		bends: read.length,
		directions: directionsOf(turns),
	};
}

type BentSource = Extract<ShapeSource, { kind: 'bends' }>;

/** Says which straights the finished radius leaves no room for, the drawing's sharp corners kept. */
function reportNoRoom({ bends, last, radius: drawn }: BentSource, { die, finished }: Radii, report: Report): void {
	const straights = [...bends.map(({ straight }) => straight), last];
	const shape = { straights, bends: bends.map((bend) => ({ ...bend, radius: drawn ?? die })) };
	const kept = keepCorners(
		shape,
		bends.map(() => finished),
	);
	kept.straights.forEach((rest, i) => {
		if (rest >= -ROUNDING * finished) return;
		const least = trimmed(Math.ceil((straights[i]! - rest) * 1000) / 1000, 3);
		const at = i === bends.length ? 'shape.last' : `${inside('shape.bends', i)}.straight`;
		const right = `${least} or more: at a finished radius of ${trimmed(finished, 3)} ${bendsWanting(i + 1, bends.length)} that room between the drawing's corners`;
		report({ at, found: show(straights[i]), right });
	});
}

function bendSchemasFor(units: Units, dies: readonly string[] | null) {
	const known =
		dies === null ? 'a die of tooling.dies, by its name' : `a die of this job, one of ${dies.map(show).join(', ')}`;
	return {
		straight: length(units, BOUNDS.straight),
		angle: number('an angle in degrees', BOUNDS.bendAngle),
		rotation: number('a rotation in degrees'),
		die: z.string({ error: known }).check(z.refine((name) => dies?.includes(name) ?? true, { error: known })),
	};
}

function readBend(
	value: unknown,
	at: string,
	schemas: ReturnType<typeof bendSchemasFor>,
	report: Report,
): Partial<Bend> {
	const read = readObject(value, at, schemas, ['straight', 'angle', 'rotation'], report);
	return read.rotation === undefined ? read : { ...read, rotation: normalizeRotation(read.rotation) };
}

type Turn = Pick<Bend, 'angle' | 'rotation'>;

function isTurn(bend: Partial<Bend>): bend is Partial<Bend> & Turn {
	return bend.angle !== undefined && bend.rotation !== undefined;
}

/** The bends up to the first that has no angle or rotation. */
function leadingTurns(bends: readonly Partial<Bend>[]): Turn[] {
	const stop = bends.findIndex((bend) => !isTurn(bend));
	return bends.slice(0, stop === -1 ? bends.length : stop).filter(isTurn);
}

/** Lengths and radii do not matter to a direction. */
function directionsOf(turns: readonly Turn[]): Point[] {
	const straights = [0, ...turns.map(() => 0)];
	const bends = turns.map(({ angle, rotation }) => ({ angle, rotation, radius: 1 }));
	return frames({ straights, bends }).straights.map(({ direction }) => direction);
}

function readPoints(value: Record<string, unknown>, { units, radii, report }: Omit<ReadBy, 'dies'>): ReadShape {
	reportUnknown(value, 'shape', ['points'], report);
	const words = 'points, at least 3: both ends and a corner';
	const list = readList(value.points, 'shape.points', words, 3, MOST_BENDS + 2, report);
	if (list === null) return NONE;
	const points = list.map((item, i) => readPoint(item, inside('shape.points', i), units, report));
	const faults = geometryFaults(points, radii?.finished);
	for (const [i, right] of faults) report({ at: inside('shape.points', i), found: show(list[i]), right });
	const whole = points.filter((point) => point !== null);
	const complete = whole.length === points.length && faults.size === 0;
	return {
		source: complete ? { kind: 'points', points: whole } : null,
		bends: points.length - 2,
		directions: complete ? directionsOf(pointsToBends(whole, 0).bends) : [],
	};
}

function readPoint(value: unknown, at: string, units: Units, report: Report): Point | null {
	if (!Array.isArray(value) || value.length < 2 || value.length > 3) {
		report({ at, found: show(value), right: `[x, y] or [x, y, z] in ${units}` });
		return null;
	}
	const schema = length(units, BOUNDS.coordinate);
	const [x, y, z = 0] = value.map((coordinate, i) => {
		const result = schema.safeParse(coordinate);
		if (result.success) return result.data;
		report({ at: inside(at, i), found: show(coordinate), right: result.error.issues[0]?.message ?? '' });
		return null;
	});
	return x == null || y == null || z == null ? null : [x, y, z];
}

/**
 * What keeps the points from being a tube, by point. A faulty point ends a run, so that the points on either side of it
 * are still judged.
 */
function geometryFaults(points: readonly (Point | null)[], radius: number | undefined): Map<number, string> {
	const faults = new Map<number, string>();
	for (const run of runs(points)) {
		const corners = pointFaults(run.points, 0);
		const cuts = [0, ...corners.map(({ point }) => point), run.points.length - 1];
		for (const { point, text } of corners) faults.set(run.first + point, text);
		if (radius === undefined) continue;
		cuts.slice(1).forEach((to, i) => {
			const from = cuts[i] ?? 0;
			if (to - from < 2) return;
			for (const { point, text } of pointFaults(run.points.slice(from, to + 1), radius, run.first + from)) {
				const index = run.first + from + point;
				if (!faults.has(index)) faults.set(index, text);
			}
		});
	}
	return faults;
}

/** Stretches of at least three points without a gap. */
function runs(points: readonly (Point | null)[]): { first: number; points: Point[] }[] {
	const found: { first: number; points: Point[] }[] = [];
	points.forEach((point, i) => {
		if (point === null) return;
		if (points[i - 1] == null) found.push({ first: i, points: [] });
		found.at(-1)?.points.push(point);
	});
	return found.filter((run) => run.points.length >= 3);
}

function readList(
	value: unknown,
	at: string,
	what: string,
	least: number,
	most: number,
	report: Report,
): unknown[] | null {
	if (Array.isArray(value) && value.length >= least && value.length <= most) return value;
	const found = Array.isArray(value) ? `a list of ${value.length}` : show(value);
	report({ at, found, right: `a list [ … ] of ${what} and at most ${most}` });
	return null;
}
