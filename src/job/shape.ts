/** Reads `shape`: bends with their straights, or the sharp-corner points. */
import { ROUNDING, upToThousandth } from '../maths/scalar.ts';
import { normalizeRotation } from '../tube/angles.ts';
import { isObject } from '../tube/as-json.ts';
import { BOUNDS } from '../tube/bounds.ts';
import { frames } from '../tube/frames.ts';
import type { Bend, Point, ShapeSource, Units } from '../tube/job.ts';
import type { PointFact } from '../tube/points.ts';
import { bendsWanting, pointFaults, pointsToBends } from '../tube/points.ts';
import { keepCorners } from '../tube/resolve.ts';
import { inside, type Report, valued } from './fault.ts';
import { anything, type FieldReader, length, number, readObject, reportUnknown, such } from './field-readers.ts';

/** More bends than any tube has: a sign of a file gone wrong. */
const MOST_BENDS = 200;

/** What could be read of the shape. `bends` counts them as written, whether or not each is right; null: not known. */
export interface ReadShape {
	source: ShapeSource | null;
	bends: number | null;
	/** Unit direction of each straight, as far as the angles and rotations before it are right. */
	directions: readonly Point[];
}

const NO_SHAPE: ReadShape = { source: null, bends: null, directions: [] };

/** The die's center-line radius, and that of a finished bend as far as the job or the die states it. */
export interface Radii {
	die: number;
	finished: number;
	/** Of each further die, by its name. */
	further: ReadonlyMap<string, { die: number; finished: number }>;
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
	if (!isObject(value)) {
		report({ at: 'shape', found: valued(value), right: { code: 'shape' } });
		return NO_SHAPE;
	}
	const [bends, points] = [Object.hasOwn(value, 'bends'), Object.hasOwn(value, 'points')];
	if (bends === points) {
		reportUnknown(value, 'shape', ['bends', 'last', 'points'], report);
		report({ at: 'shape', found: { code: bends ? 'both-shapes' : 'neither-shape' }, right: { code: 'one-shape' } });
		return bends ? faultsOfBoth(value, by) : NO_SHAPE;
	}
	return points ? readPoints(value, by) : readBends(value, by);
}

/** Which of two shapes is meant cannot be known; the faults in each are said all the same. */
function faultsOfBoth({ points, ...byBends }: Record<string, unknown>, by: ReadBy): ReadShape {
	readPoints({ points }, by);
	return { ...readBends(byBends, by), source: null };
}

function readBends(value: Record<string, unknown>, { units, radii, dies, report }: ReadBy): ReadShape {
	const readers = {
		bends: anything,
		last: length(units, BOUNDS.straight),
		radius: length(units, BOUNDS.radius),
	};
	const { last, radius } = readObject(value, 'shape', readers, ['bends', 'last'], report);
	const list = readList(value.bends, 'bends', 1, MOST_BENDS, report);
	if (list === null) return NO_SHAPE;
	const bendReaders = bendReadersFor(units, dies);
	const read = list.map((item, i) => readBend(item, inside('shape.bends', i), bendReaders, report));
	const bends = read.filter((bend): bend is Bend => bend.straight !== undefined && isTurn(bend));
	const turns = leadingTurns(read);
	const complete = last !== undefined && bends.length === read.length;
	const source: BentSource | null = complete
		? { kind: 'bends', bends, last, ...(radius === undefined ? {} : { radius }) }
		: null;
	const isRadiusKnown = radius !== undefined || !Object.hasOwn(value, 'radius');
	// A die that is not known has been reported.
	const areDiesKnown = bends.every(({ die }) => die === undefined || dies?.includes(die));
	if (source && radii && isRadiusKnown && areDiesKnown) reportNoRoom(source, radii, report);
	return {
		source,
		bends: read.length,
		directions: directionsOf(turns),
	};
}

type BentSource = Extract<ShapeSource, { kind: 'bends' }>;

