import type { CheckKind } from '../session/protocol/kinds.ts';
import { isObject } from '../tube/as-json.ts';
/** Reads what each kind of check measures, and whether it is there to be measured. */
import { acuteAngle } from '../tube/drop.ts';
import type { Check, CornerName, Point, Units } from '../tube/job.ts';
import { inside, type Report, valued } from './fault.ts';
import { anything, type FieldReader, oneOf, ordinal, readObject } from './field-readers.ts';

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

/** A check without name and tolerance. */
type BareCheck = Check extends infer C ? (C extends Check ? Omit<C, 'name' | 'tolerance'> : never) : never;

/** Straights nearer to parallel than this, in degrees, span no plane that a straight edge could find. */
const LEAST_PLANE_ANGLE = 0.01;

/** Straights farther from parallel than this, in degrees, have no one width between them. */
const PARALLEL = 2;

const straightOrdinal = (tube: Measurable) => ordinal('straight', tube.bends === null ? null : tube.bends + 1);
const bendOrdinal = (tube: Measurable) => ordinal('bend', tube.bends);

type MeasureReader = (value: unknown, at: string, tube: Measurable, report: Report) => BareCheck | null;

export const READERS: Readonly<Record<CheckKind, MeasureReader>> = {
	drop(value, at, tube, report) {
		const readers = {
			from: straightOrdinal(tube),
			to: anything,
			surface: oneOf(['across', 'centre'], 'drop-surface'),
		};
		const { from, to, surface } = readObject(value, at, readers, ['from', 'to'], report);
		if (!isObject(value)) return null;
		const place = readOneOf(to, inside(at, 'to'), { bend: bendOrdinal(tube), straight: straightOrdinal(tube) }, report);
		if (from === undefined || place === null) return null;
		if ('straight' in place && place.straight === from) {
			report({ at: inside(at, 'to'), found: valued(to), right: { code: 'other-straight', than: from } });
			return null;
		}
		// A surface that could not be read is a fault already.
		return { kind: 'drop', from, to: place, surface: surface ?? 'centre' };
	},
	angle(value, at, tube, report) {
		const { between } = readObject(value, at, { between: anything }, [], report);
		if (!isObject(value)) return null;
		const pair = readPair(between, inside(at, 'between'), tube, report);
		return pair && { kind: 'angle', between: pair };
	},
	span(value, at, tube, report) {
		const ends = readObject(value, at, { from: anything, to: anything }, [], report);
		if (!isObject(value)) return null;
		const from = readCorner(ends.from, inside(at, 'from'), tube, report);
		const to = readCorner(ends.to, inside(at, 'to'), tube, report);
		if (from === null || to === null) return null;
		if (isSameCorner(from, to)) {
			report({ at: inside(at, 'to'), found: valued(ends.to), right: { code: 'other-place' } });
			return null;
		}
		return { kind: 'span', from, to };
	},
	out(value, at, tube, report) {
		const read = readObject(value, at, { plane: anything, to: anything }, [], report);
		if (!isObject(value)) return null;
		const plane = readPair(read.plane, inside(at, 'plane'), tube, report);
		const to = readOneOf(read.to, inside(at, 'to'), { straight: straightOrdinal(tube) }, report);
		if (plane !== null) reportParallel(plane, inside(at, 'plane'), tube, report);
		if (plane === null || to === null) return null;
		return { kind: 'out', plane, to };
	},
	width(value, at, tube, report) {
		const surface = oneOf(['outside', 'inside', 'center'], 'width-surface');
		const read = readObject(value, at, { between: anything, surface }, [], report);
		if (!isObject(value)) return null;
		const pair = readPair(read.between, inside(at, 'between'), tube, report);
		if (pair === null) return null;
		reportAskew(pair, inside(at, 'between'), tube, report);
		const [from, to] = pair[0] < pair[1] ? pair : [pair[1], pair[0]];
		return { kind: 'width', from, to: { straight: to }, surface: read.surface ?? 'center' };
	},
	overall(value, at, _, report) {
		const read = readObject(value, at, { axis: oneOf(['x', 'y', 'z'], 'axis') }, ['axis'], report);
		return read.axis === undefined ? null : { kind: 'overall', axis: read.axis };
	},
	ovality(value, at, tube, report) {
		const read = readObject(value, at, { bend: bendOrdinal(tube) }, ['bend'], report);
		return read.bend === undefined ? null : { kind: 'ovality', bend: read.bend };
	},
};

function readCorner(value: unknown, at: string, tube: Measurable, report: Report): CornerName | null {
	return readOneOf(value, at, { bend: bendOrdinal(tube), end: oneOf(['start', 'far'], 'end') }, report);
}

function isSameCorner(a: CornerName, b: CornerName): boolean {
	return 'bend' in a ? 'bend' in b && a.bend === b.bend : 'end' in b && a.end === b.end;
}

/** An object with exactly one of the keys, as `{ "bend": 2 }`. */
function readOneOf<R extends Record<string, FieldReader<unknown>>>(
	value: unknown,
	at: string,
	readers: R,
	report: Report,
): { [K in keyof R]: { [P in K]: R[P] extends FieldReader<infer T> ? T : never } }[keyof R] | null {
	const keys = Object.keys(readers);
	const given = isObject(value) ? keys.filter((key) => Object.hasOwn(value, key)) : [];
	if (!isObject(value) || given.length !== 1) {
		report({ at, found: valued(value), right: { code: 'one-key', keys } });
		return null;
	}
	const read = readObject(value, at, readers, given, report);
	return given.some((key) => Object.hasOwn(read, key)) ? (read as never) : null;
}

/** Two different straights. */
function readPair(value: unknown, at: string, tube: Measurable, report: Report): [number, number] | null {
	if (!Array.isArray(value) || value.length !== 2) {
		report({ at, found: valued(value), right: { code: 'two-straights' } });
		return null;
	}
	const read = straightOrdinal(tube);
	const [j, k] = value.map((item, i) => {
		const result = read(item);
		if ('value' in result) return result.value;
		report({ at: inside(at, i), found: valued(item), right: result.wrong });
		return null;
	});
	if (j == null || k == null) return null;
	if (j !== k) return [j, k];
	report({ at, found: valued(value), right: { code: 'two-straights' } });
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
	report({ at, found: valued(pair), right: { code: 'parallel', within: PARALLEL, apart: angle } });
}

function reportParallel([j, k]: readonly [number, number], at: string, tube: Measurable, report: Report): void {
	const angle = askew([j, k], tube);
	if (angle === null || angle >= LEAST_PLANE_ANGLE) return;
	report({ at, found: valued([j, k]), right: { code: 'not-parallel' } });
}
