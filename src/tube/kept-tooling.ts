import { convertLength } from '../units/units.ts';
import type { Tooling, Units } from './job.ts';
import { FIELD_NAMES, TOOLING_FIELDS } from './tooling-fields.ts';

/** What the program keeps of a bender or a die: any part of a job's tooling but the two names. */
export type KeptTooling = Partial<Omit<Tooling, 'bender' | 'die' | 'dies'>>;

/** Kept fields with the unit that their lengths were given in, since a die serves jobs in either. */
export interface KeptRecord {
	units: Units;
	fields: KeptTooling;
}

/** The record's fields with every length in `units`. */
export function keptIn(record: KeptRecord, units: Units): KeptTooling {
	if (record.units === units) return record.fields;
	const fields: KeptTooling = { ...record.fields };
	for (const name of FIELD_NAMES) {
		// Ratios and angles have no unit to convert.
		if (TOOLING_FIELDS[name].kind !== 'length') continue;
		const length = fields[name];
		if (length !== undefined && length !== null) fields[name] = convertLength(length, record.units, units);
	}
	return fields;
}
