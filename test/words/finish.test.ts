import { expect, test } from 'vitest';
import { finishWords } from '../../src/words/finish.ts';
import { hatJob } from '../helpers/shop/hat.ts';

test.each([
	[17.24, 16.37, 'Bend 3 is over: 17.2°, where 16.4° was wanted.'],
	[15.5, 16.37, 'Bend 3 is short: 15.5°, where 16.4° was wanted.'],
])(
	'a bend made %f where %f was wanted is told without a word of the drawing, which may allow it',
	(made, target, words) => {
		expect(finishWords({ code: 'bend-outside', bend: 3, made, target }, hatJob())).toBe(words);
	},
);
