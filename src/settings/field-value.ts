import { type FieldName, TOOLING_FIELDS } from '../tube/tooling-fields.ts';
import { isWithin, lengthsIn } from '../units/range.ts';
import type { Units } from '../units/units.ts';
import type { FieldRight } from './facts.ts';

/** Null where the value, a length in `units`, may be kept; else what would be right. */
export function wrongValue(name: FieldName, value: number, units: Units): FieldRight | null {
	const { kind, range } = TOOLING_FIELDS[name];
	const bound = kind === 'length' ? lengthsIn(range, units) : range;
	return Number.isFinite(value) && isWithin(value, bound) ? null : { kind, range: bound, units };
}
