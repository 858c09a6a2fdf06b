import { FIELD_NAMES, FIELDS } from '../settings/fields.ts';
import type { KeptBender } from '../settings/settings.ts';
import type { KeptRecord } from '../tube/kept-tooling.ts';
import { formatAngle, formatLength, trimmed } from '../units/format.ts';
import { optionName } from './quantity.ts';

/** Benders, each with its dies and what is kept of them, line by line. */
export function benderText(benders: readonly KeptBender[]): string[] {
	if (benders.length === 0) return ['No bender is set up. To set one up: pullbook bender NAME --die DIE --clr LENGTH'];
	return benders.flatMap(({ name, machine, dies }) => [
		`Bender ${name}`,
		...(machine ? [`  with every die: ${fieldsOf(machine)}`] : []),
		...dies.map((die) => `  die ${die.name}: ${fieldsOf(die)}`),
	]);
}

function fieldsOf({ units, fields }: KeptRecord): string {
	const shown = FIELD_NAMES.flatMap((field) => {
		const value = fields[field];
		if (value == null) return [];
		const { kind } = FIELDS[field];
		const text =
			kind === 'length' ? formatLength(value, units) : kind === 'angle' ? formatAngle(value, 2) : trimmed(value, 4);
		return [`${optionName(field)} ${text}`];
	});
	return shown.length > 0 ? shown.join(', ') : 'nothing kept';
}
