import * as z from 'zod/mini';
import { FIELD_NAMES, type FieldName } from '../tube/tooling-fields.ts';
import type { Broken } from './facts.ts';

/**
 * Lists, not objects by name, so that a die called `6` keeps its place and one called `__proto__` is a name like any other.
 * Built only when there is a file to read: it costs more than a whole mark table.
 */
function fileSchema() {
	const name = z.string().check(z.minLength(1));
	const moment = z.string().check(z.refine((text: string) => Number.isFinite(Date.parse(text))));
	const fields = Object.fromEntries(FIELD_NAMES.map((field) => [field, z.optional(z.number())])) as Record<
		FieldName,
		z.ZodMiniOptional<z.ZodMiniNumber>
	>;
	const kept = { units: z.enum(['in', 'mm']), fields: z.looseObject(fields) };
	const bender = z.looseObject({
		name,
		machine: z.optional(z.looseObject(kept)),
		dies: z.array(z.looseObject({ name, ...kept })),
	});
	const preferences = {
		jobs: z.optional(z.string()),
		lengths: z.optional(z.enum(['fraction', 'decimal', 'mm'])),
		fromStart: z.optional(z.boolean()),
		checklist: z.optional(z.boolean()),
		bell: z.optional(z.boolean()),
	};
	return z.looseObject({
		benders: z._default(z.array(bender), []),
		forgotten: z.optional(z.array(z.looseObject({ bender: name, die: z.nullable(name), before: moment }))),
		preferences: z._default(z.looseObject(preferences), {}),
	});
}

/** What settings.json holds. Keys of a newer version are carried along untouched. */
export type SettingsFile = z.infer<ReturnType<typeof fileSchema>>;

export const NO_SETTINGS: SettingsFile = { benders: [], preferences: {} };

/** The settings that a text holds, or what is wrong with it. */
export function readSettings(text: string): { settings: SettingsFile } | { broken: Broken } {
	let value: unknown;
	try {
		// Editors of some systems put a byte order mark in front.
		value = JSON.parse(text.replace(/^\uFEFF/, ''));
	} catch {
		return { broken: text.trim() === '' ? 'empty' : 'not-json' };
	}
	const read = fileSchema().safeParse(value);
	if (read.success) return { settings: read.data };
	const path = read.error.issues[0]?.path ?? [];
	return { broken: path.length > 0 ? { path: path.join('.') } : 'no-settings' };
}
