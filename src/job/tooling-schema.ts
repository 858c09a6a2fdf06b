import type { Units } from '../tube/job.ts';
import { type FieldName, TOOLING_FIELDS } from '../tube/tooling-fields.ts';
import { length, number } from './fields.ts';

/** What a figure of the tooling may be, as the table of them says. */
export function figureSchema(name: FieldName, units: Units) {
	const { kind, range, says } = TOOLING_FIELDS[name];
	return kind === 'length'
		? length(units, range)
		: number(`the ${says}${kind === 'angle' ? ' in degrees' : ''}`, range);
}
