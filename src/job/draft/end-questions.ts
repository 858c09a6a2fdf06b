import type { QuestionPlace } from './draft.ts';
import { put } from './put.ts';
import { type FormQuestion, NONE, question } from './question.ts';

/** What is cut off both ends after bending. */
export const END_QUESTIONS = {
	trimStart: {
		field: 'trim.start',
		asks: () => question({ code: 'trimStart' }, 'length', NONE),
		takesNumber: (draft, value) => put(draft, 'trim.start', value, 'trimEnd'),
	},
	trimEnd: {
		field: 'trim.end',
		asks: () => question({ code: 'trimEnd' }, 'length', NONE),
		takesNumber: (draft, value) => {
			const taken = put(draft, 'trim.end', value, 'overview');
			return 'draft' in taken ? { ...taken, draft: { ...taken.draft, whole: true } } : taken;
		},
	},
} satisfies Partial<Record<QuestionPlace, FormQuestion>>;
