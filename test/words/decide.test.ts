import { describe, expect, it } from 'vitest';
import { decideWords } from '../../src/words/decide.ts';
import { plainJob } from '../helpers/shop/plain-job.ts';

describe('a bend that is neither over nor short', () => {
	it('is called inside its tolerance only where that is likelier than not', () => {
		expect(decideWords({ code: 'bend-inside', chance: 0.93 }, plainJob())).toBe(
			'Inside its tolerance (chance about 93 in 100).',
		);
		expect(decideWords({ code: 'bend-inside', chance: 0.26 }, plainJob())).toBe(
			'Perhaps inside its tolerance (chance about 26 in 100): measure again to know better.',
		);
	});
});
