import { describe, expect, it } from 'vitest';
import { expectCheck } from '../../src/session/reading/check-reading.ts';
import { checkWords } from '../../src/words/checks.ts';
import { bendAndSkip, bendTo } from '../helpers/session/bend-to.ts';
import { begin, give, open } from '../helpers/session/session-run.ts';
import { byBends, plainJob } from '../helpers/shop/plain-job.ts';

/** A U of two quarter bends: 6 + 20 + 6 from leg to leg, center to center. */
const job = plainJob({
	shape: byBends(
		[
			[20, 90, 0],
			[20, 90, 0],
		],
		18,
	),
	trim: { start: 1, end: 2 },
	tooling: { growth: 1 },
	checks: [
		{ name: 'legs', kind: 'width', from: 1, to: { straight: 3 }, surface: 'outside', tolerance: 1 / 8 },
		{ name: 'depth', kind: 'overall', axis: 'x', tolerance: 1 / 8 },
	],
});

describe('a width and a size over all', () => {
	it('are read with the trim on, as far as it stands out', () => {
		const { state } = begin(job);
		expect(state.design.checks.map(({ design, after }) => [design, after])).toEqual([
			[expect.closeTo(33.5, 9), 2],
			// The longer leg, the bend's radius and half the tube.
			[expect.closeTo(20 + 6 + 0.75, 9), 2],
		]);
		expect(expectCheck(state, 'legs').value).toBeCloseTo(33.5, 6);
		// Leg 1 has 1 in of trim on it, leg 3 two; both ends stand at 21 and 20 in from the bends.
		expect(expectCheck(state, 'depth').value).toBeCloseTo(21 + 6 + 0.75, 6);
	});

	it('teach the angles that they depend on: legs that read close together are bent too far', () => {
		const made = (off: number) => {
			let run = bendTo(give(bendAndSkip(begin(job), 90), { do: 'accept' }), 90);
			const ask = open(run, 'check');
			expect(ask).toMatchObject({ name: 'legs', kind: 'width', design: expect.closeTo(33.5, 9) });
			run = give(run, { reading: ask.expect.value + off });
			return run.state.bends.map(({ made: bend }) => bend?.angle ?? 0);
		};
		expect(made(-0.1)[0]!).toBeGreaterThan(made(0.1)[0]! + 0.05);
	});

	it('cannot be read as nothing', () => {
		const run = give(bendTo(give(bendAndSkip(begin(job), 90), { do: 'accept' }), 90), { skip: true });
		expect(open(run, 'check')).toMatchObject({ name: 'depth', includes: expect.closeTo(1, 1) });
		const [refused] = give(run, { reading: 0 }).outputs;
		expect(refused).toMatchObject({ note: 'refused', code: 'not-possible' });
	});

	it('are said in words', () => {
		expect(job.checks.map(checkWords)).toEqual([
			'Straight 1 and the start of straight 3, over the outsides',
			'Size over all, outside to outside, along straight 1',
		]);
	});
});
