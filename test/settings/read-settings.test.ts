import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as z from 'zod/mini';
import { readSettings } from '../../src/settings/read-settings.ts';
import { FIELD_NAMES } from '../../src/tube/tooling-fields.ts';

/** What settings.json holds, in the words of zod, which knows nothing of ours. */
const name = z.string().check(z.minLength(1));
const moment = z.string().check(z.refine((text: string) => Number.isFinite(Date.parse(text))));
const fields = z.looseObject(Object.fromEntries(FIELD_NAMES.map((field) => [field, z.optional(z.number())])));
const kept = { units: z.enum(['in', 'mm']), fields };
const SCHEMA = z.looseObject({
	benders: z.optional(
		z.array(
			z.looseObject({
				name,
				machine: z.optional(z.looseObject(kept)),
				dies: z.array(z.looseObject({ name, ...kept })),
			}),
		),
	),
	forgotten: z.optional(z.array(z.looseObject({ bender: name, die: z.nullable(name), before: moment }))),
	preferences: z.optional(
		z.looseObject({
			jobs: z.optional(z.string()),
			lengths: z.optional(z.enum(['fraction', 'decimal', 'mm'])),
			fromStart: z.optional(z.boolean()),
			checklist: z.optional(z.boolean()),
			bell: z.optional(z.boolean()),
		}),
	),
});

/** Settings that use every field, and names that are none of ours. */
const WHOLE = {
	benders: [
		{ name: 'shop', dies: [] },
		{
			name: '__proto__',
			machine: { units: 'mm', fields: { maxAngle: 190, dialStep: 0.5, tape: 1, floor: 900 }, later: [1] },
			dies: [
				{ name: '6', units: 'in', fields: { clr: 6, growth: 1.01, clamp: 4, later: 'x' } },
				{ name: '60', units: 'mm', fields: {} },
			],
		},
	],
	forgotten: [
		{ bender: 'shop', die: null, before: '2025-02-20T08:00:00.000Z' },
		{ bender: 'shop', die: '6', before: '2025-02-21' },
	],
	preferences: { jobs: 'jobs', lengths: 'mm', fromStart: true, checklist: false, bell: true },
	later: { kept: true },
};

const placesIn = (value: unknown, way: readonly string[] = []): string[][] =>
	typeof value === 'object' && value !== null
		? [[...way], ...Object.entries(value).flatMap(([key, each]) => placesIn(each, [...way, key]))]
		: [[...way]];
const PLACES = placesIn(WHOLE);

/** With this in that place; undefined: nothing there. */
function withPut(value: unknown, [first, ...way]: readonly string[], put: unknown): unknown {
	if (first === undefined) return put;
	const entries = Object.entries(value as object).map(([key, each]) => [
		key,
		key === first ? withPut(each, way, put) : each,
	]);
	return Array.isArray(value) ? entries.map(([, each]) => each) : Object.fromEntries(entries);
}

const wrong = fc.oneof(
	fc.constantFrom(undefined, null, '', 'in', 'mm', 'today', 0, -1, true, [], {}, [{}], { name: '' }),
	fc.jsonValue(),
);

describe('settings that are read', () => {
	it('have the form that zod finds, and the same first fault', () => {
		let faults = 0;
		fc.assert(
			fc.property(fc.array(fc.tuple(fc.constantFrom(...PLACES), wrong), { maxLength: 3 }), (changes) => {
				const value = changes.reduce<unknown>(
					(made, [way, put]) => (isThere(made, way) ? withPut(made, way, put) : made),
					WHOLE,
				);
				const text = JSON.stringify(value) ?? '';
				if (text === '') return;
				const read = readSettings(text);
				const { success, error } = SCHEMA.safeParse(JSON.parse(text));
				const path = error?.issues[0]?.path ?? [];
				if (!success) faults++;
				if (success) expect(read).toEqual({ settings: { benders: [], preferences: {}, ...JSON.parse(text) } });
				else expect(read).toEqual({ broken: path.length > 0 ? { path: path.join('.') } : 'no-settings' });
			}),
			{ numRuns: 1000 },
		);
		expect(faults).toBeGreaterThan(250);
	});

	it('are said to be empty, or no JSON', () => {
		expect(readSettings(' \n')).toEqual({ broken: 'empty' });
		expect(readSettings('{"benders":')).toEqual({ broken: 'not-json' });
		expect(readSettings('\uFEFF{}')).toEqual({ settings: { benders: [], preferences: {} } });
	});
});

const isThere = (value: unknown, way: readonly string[]): boolean =>
	way.length === 0 ||
	(typeof value === 'object' &&
		value !== null &&
		Object.hasOwn(value, way[0]!) &&
		isThere((value as Record<string, unknown>)[way[0]!], way.slice(1)));
