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

describe('what is missed', () => {
	const missed = {
		endOffset: 0.0001,
		endAngle: 0.01,
		corner: { bend: 2, off: 1 + 1 / 16, tolerance: 0.5 },
		checks: [],
	};

	it('leaves out a far end that is off by less than anybody can see', () => {
		const told = (parts: object) => decideWords({ code: 'still-missed', ...missed, ...parts }, plainJob());
		expect(told({})).toBe('The corner of bend 2 is 1 1/16 in off (1/2 in allowed).');
		expect(told({ endOffset: 0.25 })).toMatch(/^The far end is 1\/4 in from its place, the corner/);
		expect(told({ endAngle: 0.9 })).toMatch(/^The far end is 0\.9° from its direction, the corner/);
		expect(told({ corner: undefined })).toBe('The far end is where it belongs.');
	});
});
