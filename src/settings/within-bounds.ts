import type { KeptRecord } from '../tube/kept-tooling.ts';
import { type FieldName, TOOLING_FIELDS } from '../tube/tooling-fields.ts';
import type { SettingsProblem } from './facts.ts';
import { wrongValue } from './field-value.ts';
import type { SettingsFile } from './settings-file.ts';

/**
 * The settings without the values that no bender or die can have, as an older version or another program may have kept them; each is told in
 * `problems`, and the rest goes on to count.
 */
export function withinBounds(settings: SettingsFile): { settings: SettingsFile; problems: SettingsProblem[] } {
	const problems: SettingsProblem[] = [];
	const record = <T extends KeptRecord>(kept: T, bender: string, die: string | null): T => {
		const fields = Object.entries(kept.fields).filter(([name, value]) => {
			// What a newer version keeps besides is carried along.
			const isOurs = typeof value === 'number' && Object.hasOwn(TOOLING_FIELDS, name);
			if (!isOurs) return true;
			const field = name as FieldName;
			const right = wrongValue(field, value, kept.units);
			if (right !== null) problems.push({ code: 'settings-value', bender, die, field, value, right });
			return right === null;
		});
		return { ...kept, fields: Object.fromEntries(fields) };
	};
	const benders = settings.benders.map(({ machine, dies, ...bender }) => ({
		...bender,
		...(machine && { machine: record(machine, bender.name, null) }),
		dies: dies.map((die) => record(die, bender.name, die.name)),
	}));
	return { settings: { ...settings, benders }, problems };
}
