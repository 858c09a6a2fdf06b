import { TOOLING_FIELDS } from '../../tube/tooling-fields.ts';
import { capital } from '../../units/format.ts';
import { type Place, unitsOf } from './draft.ts';
import { put } from './put.ts';
import { type Asked, choice, NONE, OWN, question } from './question.ts';

/** The bender and the die, by their names or by what they are. */
export const TOOLING_QUESTIONS = {
	die: {
		title: 'Bender and die',
		groups: ['die'],
		asks: (_, { dies }) =>
			choice('Bender and die', [
				...dies.map(({ bender, die, says }) => ({
					label: `${bender}, die ${die}${says === '' ? '' : ` (${says})`}`,
					value: JSON.stringify([bender, die]),
				})),
				{ label: 'another: by its radius', value: OWN },
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
		title: 'Bender and die',
		field: 'tooling.bender',
		groups: ['die'],
		asks: () =>
			question('What the bender is called', 'text', {
				usual: { label: 'shop', value: '' },
				help: 'Springback is learned under the names of bender and die. Enter alone: shop.',
			}),
		takesText: (draft, text) => put(draft, 'tooling.bender', text || undefined, 'dieName'),
	},
	dieName: {
		title: 'Bender and die',
		field: 'tooling.die',
		groups: ['die'],
		asks: () =>
			question('What the die is called', 'text', {
				usual: { label: 'by its radius', value: '' },
				help: 'Enter alone: named by its radius and the diameter.',
			}),
		takesText: (draft, text) => put(draft, 'tooling.die', text || undefined, 'clr'),
	},
	clr: {
		title: 'Bender and die',
		field: 'tooling.clr',
		groups: ['die'],
		asks: () => question(capital(TOOLING_FIELDS.clr.says), 'length'),
		takesNumber: (draft, value) => put(draft, 'tooling.clr', value, 'clamp'),
	},
	clamp: {
		title: 'Bender and die',
		field: 'tooling.clamp',
		asks: () => question(capital(TOOLING_FIELDS.clamp.says), 'length', { usual: NONE, help: 'From the mark back.' }),
		takesNumber: (draft, value) => put(draft, 'tooling.clamp', value, 'follow'),
	},
	follow: {
		title: 'Bender and die',
		field: 'tooling.follow',
		asks: () =>
			question(capital(TOOLING_FIELDS.follow.says), 'length', {
				usual: NONE,
				help: 'What must still lie behind a bend while it is pulled.',
			}),
		takesNumber: (draft, value) => put(draft, 'tooling.follow', value, 'shape'),
	},
} satisfies Partial<Record<Place, Asked>>;
