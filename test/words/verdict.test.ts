import { expect, test } from 'vitest';
import { outsideWords, verdictWords } from '../../src/words/verdict.ts';
import { plainJob } from '../helpers/shop/plain-job.ts';

// From five in ten on a tube may fit: one that does not is never said to have five.
test.each([
	[0.49, 'The tube does not fit: chance to fit less than 5 in 10.'],
	[0.44, 'The tube does not fit: chance to fit about 4 in 10.'],
	[0.5, 'The tube may fit: about 5 in 10.'],
])('%d is said so', (chance, words) => {
	expect(verdictWords(false, chance)).toBe(words);
});

test('bends outside the drawing are another sentence than whether the tube fits', () => {
	const even = plainJob();
	expect(outsideWords([], even)).toBe("Every bend is inside the drawing's ±0.5°.");
	expect(outsideWords([3], even)).toBe("Bend 3 is outside the drawing's ±0.5°.");
	expect(outsideWords([1, 3, 4], plainJob({ tolerance: { over: 0.25 } }))).toBe(
		"Bends 1, 3 and 4 are outside the drawing's -0.5° to +0.25°.",
	);
});
