import { BEND_DIE_QUESTIONS } from './bend-die-questions.ts';
import { BEND_QUESTIONS } from './bend-questions.ts';
import { CHECK_QUESTIONS } from './check-answers.ts';
import { COPE_QUESTIONS } from './cope-questions.ts';
import type { Draft, QuestionPlace } from './draft.ts';
import { END_QUESTIONS } from './end-questions.ts';
import { fieldQuestion } from './field-questions.ts';
import { FURTHER_DIE_QUESTIONS } from './further-die-questions.ts';
import { ORDER_QUESTIONS } from './order-questions.ts';
import { POINT_QUESTIONS } from './point-questions.ts';
import { put } from './put.ts';
import type { FormQuestion, FormShop, Question } from './question.ts';
import { TOOLING_QUESTIONS } from './tooling-questions.ts';
import { TUBE_QUESTIONS } from './tube-questions.ts';

/** Every question of the form, by its place. */
export const QUESTIONS: Readonly<Record<Exclude<QuestionPlace, 'overview'>, FormQuestion>> = {
	...TUBE_QUESTIONS,
	...TOOLING_QUESTIONS,
	...BEND_QUESTIONS,
	...BEND_DIE_QUESTIONS,
	...FURTHER_DIE_QUESTIONS,
	...POINT_QUESTIONS,
	...END_QUESTIONS,
	...COPE_QUESTIONS,
	...ORDER_QUESTIONS,
	...CHECK_QUESTIONS,
	field: {
		asks: ({ field }) => fieldQuestion(field),
		takesNumber: (draft, value) => put(draft, draft.field, value, 'overview'),
	},
};

/** The question that is open. In the overview none is. */
export function openQuestion({ at }: Draft): FormQuestion {
	if (at === 'overview') throw new RangeError('Nothing is asked in the overview.');
	return QUESTIONS[at];
}

/** What is asked of a draft now. */
export function questionOf(draft: Draft, shop: FormShop): Question {
	return openQuestion(draft).asks(draft, shop);
}

/** Where in the file the answer to a question stands that has one place of its own. */
export function fileFieldOf(at: QuestionPlace): string | undefined {
	return at === 'overview' ? undefined : QUESTIONS[at].field;
}

/** The question whose answer stands there, or around it. */
export function placeOfField(at: string): QuestionPlace | undefined {
	const found = Object.entries(QUESTIONS).find(([, { field }]) => field === at || at.startsWith(`${field}.`));
	return found?.[0] as QuestionPlace | undefined;
}
