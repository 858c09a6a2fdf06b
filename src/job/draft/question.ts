import type { Lesson } from '../../springback/history.ts';
import type { Quantity } from '../../units/parse.ts';
import type { Units } from '../../units/units.ts';
import type { Fault } from '../facts/index.ts';
import type { OptionFact, PlainOption, QuestionFact } from '../facts/question.ts';
import type { ToolingLookup } from '../tooling.ts';
import type { Draft, FileValue, JobJson } from './draft.ts';

/** What a job may lean on: the benders and dies that are kept. */
export interface FormShop {
	lookup: ToolingLookup;
	/** `clr`: null where none is kept. */
	dies: readonly { bender: string; die: string; clr: number | null; units: Units }[];
	/** What the kept sessions taught; absent where there are none. */
	lessons?(): readonly Lesson[];
}

/** One of several answers; `value` is what `answer` is given. */
export interface Option {
	is: OptionFact;
	value: string;
}

/** What is asked now. */
export interface Question {
	is: QuestionFact;
	kind: Quantity | 'text' | 'choice';
	options?: readonly Option[];
	/** What most people answer; an empty value leaves the field out. */
	usual?: Option;
}

/** A value in a list that stands for something to be typed. */
export const OWN = 'own';

/** An answer that says all by itself. */
export const option = (code: PlainOption, value = ''): Option => ({ is: { code }, value });

export const NONE: Option = option('none');

/**
 * A draft after an answer, with the place in the file whose faults count against the answer; or the fault that it has by itself.
 * `tried`: the file with what is not whole yet, where the faults of that count.
 */
export type DraftTaken = { draft: Draft; place: string | null; tried?: JobJson } | { fault: Fault };

/** What belongs together: a question asked again leads back to the overview once those of its group are answered. */
type Group = 'material' | 'die' | 'bends' | 'points' | 'check' | 'end' | 'bendDie';

/** Everything about one question of the form but its words: what it asks, and what becomes of its answer. */
export interface FormQuestion {
	/** Where its answer stands in the job file, where that is one place. */
	field?: string;
	groups?: readonly Group[];
	asks(draft: Draft, shop: FormShop): Question;
	/** Takes an option's value, or a text as it was typed. */
	takesText?(draft: Draft, text: string, shop: FormShop): DraftTaken;
	/** Takes a number; undefined: left out. */
	takesNumber?(draft: Draft, value: FileValue | undefined, shop: FormShop): DraftTaken;
}

export function question(is: QuestionFact, kind: Question['kind'], usual?: Option): Question {
	return { is, kind, ...(usual && { usual }) };
}

export function choiceQuestion(is: QuestionFact, options: readonly Option[], usual?: Option): Question {
	return { ...question(is, 'choice', usual), options };
}
