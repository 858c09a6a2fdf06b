import { isNumber } from '../session/log/form/is.ts';
import { isObject } from '../tube/as-json.ts';
/** The kinds of value that a job file holds: each reader gives the value, or what would be right. */
import { LONGEST_NAME, LONGEST_NOTES, nameWillDo, notesWillDo } from '../tube/names.ts';
import { parseLength } from '../units/parse.ts';
import { isWithin, lengthsIn, type Range } from '../units/range.ts';
import type { Units } from '../units/units.ts';
import { UnitsError } from '../units/units-error.ts';
import type { NameOf, NumberOf, Right, Surface } from './facts/index.ts';
import { inside, type Report, valued } from './fault.ts';

export type FieldReader<T> = (value: unknown) => { value: T } | { wrong: Right };

type Readers = Readonly<Record<string, FieldReader<unknown>>>;
/** What could be read of an object: a key is absent where it was absent or faulty. */
export type Read<R extends Readers> = { [K in keyof R]?: R[K] extends FieldReader<infer T> ? T : never };

/** Whatever stands there; it is read elsewhere. */
export const anything: FieldReader<unknown> = (value) => ({ value });

/** A value of which this holds. */
export function such<T>(holds: (value: unknown) => value is T, wrong: Right): FieldReader<T> {
	return (value) => (holds(value) ? { value } : { wrong });
}

/** A length in `units`, written as a number or as a fabricator writes it. `bound` has what it may be, in mm. */
export function length(units: Units, bound: Range): FieldReader<number> {
	const wrong: Right & { code: 'length' } = { code: 'length', range: lengthsIn(bound, units), units };
	return (value) => {
		if (typeof value !== 'string' && !Number.isFinite(value)) return { wrong };
		try {
			const read = parseLength(value as string | number, units);
			return isWithin(read, wrong.range) ? { value: read } : { wrong };
		} catch (error) {
			if (error instanceof UnitsError) return { wrong: { ...wrong, why: error.fault } };
			throw error;
		}
	};
}

/** A JSON number. */
export function number(of: NumberOf, range: Range = {}): FieldReader<number> {
	return such((value): value is number => isNumber(value) && isWithin(value, range), { code: 'number', of, range });
}

/** The number of one among several, from 1 to `most`; without `most` only that it is one. */
export function ordinal(of: 'straight' | 'bend', most: number | null): FieldReader<number> {
	return whole(most, { code: 'ordinal', of, most });
}

export function yesOrNo(of: 'may-open'): FieldReader<boolean> {
	return such((value) => typeof value === 'boolean', { code: 'yes-or-no', of });
}

/** A whole number from 1 to `most`. */
export function count(of: 'tubes', most: number): FieldReader<number> {
	return whole(most, { code: 'count', of, most });
}

function whole(most: number | null, wrong: Right): FieldReader<number> {
	return such(
		(value): value is number => isNumber(value) && Number.isInteger(value) && value >= 1 && value <= (most ?? value),
		wrong,
	);
}

/** A name: visible characters on one line, at least one. */
export function text(of: NameOf): FieldReader<string> {
	const wrong: Right = { code: 'name', of, most: LONGEST_NAME };
	return such((value): value is string => typeof value === 'string' && nameWillDo(value), wrong);
}

/** Prose, with lines of its own. */
export function notes(): FieldReader<string> {
	const wrong: Right = { code: 'notes', most: LONGEST_NOTES };
	return such((value): value is string => typeof value === 'string' && notesWillDo(value), wrong);
}

/** One of a few words. */
export function oneOf<const T extends string>(values: readonly T[], of: Surface): FieldReader<T> {
	return such((value): value is T => (values as readonly unknown[]).includes(value), { code: 'one-of', of });
}

/**
 * Reads an object key by key, each by its own reader, so that one bad value hides no other. Unknown keys, missing
 * required ones and bad values are reported.
 */
export function readObject<R extends Readers>(
	value: unknown,
	at: string,
	readers: R,
	required: readonly (keyof R & string)[],
	report: Report,
): Read<R> {
	const read: Record<string, unknown> = {};
	if (!isObject(value)) {
		report({ at, found: valued(value), right: { code: 'object', keys: Object.keys(readers) } });
		return read as Read<R>;
	}
	reportUnknown(value, at, Object.keys(readers), report);
	for (const [key, reader] of Object.entries(readers)) {
		const own = Object.hasOwn(value, key) ? value[key] : undefined;
		if (own === undefined && !required.includes(key)) continue;
		const result = reader(own);
		if ('value' in result) read[key] = result.value;
		else {
			const orWithout = required.includes(key) ? {} : { orWithout: key };
			report({ at: inside(at, key), found: valued(own), right: result.wrong, ...orWithout });
		}
	}
	return read as Read<R>;
}

/** Reports every key of an object that is not one of these. */
export function reportUnknown(value: object, at: string, known: readonly string[], report: Report): void {
	for (const [key, found] of Object.entries(value)) {
		if (known.includes(key)) continue;
		report({ at: inside(at, key), found: valued(found), right: { code: 'unknown-key', known } });
	}
}
