import { isFlag, isNumber, isOneOf, isText } from '../session/log/form/is.ts';
import { isObject } from '../tube/as-json.ts';
import type { KeptRecord } from '../tube/kept-tooling.ts';
import { FIELD_NAMES } from '../tube/tooling-fields.ts';
import type { Broken } from './facts.ts';
import type { BenderInFile, Forgotten, KeptDie, Preferences, SettingsFile } from './settings-file.ts';

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
	const place = FILE(value);
	if (place === null) return { settings: { ...NO_SETTINGS, ...(value as Partial<SettingsFile>) } };
	return { broken: place.length > 0 ? { path: place.join('.') } : 'no-settings' };
}

/** The way to the first place of a value that has not the form, by names and numbers; null where all of it has. */
type Form = (value: unknown) => readonly (string | number)[] | null;

const formWhere =
	(is: (value: unknown) => boolean): Form =>
	(value) =>
		is(value) ? null : [];

const formOrAbsent =
	(form: Form): Form =>
	(value) =>
		value === undefined ? null : form(value);

function list(item: Form): Form {
	return (value) => {
		if (!Array.isArray(value)) return [];
		for (const [n, each] of value.entries()) {
			const place = item(each);
			if (place !== null) return [n, ...place];
		}
		return null;
	};
}

/** Of these fields, none left out; what a newer version has beside them is of no account. */
function object<T>(forms: { readonly [K in keyof T]-?: Form }): Form {
	return (value) => {
		if (!isObject(value)) return [];
		for (const [name, form] of Object.entries<Form>(forms)) {
			const place = form(Object.hasOwn(value, name) ? value[name] : undefined);
			if (place !== null) return [name, ...place];
		}
		return null;
	};
}

const flagForm = formOrAbsent(formWhere(isFlag));
const nameForm = formWhere((value) => isText(value) && value !== '');
const momentForm = formWhere((value) => isText(value) && Number.isFinite(Date.parse(value)));
const fieldsForm = object(Object.fromEntries(FIELD_NAMES.map((field) => [field, formOrAbsent(formWhere(isNumber))])));
const recordForm = { units: formWhere(isOneOf('in', 'mm')), fields: fieldsForm };
const benderForm = object<BenderInFile>({
	name: nameForm,
	machine: formOrAbsent(object<KeptRecord>(recordForm)),
	dies: list(object<KeptDie>({ name: nameForm, ...recordForm })),
});
const forgottenForm = object<Forgotten>({
	bender: nameForm,
	die: (value) => (value === null ? null : nameForm(value)),
	before: momentForm,
});
const preferencesForm = object<Preferences>({
	jobs: formOrAbsent(formWhere(isText)),
	lengths: formOrAbsent(formWhere(isOneOf('fraction', 'decimal', 'mm'))),
	fromStart: flagForm,
	checklist: flagForm,
	bell: flagForm,
});

const FILE = object<SettingsFile>({
	benders: formOrAbsent(list(benderForm)),
	forgotten: formOrAbsent(list(forgottenForm)),
	preferences: formOrAbsent(preferencesForm),
});
