import { FIELDS, type FieldName } from '../../settings/fields.ts';
import type { KeptRecord } from '../../tube/kept-tooling.ts';
import { formatAngle, formatLength, trimmed } from '../../units/format.ts';

/** What each kept field is, as it is asked for. */
export const FIELD_WORDS: Readonly<Record<FieldName, string>> = {
	clr: 'centre-line radius of the die',
	growth: "radius of a finished bend over the die's",
	stretch: 'part by which an arc comes out longer',
	clamp: 'straight tube that the clamp needs',
	follow: 'straight tube needed behind the last bend',
	markOffset: 'how far past the index line a bend begins',
	maxAngle: 'largest dial angle',
	dialStep: 'smallest division of the dial',
	tape: 'division of the tape',
	floor: "height of the die's plane above the floor",
};

/** Fields that hold with every die of a machine, and those of a die. */
export const MACHINE_FIELDS: readonly FieldName[] = ['maxAngle', 'dialStep', 'tape', 'floor'];
export const DIE_FIELDS: readonly FieldName[] = [
	'clr',
	'growth',
	'stretch',
	'markOffset',
	'clamp',
	'follow',
	'floor',
	'maxAngle',
];

/** A field with its value. */
export function fieldLine(field: FieldName, { units, fields }: KeptRecord): string {
	const value = fields[field];
	return `${FIELD_WORDS[field]}: ${value == null ? 'not set' : valueWords(field, value, units)}`;
}

export function valueWords(field: FieldName, value: number, units: KeptRecord['units']): string {
	const { kind } = FIELDS[field];
	if (kind === 'length') return formatLength(value, units);
	return kind === 'angle' ? formatAngle(value, 2) : trimmed(value, 4);
}
