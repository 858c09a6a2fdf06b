import { FIELD_NAMES, TOOLING_FIELDS } from '../../tube/tooling-fields.ts';
import type { Quantity } from '../../units/parse.ts';
import type { FieldPlace } from '../facts/question.ts';
import { option, type Question, question } from './question.ts';

/** Those of the tooling that have no question of their own place. */
const TOOLING = Object.fromEntries(
	FIELD_NAMES.filter((name) => !['clr', 'clamp', 'follow'].includes(name)).map((name) => [
		`tooling.${name}`,
		TOOLING_FIELDS[name].kind,
	]),
) as Record<Extract<FieldPlace, `tooling.${string}`>, Quantity>;

/** What is read in each field that most jobs leave to the bender or to what is usual, in the order in which they are listed. */
export const FIELDS: Readonly<Record<FieldPlace, Quantity>> = {
	...TOOLING,
	'shape.radius': 'length',
	'tolerance.under': 'angle',
	'tolerance.over': 'angle',
	'tolerance.length': 'length',
	'tolerance.rotation': 'angle',
	'tolerance.shape': 'length',
	'tolerance.direction': 'angle',
	quantity: 'number',
	risk: 'number',
};

export const isField = (place: string): place is FieldPlace => Object.hasOwn(FIELDS, place);

/** The question for such a field. */
export function fieldQuestion(field: string): Question {
	if (!isField(field)) throw new RangeError(`A job file has no field "${field}" that is asked for on its own.`);
	return question({ code: 'field', field }, FIELDS[field], option('leave-out'));
}
