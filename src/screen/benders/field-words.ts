import type { KeptRecord } from '../../tube/kept-tooling.ts';
import { FIELD_NAMES, type FieldName, TOOLING_FIELDS } from '../../tube/tooling-fields.ts';
import { formatQuantity } from '../../units/format.ts';

/** What each kept field is, as it is asked for. */
export const fieldWords = (field: FieldName): string => TOOLING_FIELDS[field].says;

/** Fields that hold with every die of a machine, and those of a die. */
export const MACHINE_FIELDS = FIELD_NAMES.filter((field) => TOOLING_FIELDS[field].with.includes('machine'));
export const DIE_FIELDS = FIELD_NAMES.filter((field) => TOOLING_FIELDS[field].with.includes('die'));

/** A field with its value. */
export function fieldLine(field: FieldName, { units, fields }: KeptRecord): string {
	const value = fields[field];
	return `${fieldWords(field)}: ${value == null ? 'not set' : valueWords(field, value, units)}`;
}

export function valueWords(field: FieldName, value: number, units: KeptRecord['units']): string {
	return formatQuantity(value, TOOLING_FIELDS[field].kind, units);
}
