import { describe, expect, test } from 'vitest';
import type { BendStep } from '../../src/review/story.ts';
import { bendStepWords } from '../../src/words/story-bend.ts';
import { TO_FIRST_MEASURE, told } from '../helpers/session/told.ts';
import { hatJob } from '../helpers/shop/hat.ts';

const lineOf = ({ entry, void: gone, step }: BendStep) => `${entry} ${step}${gone ? ' void' : ''}`;

describe('the story of a bend', () => {
	test('has what was taken back, in its place', () => {
		const { story } = told({ ready: true }, { loaded: 19 }, { undo: true }, { loaded: 18.5, released: 15 });
		expect(story.bends[0]!.steps.map(lineOf)).toEqual(['1 set', '2 pull void', '4 pull']);
		const pulls = story.bends[0]!.steps.flatMap((each) => (each.step === 'pull' ? [each.pull] : []));
		expect(pulls.map(({ loaded, released }) => [loaded, released])).toEqual([
			[19, null],
			[18.5, 15],
		]);
	});

	test('has a reading that was taken back, which stands in no pull', () => {
		const { story } = told(...TO_FIRST_MEASURE, { angles: [13, 13.1] }, { undo: true }, { angles: [13.2, 13.3] });
		expect(story.bends[0]!.steps.map(lineOf)).toContain('3 read void');
		const pull = story.bends[0]!.steps.find((each) => each.step === 'pull');
		expect(pull?.step === 'pull' && pull.pull.measured).toEqual([13.2, 13.3]);
		expect(story.bends[0]!.measured).toBe(true);
	});

	test('has a number that was set aside, and the one that counts', () => {
		const { story } = told(...TO_FIRST_MEASURE, { angles: [13, 16] }, { reading: 13.1 });
		const aside = story.bends[0]!.steps.find((each) => each.step === 'aside');
		expect(aside).toMatchObject({ entry: 4, values: [16] });
		expect(bendStepWords(aside!, hatJob())).toMatch(/^set aside: angle finder 16°; 13(\.\d+)?° counts$/);
	});

	test('has a reading that was corrected, as it was and as it is', () => {
		const { story } = told(...TO_FIRST_MEASURE, { angles: [13.2, 13.2] }, { amend: { entry: 3, reading: 13.5 } });
		const amended = story.bends[0]!.steps.find((each) => each.step === 'amended');
		expect(amended).toMatchObject({ line: 3, was: 13.2, reading: { of: 'angle', value: 13.5 } });
		const pull = story.bends[0]!.steps.find((each) => each.step === 'pull');
		expect(pull?.step === 'pull' && pull.pull.measured).toContain(13.5);
	});

	test('of one that nobody measured says so', () => {
		const { story } = told(...TO_FIRST_MEASURE, { skip: true });
		expect(story.bends[0]).toMatchObject({ measured: false, made: null, design: 17 });
	});
});

describe('the corrections of a session', () => {
	const taken = [...TO_FIRST_MEASURE, { angles: [15, 15] }, { do: 'accept' }] as const;
	test('are those that were told, with the bend they came after and the numbers before', () => {
		const { states, story } = told(...taken);
		const [first] = story.corrections;
		expect(first).toMatchObject({ plan: 'new', void: false, correction: { after: { bend: 1 } } });
		const before = states.at(first!.entry - 1)!.plan.current;
		const after = states.at(first!.entry)!.plan.current;
		expect(first!.correction.remaining.map(({ was }) => was)).toEqual(before.slice(1));
		expect(first!.correction.remaining.map(({ fromStart, angle }) => [fromStart, angle])).toEqual(
			after.slice(1).map(({ fromStart, angle }) => [fromStart, angle]),
		);
	});

	test('tell when the old numbers were kept, and when they were taken back', () => {
		expect(told(...taken, { plan: 'old' }).story.corrections.map(({ plan }) => plan)).toEqual(['old']);
		const back = told(...taken, { undo: true }).story.corrections;
		expect(back[0]).toMatchObject({ void: true });
	});
});

test('notes and the reason of a scrapped tube stand as they were written', () => {
	const { story } = told({ ready: true, note: 'tight clamp' }, { scrap: 'kinked' });
	expect(story.notes.map(({ text }) => text)).toEqual(['tight clamp']);
	expect(story.scrapped).toBe('kinked');
});
