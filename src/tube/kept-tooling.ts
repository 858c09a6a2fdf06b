import { convertLength } from '../units/units.ts';
import type { Tooling, Units } from './job.ts';

/** What the program keeps of a bender or a die: any part of a job's tooling but the two names. */
export type KeptTooling = Partial<Omit<Tooling, 'bender' | 'die'>>;

/** Kept fields with the unit that their lengths were given in, since a die serves jobs in either. */
export interface KeptRecord {
	units: Units;
	fields: KeptTooling;
}

/** The fields of a record that are lengths; the others (growth, stretch, angles) have no unit to convert. */
export const KEPT_LENGTHS = ['clr', 'clamp', 'follow', 'markOffset', 'tape', 'floor'] as const;

/** The record's fields with every length in `units`. */
export function keptIn(record: KeptRecord, units: Units): KeptTooling {
	if (record.units === units) return record.fields;
	const fields: KeptTooling = { ...record.fields };
	for (const name of KEPT_LENGTHS) {
		const length = fields[name];
		if (length !== undefined && length !== null) fields[name] = convertLength(length, record.units, units);
	}
	return fields;
}
