import { expect, test } from 'vitest';
import { verdictWords } from '../../src/words/verdict.ts';

// From five in ten on a tube may fit: one that does not is never said to have five.
test.each([
	[0.49, 'The tube does not fit: chance to fit less than 5 in 10.'],
	[0.44, 'The tube does not fit: chance to fit about 4 in 10.'],
	[0.5, 'The tube may fit: about 5 in 10.'],
])('%d is said so', (chance, words) => {
	expect(verdictWords(false, chance)).toBe(words);
});
