import { expect, it } from 'vitest';
import { newDraft } from '../../../src/job/draft/draft.ts';
import type { FormShop } from '../../../src/job/draft/question.ts';
import { QUESTIONS } from '../../../src/job/draft/questions.ts';

const shop: FormShop = { lookup: () => undefined, dies: [] };
/** Enough of a check, a field and a die's figure in hand for every question to be asked. */
const draft = {
	...newDraft(),
	field: 'risk',
	part: { check: { kind: 'drop' as const, values: [] }, die: 'heel', figure: 'clamp' as const },
};

it.each(Object.entries(QUESTIONS))('%s takes an answer of the kind that it asks for, and no other', (_, asked) => {
	const { kind } = asked.asks(draft, shop);
	const takesText = kind === 'choice' || kind === 'text';
	expect([asked.takesText !== undefined, asked.takesNumber !== undefined]).toEqual([takesText, !takesText]);
});
