import { type FieldName, TOOLING_FIELDS } from '../tube/tooling-fields.ts';
import { wrongValue } from './fields.ts';
import type { SettingsFile } from './schema.ts';

type Kept = SettingsFile['benders'][number]['dies'][number];

/**
 * The settings without the values that no bender or die can have, as an older version or another program may have kept them; each is told in
 * `problems`, and the rest goes on to count.
 */
export function withinBounds(settings: SettingsFile): { settings: SettingsFile; problems: string[] } {
	const problems: string[] = [];
	const record = <T extends Pick<Kept, 'units' | 'fields'>>(kept: T, of: string): T => {
		const fields = Object.entries(kept.fields).filter(([name, value]) => {
			// What a newer version keeps besides is carried along.
			const isOurs = typeof value === 'number' && Object.hasOwn(TOOLING_FIELDS, name);
			const right = isOurs ? wrongValue(name as FieldName, value, kept.units) : null;
			if (right !== null) problems.push(`${name} of ${of} is kept as ${value} and does not count: set ${right}.`);
			return right === null;
		});
		return { ...kept, fields: Object.fromEntries(fields) };
	};
	const benders = settings.benders.map(({ machine, dies, ...bender }) => ({
		...bender,
		...(machine && { machine: record(machine, `bender "${bender.name}"`) }),
		dies: dies.map((die) => record(die, `die "${die.name}" of bender "${bender.name}"`)),
	}));
	return { settings: { ...settings, benders }, problems };
}
