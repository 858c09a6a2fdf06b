import { describe, expect, test } from 'vitest';
import { taughtBy } from '../../src/review/taught.ts';
import { lessonOf } from '../../src/session/estimate/lesson-of-session.ts';
import { learnedPrior } from '../../src/session/log/start.ts';
import { firstStops } from '../../src/session/plan/first-stops.ts';
import { nextTimeWords, showedWords } from '../../src/words/taught.ts';
import { begin, give, open, type Run } from '../helpers/session/session-run.ts';
import { TO_FIRST_MEASURE, told } from '../helpers/session/told.ts';
import { hatJob } from '../helpers/shop/hat.ts';

const taught = (...given: Parameters<typeof told>) => taughtBy(told(...given).story.state);

describe('what a session taught', () => {
	test('is what its own pulls showed beside what was believed, and where the next tube would stop', () => {
		const { state: bent } = told(...TO_FIRST_MEASURE, { angles: [11, 11] }).story;
		const state = { ...bent, start: { ...bent.start, learn: true } };
		const { springback, miss, stops } = taughtBy(state);
		expect(springback!.shown).toBeGreaterThan(springback!.believed);
		const { stop, expect: expected } = open(give(begin(hatJob()), { ready: true }), 'pull');
		expect(miss).toBeCloseTo(11 - expected.angle, 9);
		expect(stops[0]).toMatchObject({ bend: 1, was: stop });
		// A session that begins with what this one taught asks for the same, give or take a division of the dial.
		const next = firstStops(hatJob(), state.design.shape, learnedPrior(hatJob(), [lessonOf(state)!])).stops[0]!.stop;
		expect(Math.abs(stops[0]!.now - next)).toBeLessThanOrEqual(0.5);
		expect(stops[0]!.now).toBeGreaterThan(stop);
	});

	test('is nothing of springback where no pull was measured', () => {
		const none = taught(...TO_FIRST_MEASURE, { skip: true });
		expect(none).toMatchObject({ springback: null, miss: null });
		expect(showedWords({ ...none, learns: true })).toEqual(['No pull was measured: it showed nothing of springback.']);
	});

	test('has each bend that was held past its stop, by how much', () => {
		const past = taught({ ready: true }, (run: Run) => ({ loaded: open(run, 'pull').stop + 3 }), { keep: true });
		expect(past.past).toEqual([{ bend: 1, by: 3 }]);
		expect(nextTimeWords(past, null)).toEqual(['Come to the stop slower: bend 1 was held 3° past it.']);
		expect(taught(...TO_FIRST_MEASURE).past).toEqual([]);
	});

	test('has each bend that only the dial told of', () => {
		const pull = (run: Run) => ({ loaded: open(run, 'pull').stop + 2 });
		const bent = taught({ ready: true }, pull, { keep: true }, { skip: true }, { do: 'accept' });
		expect(bent.unmeasured).toEqual([1]);
		expect(nextTimeWords(bent, null)).toContain('Put the angle finder on bend 1: only the dial told what it is.');
	});
});

describe('words of it', () => {
	const NOTHING = { learns: true, springback: null, miss: null, stops: [], past: [], unmeasured: [], unread: [] };
	test.each([
		[0.02, 'First pulls landed where they were expected.'],
		[-0.4, 'First pulls landed 0.4° short of what was expected, on average.'],
		[1.2, 'First pulls landed 1.2° past what was expected, on average.'],
	])('a miss of %d', (miss, says) => {
		expect(showedWords({ ...NOTHING, miss })).toContain(says);
	});

	test('that nothing is to be done otherwise, or what is', () => {
		expect(nextTimeWords(NOTHING, null)).toEqual(['Nothing to do otherwise.']);
		expect(nextTimeWords({ ...NOTHING, unread: ['crown'] }, 'Measure the leg.')).toEqual([
			'Read check crown: it was left out.',
			'Measure the leg.',
		]);
	});

	test('that a session which is not to teach moves no stop', () => {
		const words = showedWords({ ...NOTHING, learns: false, springback: { shown: 5, believed: 4 } });
		expect(words).toEqual([
			'Springback at 45°: 5° by this tube, 4° was expected.',
			'Later tubes do not learn from this session.',
		]);
	});
});
