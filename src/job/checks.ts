/** Reads `checks`: what each measures, whether it is there to be measured, and its tolerance. */
import * as z from 'zod/mini';
import { angleBetween } from '../tube/angles.ts';
import type { Check, CornerName, Point, Units } from '../tube/job.ts';
import { inside, type Report, show } from './fault.ts';
import { isObject, length, number, ordinal, readObject, reportUnknown, text } from './fields.ts';

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

type Kind = Check['kind'];
/** A check without name and tolerance. */
type Measure = Check extends infer C ? (C extends Check ? Omit<C, 'name' | 'tolerance'> : never) : never;

const KINDS: readonly Kind[] = ['drop', 'angle', 'span', 'out', 'ovality'];
const MOST_CHECKS = 200;

/** Straights nearer to parallel than this, in degrees, span no plane that a straight edge could find. */
const LEAST_PLANE_ANGLE = 0.01;

export function readChecks(value: unknown, tube: Measurable, report: Report): Check[] {
	if (value === undefined) return [];
	if (!Array.isArray(value) || value.length > MOST_CHECKS) {
		report({
			at: 'checks',
			found: show(value),
			right: `a list [ … ] of at most ${MOST_CHECKS} checks, or no "checks"`,
		});
		return [];
	}
	const checks = value.map((item, i) => readCheck(item, inside('checks', i), tube, report));
	reportRepeatedNames(value, report);
	return checks.filter((check) => check !== null);
}

function readCheck(value: unknown, at: string, tube: Measurable, report: Report): Check | null {
	if (!isObject(value)) {
		report({ at, found: show(value), right: `an object { … } with "name" and one of ${KINDS.join(', ')}` });
		return null;
	}
	const kinds = KINDS.filter((kind) => Object.hasOwn(value, kind));
	const [kind] = kinds;
	if (kind === undefined || kinds.length > 1) {
		const found = kinds.length === 0 ? 'nothing to measure' : kinds.join(' and ');
		report({ at, found, right: `exactly one of ${KINDS.join(', ')}` });
		reportUnknown(value, at, ['name', 'tolerance', ...KINDS], report);
		return null;
	}
	const schemas = { name: text('a name, unlike those of the other checks'), [kind]: z.unknown() };
	const tolerance = toleranceSchema(kind, tube.units);
	const read = readObject(value, at, { ...schemas, tolerance }, ['name'], report);
	const measure = READERS[kind](value[kind], inside(at, kind), tube, report);
	const within = Object.hasOwn(value, 'tolerance') ? read.tolerance : defaultTolerance(kind, tube);
	if (typeof read.name !== 'string' || within === undefined || measure === null) return null;
	return { name: read.name, tolerance: within, ...measure };
}

function toleranceSchema(kind: Kind, units: Units): z.ZodMiniType<number> {
	if (kind === 'angle') return number('a tolerance in degrees', { above: 0, most: 90 });
	if (kind === 'ovality') return number('a tolerance of the ratio', { above: 0, below: 1 });
	return length(units, { above: 0 }) as z.ZodMiniType<number>;
}

function defaultTolerance(kind: Kind, tube: Measurable): number | undefined {
	if (kind === 'angle') return 0.5;
	return kind === 'ovality' ? 0.1 : tube.length;
}

const straight = (tube: Measurable) => ordinal('straight', tube.bends === null ? null : tube.bends + 1);
const bend = (tube: Measurable) => ordinal('bend', tube.bends);

type MeasureReader = (value: unknown, at: string, tube: Measurable, report: Report) => Measure | null;

const READERS: Readonly<Record<Kind, MeasureReader>> = {
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

function reportParallel([j, k]: readonly [number, number], at: string, tube: Measurable, report: Report): void {
	const [first, second] = [tube.directions[j - 1], tube.directions[k - 1]];
	if (first === undefined || second === undefined) return;
	const angle = angleBetween(first, second);
	if (Math.min(angle, 180 - angle) >= LEAST_PLANE_ANGLE) return;
	const right = 'two straights that are not parallel: these two span no plane';
	report({ at, found: show([j, k]), right });
}

function reportRepeatedNames(items: readonly unknown[], report: Report): void {
	const first = new Map<string, number>();
	items.forEach((item, i) => {
		const name = isObject(item) ? item.name : undefined;
		if (typeof name !== 'string') return;
		const before = first.get(name);
		if (before === undefined) first.set(name, i);
		else {
			const right = `a name of its own: checks[${before}] is called that`;
			report({ at: inside(inside('checks', i), 'name'), found: show(name), right });
		}
	});
}
