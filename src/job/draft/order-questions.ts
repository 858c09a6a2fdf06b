import type { Place } from './draft.ts';
import { put } from './put.ts';
import { type Asked, choice, NONE, question } from './question.ts';

/** What the order says besides the shape. */
export const ORDER_QUESTIONS = {
	heat: {
		title: 'The tube',
		field: 'tube.heat',
		asks: () =>
			question('Heat, lot or certificate number', 'text', {
				usual: NONE,
				help: 'It is kept with every session of this job.',
			}),
		takesText: (draft, text) => put(draft, 'tube.heat', text || undefined, 'overview'),
	},
	mayOpen: {
		title: 'The job',
		field: 'mayOpen',
		asks: () =>
			choice('May a bend be opened again, worked back', [
				{ label: 'yes, where nothing else makes the tube fit', value: 'yes' },
				{ label: 'no: the rule book or the customer forbids it', value: 'no' },
			]),
		takesText: (draft, text) => put(draft, 'mayOpen', text === 'no' ? false : undefined, 'overview'),
	},
} satisfies Partial<Record<Place, Asked>>;
