/** Reads what each kind of check measures, and whether it is there to be measured. */
import * as z from 'zod/mini';
import { acuteAngle } from '../tube/drop.ts';
import type { Check, CornerName, Point, Units } from '../tube/job.ts';
import { formatAngle } from '../units/format.ts';
import { inside, type Report, show } from './fault.ts';
import { isObject, ordinal, readObject } from './fields.ts';

/** What the checks are held against. */
export interface Measurable {
	/** Null where the shape could not be read. */
	bends: number | null;
	/** Unit direction of each straight, as far as they are known. */
	directions: readonly Point[];
	units: Units;
	/** The job's tolerance for lengths; undefined where it is faulty. */
	length: number | undefined;
}

export type Kind = Check['kind'];
/** A check without name and tolerance. */
type Measure = Check extends infer C ? (C extends Check ? Omit<C, 'name' | 'tolerance'> : never) : never;

/** Straights nearer to parallel than this, in degrees, span no plane that a straight edge could find. */
const LEAST_PLANE_ANGLE = 0.01;

/** Straights farther from parallel than this, in degrees, have no one width between them. */
const PARALLEL = 2;

const straight = (tube: Measurable) => ordinal('straight', tube.bends === null ? null : tube.bends + 1);
const bend = (tube: Measurable) => ordinal('bend', tube.bends);

type MeasureReader = (value: unknown, at: string, tube: Measurable, report: Report) => Measure | null;

export const READERS: Readonly<Record<Kind, MeasureReader>> = {
	drop(value, at, tube, report) {
		const schemas = {
			from: straight(tube),
			to: z.unknown(),
			surface: z.enum(['across', 'centre'], { error: '"across", for a reading to the outside of the tube' }),
		};
		const { from, to, surface } = readObject(value, at, schemas, ['from', 'to'], report);
		if (!isObject(value)) return null;
		const place = readOneOf(to, inside(at, 'to'), { bend: bend(tube), straight: straight(tube) }, report);
		if (from === undefined || place === null) return null;
		if ('straight' in place && place.straight === from) {
			report({
				at: inside(at, 'to'),
				found: show(to),
				right: `another straight than ${from}, from which it is measured`,
			});
			return null;
		}
		// A surface that could not be read is a fault already.
		return { kind: 'drop', from, to: place, surface: surface ?? 'centre' };
	},
	angle(value, at, tube, report) {
		const { between } = readObject(value, at, { between: z.unknown() }, [], report);
		if (!isObject(value)) return null;
		const pair = readPair(between, inside(at, 'between'), tube, report);
		return pair && { kind: 'angle', between: pair };
	},
	span(value, at, tube, report) {
		const ends = readObject(value, at, { from: z.unknown(), to: z.unknown() }, [], report);
		if (!isObject(value)) return null;
		const from = readCorner(ends.from, inside(at, 'from'), tube, report);
		const to = readCorner(ends.to, inside(at, 'to'), tube, report);
		if (from === null || to === null) return null;
		if (show(from) === show(to)) {
			report({ at: inside(at, 'to'), found: show(ends.to), right: 'another place than "from"' });
			return null;
		}
		return { kind: 'span', from, to };
	},
	out(value, at, tube, report) {
		const read = readObject(value, at, { plane: z.unknown(), to: z.unknown() }, [], report);
		if (!isObject(value)) return null;
		const plane = readPair(read.plane, inside(at, 'plane'), tube, report);
		const to = readOneOf(read.to, inside(at, 'to'), { straight: straight(tube) }, report);
		if (plane !== null) reportParallel(plane, inside(at, 'plane'), tube, report);
		if (plane === null || to === null) return null;
		return { kind: 'out', plane, to };
	},
	width(value, at, tube, report) {
		const surface = z.enum(['outside', 'inside', 'center'], { error: '"outside", "inside" or "center"' });
		const read = readObject(value, at, { between: z.unknown(), surface }, [], report);
		if (!isObject(value)) return null;
		const pair = readPair(read.between, inside(at, 'between'), tube, report);
		if (pair === null) return null;
		reportAskew(pair, inside(at, 'between'), tube, report);
		const [from, to] = pair[0] < pair[1] ? pair : [pair[1], pair[0]];
		return { kind: 'width', from, to: { straight: to }, surface: read.surface ?? 'center' };
	},
	overall(value, at, _, report) {
		const axis = z.enum(['x', 'y', 'z'], { error: '"x", "y" or "z", an axis of bend 1' });
		const read = readObject(value, at, { axis }, ['axis'], report);
		return read.axis === undefined ? null : { kind: 'overall', axis: read.axis };
	},
	ovality(value, at, tube, report) {
		const read = readObject(value, at, { bend: bend(tube) }, ['bend'], report);
		return read.bend === undefined ? null : { kind: 'ovality', bend: read.bend };
	},
};

function readCorner(value: unknown, at: string, tube: Measurable, report: Report): CornerName | null {
	const end = z.enum(['start', 'far'], { error: '"start" or "far", the finished end' });
	return readOneOf(value, at, { bend: bend(tube), end }, report);
}

/** An object with exactly one of the keys, as `{ "bend": 2 }`. */
function readOneOf<S extends Record<string, z.ZodMiniType>>(
	value: unknown,
	at: string,
	schemas: S,
	report: Report,
): { [K in keyof S]: { [P in K]: z.output<S[P]> } }[keyof S] | null {
	const keys = Object.keys(schemas);
	const given = isObject(value) ? keys.filter((key) => Object.hasOwn(value, key)) : [];
	if (!isObject(value) || given.length !== 1) {
		const right = keys.map((key) => `{ "${key}": ${key === 'end' ? '"start" or "far"' : 'its number'} }`).join(' or ');
		report({ at, found: show(value), right });
		return null;
	}
	const read = readObject(value, at, schemas, given, report);
	return given.some((key) => Object.hasOwn(read, key)) ? (read as never) : null;
}

/** Two different straights. */
function readPair(value: unknown, at: string, tube: Measurable, report: Report): [number, number] | null {
	if (!Array.isArray(value) || value.length !== 2) {
		report({ at, found: show(value), right: 'two different straights, [j, k]' });
		return null;
	}
	const schema = straight(tube);
	const [j, k] = value.map((item, i) => {
		const result = schema.safeParse(item);
		if (result.success) return result.data;
		report({ at: inside(at, i), found: show(item), right: result.error.issues[0]?.message ?? '' });
		return null;
	});
	if (j == null || k == null) return null;
	if (j !== k) return [j, k];
	report({ at, found: show(value), right: 'two different straights, [j, k]' });
	return null;
}

/** Degrees between the lines of two straights; null where a direction is not known. */
function askew([j, k]: readonly [number, number], { directions }: Measurable): number | null {
	const [first, second] = [directions[j - 1], directions[k - 1]];
	return first === undefined || second === undefined ? null : acuteAngle(first, second);
}

function reportAskew(pair: readonly [number, number], at: string, tube: Measurable, report: Report): void {
	const angle = askew(pair, tube);
	if (angle === null || angle <= PARALLEL) return;
	const right = `two straights that run parallel within ${PARALLEL}°: these are ${formatAngle(angle, 1)} apart`;
	report({ at, found: show(pair), right });
}

function reportParallel([j, k]: readonly [number, number], at: string, tube: Measurable, report: Report): void {
	const angle = askew([j, k], tube);
	if (angle === null || angle >= LEAST_PLANE_ANGLE) return;
	const right = 'two straights that are not parallel: these two span no plane';
	report({ at, found: show([j, k]), right });
}
