import { expect, it } from 'vitest';
import { bendOutcomeWords } from '../../src/words/story-bend.ts';

const BEND = { bend: 2, design: 40, target: 39.9, low: 39.4, high: 40.4, measured: true, steps: [] };

// As the screen calls it, and the table of words in src/words/README.md.
it('calls the angle to make wanted, and what the drawing has the drawing', () => {
	const made = { angle: 39.7, sd: 0.1 };
	expect(bendOutcomeWords({ ...BEND, made })).toBe(
		'made 39.7°, give or take 0.1°; wanted 39.9° (39.4 to 40.4), drawing 40°',
	);
	expect(bendOutcomeWords({ ...BEND, made: null })).toBe('not finished; wanted 39.9° (39.4 to 40.4), drawing 40°');
});
