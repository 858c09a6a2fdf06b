import type { QuestionPlace } from './draft.ts';
import { put } from './put.ts';
import { choiceQuestion, type FormQuestion, NONE, option, question } from './question.ts';

/** What the order says besides the shape. */
export const ORDER_QUESTIONS = {
	heat: {
		field: 'tube.heat',
		asks: () => question({ code: 'heat' }, 'text', NONE),
		takesText: (draft, text) => put(draft, 'tube.heat', text || undefined, 'overview'),
	},
	mayOpen: {
		field: 'mayOpen',
		asks: () => choiceQuestion({ code: 'mayOpen' }, [option('may-open', 'yes'), option('never-open', 'no')]),
		takesText: (draft, text) => put(draft, 'mayOpen', text === 'no' ? false : undefined, 'overview'),
	},
} satisfies Partial<Record<QuestionPlace, FormQuestion>>;
