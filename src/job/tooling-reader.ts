import type { Units } from '../tube/job.ts';
import { type FieldName, TOOLING_FIELDS } from '../tube/tooling-fields.ts';
import { type FieldReader, length, number } from './field-readers.ts';

/** Reads a figure of the tooling, as the table of them says. */
export function figureReader(name: FieldName, units: Units): FieldReader<number> {
	const { kind, range } = TOOLING_FIELDS[name];
	return kind === 'length' ? length(units, range) : number({ tooling: name, degrees: kind === 'angle' }, range);
}
