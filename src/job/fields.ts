/** The kinds of value that a job file holds, each a schema whose message says what would be right. */
import * as z from 'zod/mini';
import { LONGEST_NAME, LONGEST_NOTES, nameWillDo, notesWillDo } from '../tube/names.ts';
import { parseLength } from '../units/parse.ts';
import { isWithin, lengthsIn, type Range, rangeWords } from '../units/range.ts';
import type { Units } from '../units/units.ts';
import { UnitsError } from '../units/units-error.ts';
import { inside, type Report, show } from './fault.ts';

type Schemas = Readonly<Record<string, z.ZodMiniType>>;
/** What could be read of an object: a key is absent where it was absent or faulty. */
export type Read<S extends Schemas> = { [K in keyof S]?: z.output<S[K]> };

/** A length in `units`, written as a number or as a fabricator writes it. `bound` has what it may be, in mm. */
export function length(units: Units, bound: Range) {
	const range = lengthsIn(bound, units);
	const words = `a length${rangeWords(range)} in ${units === 'in' ? 'inches, as 9.375 or "9 3/8"' : 'mm, as 238 or "9 3/8 in"'}`;
	return z.transform((value: unknown, context) => {
		const wrong = (message: string) => {
			context.issues.push({ code: 'custom', message, input: value });
			return z.NEVER;
		};
		if (typeof value !== 'string' && !Number.isFinite(value)) return wrong(words);
		try {
			const read = parseLength(value as string | number, units);
			return isWithin(read, range) ? read : wrong(words);
		} catch (error) {
			if (error instanceof UnitsError) return wrong(`${words} (${error.right})`);
			throw error;
		}
	});
}

/** A JSON number; `what` names it in the fault. */
export function number(what: string, range: Range = {}) {
	const words = rangeWords(range);
	const error = `${what}${words && `,${words}`}; a number without quotes`;
	return z.number({ error }).check(z.refine((value) => isWithin(value, range), { error }));
}

/** The number of one `what` among several, from 1 to `most`; without `most` only that it is one. */
export function ordinal(what: string, most: number | null) {
	return whole(most === null ? `the number of a ${what}, from 1` : `the number of a ${what}, 1 to ${most}`, most);
}

export function yesOrNo(what: string) {
	return z.boolean({ error: `${what}: true or false, without quotes` });
}

/** A whole number from 1 to `most`; `what` names it in the fault. */
export function count(what: string, most: number) {
	return whole(`${what}, a whole number from 1 to ${most}`, most);
}

function whole(error: string, most: number | null) {
	return z
		.number({ error })
		.check(z.refine((value) => Number.isInteger(value) && value >= 1 && value <= (most ?? value), { error }));
}

/** A name: visible characters on one line, at least one. */
export function text(what: string) {
	const error = `${what}, a text in quotes of at most ${LONGEST_NAME} characters on one line`;
	return z.string({ error }).check(z.refine(nameWillDo, { error }));
}

/** Prose, with lines of its own. */
export function notes() {
	const error = `a text in quotes of at most ${LONGEST_NOTES} characters, with \\n for the end of a line and no other control character`;
	return z.string({ error }).check(z.refine(notesWillDo, { error }));
}

/**
 * Reads an object key by key, each by its own schema, so that one bad value hides no other. Unknown keys, missing
 * required ones and bad values are reported.
 */
export function readObject<S extends Schemas>(
	value: unknown,
	at: string,
	schemas: S,
	required: readonly (keyof S & string)[],
	report: Report,
): Read<S> {
	const read: Record<string, unknown> = {};
	if (!isObject(value)) {
		report({ at, found: show(value), right: `an object { … } with ${Object.keys(schemas).join(', ')}` });
		return read as Read<S>;
	}
	reportUnknown(value, at, Object.keys(schemas), report);
	for (const [key, schema] of Object.entries(schemas)) {
		const own = Object.hasOwn(value, key) ? value[key] : undefined;
		if (own === undefined && !required.includes(key)) continue;
		const result = schema.safeParse(own);
		if (result.success) read[key] = result.data;
		else {
			const right = result.error.issues[0]?.message ?? '';
			const place = inside(at, key);
			report({ at: place, found: show(own), right: required.includes(key) ? right : `${right}, or no "${key}"` });
		}
	}
	return read as Read<S>;
}

/** Reports every key of an object that is not one of these. */
export function reportUnknown(value: object, at: string, known: readonly string[], report: Report): void {
	for (const [key, found] of Object.entries(value)) {
		if (known.includes(key)) continue;
		report({
			at: inside(at, key),
			found: show(found),
			right: `nothing here: no such key; known here: ${known.join(', ')}`,
		});
	}
}

export function isObject(value: unknown): value is Record<string, unknown> {
	return typeof value === 'object' && value !== null && !Array.isArray(value);
}
