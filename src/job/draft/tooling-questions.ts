import { type QuestionPlace, unitsOf } from './draft.ts';
import { put } from './put.ts';
import { choiceQuestion, type FormQuestion, NONE, type Option, OWN, option, question } from './question.ts';

/** The bender and the die, by their names or by what they are. */
export const TOOLING_QUESTIONS = {
	die: {
		groups: ['die'],
		asks: (_, { dies }) =>
			choiceQuestion({ code: 'die' }, [
				...dies.map(
					(kept): Option => ({
						is: { code: 'die', ...kept },
						value: JSON.stringify([kept.bender, kept.die]),
					}),
				),
				option('other-die', OWN),
			]),
		takesText(draft, text, { lookup }) {
			if (text === OWN) return put(draft, 'tooling', undefined, 'bender');
			const [bender, die] = JSON.parse(text) as [string, string];
			const known = lookup(bender, die, unitsOf(draft))?.clr !== undefined;
			const taken = put(draft, 'tooling', { bender, die }, known ? 'shape' : 'clr');
			return 'draft' in taken ? { ...taken, place: 'tooling.clr' } : taken;
		},
	},
	bender: {
		field: 'tooling.bender',
		groups: ['die'],
		asks: () => question({ code: 'bender' }, 'text', option('shop-bender')),
		takesText: (draft, text) => put(draft, 'tooling.bender', text || undefined, 'dieName'),
	},
	dieName: {
		field: 'tooling.die',
		groups: ['die'],
		asks: () => question({ code: 'dieName' }, 'text', option('by-radius')),
		takesText: (draft, text) => put(draft, 'tooling.die', text || undefined, 'clr'),
	},
	clr: {
		field: 'tooling.clr',
		groups: ['die'],
		asks: () => question({ code: 'clr' }, 'length'),
		takesNumber: (draft, value) => put(draft, 'tooling.clr', value, 'clamp'),
	},
	clamp: {
		field: 'tooling.clamp',
		asks: () => question({ code: 'clamp' }, 'length', NONE),
		takesNumber: (draft, value) => put(draft, 'tooling.clamp', value, 'follow'),
	},
	follow: {
		field: 'tooling.follow',
		asks: () => question({ code: 'follow' }, 'length', NONE),
		takesNumber: (draft, value) => put(draft, 'tooling.follow', value, 'shape'),
	},
} satisfies Partial<Record<QuestionPlace, FormQuestion>>;
