import { FIELD_NAMES, TOOLING_FIELDS } from '../../tube/tooling-fields.ts';
import { capital } from '../../units/format.ts';
import type { Quantity } from '../../units/parse.ts';
import type { Question } from './question.ts';

/** A field that a job file may leave out, asked for on its own. */
interface Field {
	label: string;
	kind: Quantity;
	/** What holds without it, in words. */
	without: string;
	help?: string;
}

/** Those of the tooling that have no question of their own place. */
const TOOLING = Object.fromEntries(
	FIELD_NAMES.filter((name) => !['clr', 'clamp', 'follow'].includes(name)).map((name): [string, Field] => {
		const { says, kind, without, help } = TOOLING_FIELDS[name];
		return [`tooling.${name}`, { label: capital(says), kind, without, ...(help === undefined ? {} : { help }) }];
	}),
);

/** Fields that most jobs leave to the bender or to what is usual, by their place in the file. */
export const FIELDS: Readonly<Record<string, Field>> = {
	...TOOLING,
	'shape.radius': {
		label: 'Center-line radius that the drawing shows',
		kind: 'length',
		without: "the die's",
		help: 'With it the straights say where the sharp corners lie. The corners hold, whatever radius the die makes.',
	},
	'tolerance.under': { label: 'How far under its target a bend may be', kind: 'angle', without: '0.5°' },
	'tolerance.over': { label: 'How far over its target a bend may be', kind: 'angle', without: '0.5°' },
	'tolerance.length': { label: 'How far a length may be off', kind: 'length', without: '1/16 in or 1.5 mm' },
	'tolerance.rotation': { label: 'How far a rotation may be off', kind: 'angle', without: '1°' },
	'tolerance.shape': {
		label: "How far a corner or the far end may be off the drawing's place",
		kind: 'length',
		without: 'four times what a length may be off',
	},
	'tolerance.direction': {
		label: "How far the last straight may point off the drawing's",
		kind: 'angle',
		without: '1°',
	},
	quantity: { label: 'How many of this tube you want', kind: 'number', without: '1' },
	risk: {
		label: 'Part of bends that may come out over',
		kind: 'number',
		without: '0.02',
		help: '0.02 is one bend in fifty.',
	},
};

/** The question for such a field. */
export function fieldQuestion(field: string): Omit<Question, 'title'> {
	const known = FIELDS[field];
	if (known === undefined) throw new RangeError(`A job file has no field "${field}" that is asked for on its own.`);
	const { label, kind, without, help } = known;
	return {
		label,
		kind,
		usual: { label: 'leave it out', value: '' },
		help: `${help === undefined ? '' : `${help} `}Left out: ${without}.`,
	};
}