/** Says which straights the finished radii leave no room for, the drawing's sharp corners kept. */
function reportNoRoom({ bends, last, radius: drawn }: BentSource, radii: Radii, report: Report): void {
	const on = bends.map((bend) => radii.further.get(bend.die ?? '') ?? radii);
	const own = on.map(({ finished }) => finished);
	const straights = [...bends.map(({ straight }) => straight), last];
	const shape = { straights, bends: bends.map((bend, i) => ({ ...bend, radius: drawn ?? on[i]!.die })) };
	const kept = keepCorners(shape, own);
	kept.straights.forEach((rest, i) => {
		const both = own.slice(Math.max(0, i - 1), i + 1);
		if (rest >= -ROUNDING * Math.max(...both)) return;
		const least = upToThousandth(straights[i]! - rest);
		const at = i === bends.length ? 'shape.last' : `${inside('shape.bends', i)}.straight`;
		const finished = [...new Set(both)];
		const right = { code: 'room', least, finished, bends: bendsWanting(i + 1, bends.length) } as const;
		report({ at, found: valued(straights[i]), right });
	});
}

function bendReadersFor(units: Units, dies: readonly string[] | null) {
	const isKnown = (value: unknown): value is string =>
		typeof value === 'string' && (dies === null || dies.includes(value));
	return {
		straight: length(units, BOUNDS.straight),
		angle: number('bend-angle', BOUNDS.bendAngle),
		rotation: number('rotation'),
		die: such(isKnown, { code: 'die-of-job', dies }),
	};
}

function readBend(
	value: unknown,
	at: string,
	readers: ReturnType<typeof bendReadersFor>,
	report: Report,
): Partial<Bend> {
	const read = readObject(value, at, readers, ['straight', 'angle', 'rotation'], report);
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
	const list = readList(value.points, 'points', 3, MOST_BENDS + 2, report);
	if (list === null) return NO_SHAPE;
	const points = list.map((item, i) => readPoint(item, inside('shape.points', i), units, report));
	const faults = geometryFaults(points, radii?.finished);
	for (const [i, right] of faults) report({ at: inside('shape.points', i), found: valued(list[i]), right });
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
		report({ at, found: valued(value), right: { code: 'point', units } });
		return null;
	}
	const read: FieldReader<number> = length(units, BOUNDS.coordinate);
	const [x, y, z = 0] = value.map((coordinate, i) => {
		const result = read(coordinate);
		if ('value' in result) return result.value;
		report({ at: inside(at, i), found: valued(coordinate), right: result.wrong });
		return null;
	});
	return x == null || y == null || z == null ? null : [x, y, z];
}

/**
 * What keeps the points from being a tube, by point. A faulty point ends a run, so that the points on either side of it
 * are still judged.
 */
function geometryFaults(points: readonly (Point | null)[], radius: number | undefined): Map<number, PointFact> {
	const faults = new Map<number, PointFact>();
	for (const run of runs(points)) {
		const corners = pointFaults(run.points, 0);
		const cuts = [0, ...corners.map(({ point }) => point), run.points.length - 1];
		for (const { point, fact } of corners) faults.set(run.first + point, fact);
		if (radius === undefined) continue;
		cuts.slice(1).forEach((to, i) => {
			const from = cuts[i] ?? 0;
			if (to - from < 2) return;
			for (const { point, fact } of pointFaults(run.points.slice(from, to + 1), radius, run.first + from)) {
				const index = run.first + from + point;
				if (!faults.has(index)) faults.set(index, fact);
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
	of: 'bends' | 'points',
	least: number,
	most: number,
	report: Report,
): unknown[] | null {
	if (Array.isArray(value) && value.length >= least && value.length <= most) return value;
	const found = Array.isArray(value) ? ({ code: 'list-of', length: value.length } as const) : valued(value);
	report({ at: `shape.${of}`, found, right: { code: of, least, most } });
	return null;
}
