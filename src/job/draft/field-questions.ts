import type { Question } from './questions.ts';

/** A field that a job file may leave out, asked for on its own. */
interface Field {
	label: string;
	kind: 'length' | 'angle' | 'number';
	/** What holds without it, in words. */
	without: string;
	help?: string;
}

/** Fields that most jobs leave to the bender or to what is usual, by their place in the file. */
export const FIELDS: Readonly<Record<string, Field>> = {
	'tooling.growth': {
		label: "Radius of the finished bend over the die's",
		kind: 'number',
		without: 'as the die has it, else 1',
		help: 'A test piece tells it.',
	},
	'tooling.stretch': {
		label: 'Part by which an arc comes out longer',
		kind: 'number',
		without: 'as the die has it, else 0',
		help: '0.004 is 0.4 %. A test piece tells it.',
	},
	'tooling.markOffset': {
		label: "How far past the die's index line a bend begins",
		kind: 'length',
		without: 'as the die has it, else 0',
		help: 'A test piece tells it.',
	},
	'tooling.maxAngle': { label: 'Largest dial angle', kind: 'angle', without: 'as the bender has it, else 180' },
	'tooling.dialStep': {
		label: 'Smallest division of the dial',
		kind: 'angle',
		without: 'as the bender has it, else 0.5',
	},
	'tooling.tape': {
		label: 'Division of the tape',
		kind: 'length',
		without: 'as the bender has it, else 1/16 in or 1 mm',
	},
	'tooling.floor': {
		label: "Height of the die's plane above the floor",
		kind: 'length',
		without: 'as the bender has it, else not checked',
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
