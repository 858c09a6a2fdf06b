import { describe, expect, it } from 'vitest';
import type { RefusedNote } from '../../../src/session/protocol/notes.ts';
import { slipOf } from '../../../src/session/reading/slip.ts';
import { slipsIn, WORLDS } from '../../bench/slips.ts';
import { sample } from '../../helpers/sample-size.ts';
import { begin, give, giveAll, open } from '../../helpers/session/session-run.ts';
import { whyOf } from '../../helpers/session/why.ts';
import { byBends, plainJob } from '../../helpers/shop/plain-job.ts';

describe('slips in simulated shops, whole sessions', () => {
	it.each(Object.entries(WORLDS).slice(0, sample(1, 2)))(
		'%s: 98 in 100 are asked about, and at most 1 in 100 right readings',
		(_, world) => {
			const { slips, asked, right, questioned } = slipsIn(world, 8, 52_900_000);
			expect(slips).toBeGreaterThan(150);
			expect(asked / slips).toBeGreaterThan(0.98);
			expect(questioned / right).toBeLessThan(0.01);
		},
		60_000,
	);
});

describe('a slip by its name', () => {
	const near = (value: number, sd = 0.05) => ({ value, sd });
	it.each([
		[54.2, near(53.2), 'inch', 53.2],
		[41.2, near(53.2), 'foot', 53.2],
		[43.2, near(53.2), 'ten', 53.2],
		[1351.28, near(53.2), 'unit', 53.2],
		[532, near(53.2), 'moved', 53.2],
		[35.2, near(53.2), 'swapped', 53.2],
		[553.2, near(53.2), 'doubled', 53.2],
	] as const)('%d for 53.2 is told as %s', (value, expected, slip, would) => {
		expect(slipOf(value, expected, 'in')).toEqual({ slip, would: expect.closeTo(would, 6) });
	});

	it('is none where nothing common explains the number', () => {
		expect(slipOf(57.9, near(53.2), 'in')).toBeNull();
	});
});

describe('a piece an inch too long or short', () => {
	it.each([1, -1])('is asked about: %d', (by) => {
		const run = begin(plainJob({ tooling: { growth: 1 } }));
		const { fromStart, fromFarEnd } = open(run, 'set').mark;
		const doubted = give(run, { ready: true, length: fromStart + fromFarEnd + by });
		expect(open(doubted, 'confirm')).toMatchObject({ of: 'length' });
		expect(open(doubted, 'confirm').reason.map(({ code }) => code)).toEqual(['length-off', 'slip']);
	});

	it('is taken at once where it is off by a division of the tape', () => {
		const run = begin(plainJob({ tooling: { growth: 1 } }));
		const { fromStart, fromFarEnd } = open(run, 'set').mark;
		expect(open(give(run, { ready: true, length: fromStart + fromFarEnd + 1 / 16 }), 'pull').bend).toBe(1);
	});
});

describe('a number that the dial rules out', () => {
	it.each([
		[155, 'Is it 15.5°? Then the point stands in the wrong place.'],
		[164.5, 'Was it read on the inside? Then it is 15.5°.'],
	])('%d is told with what it most likely was', (angle, words) => {
		const run = begin(plainJob({ shape: byBends([[20, 17, 0]], 20), tooling: { growth: 1 } }));
		const refused = giveAll(run, { ready: true }, { loaded: 18.5 }, { angle }).outputs[0] as RefusedNote;
		expect(whyOf(refused)).toBe(
			`The dial was held at 18.5° (line 2 of the log), so bend 1 cannot measure ${angle}°. ${words} Measure again, or correct line 2 if the tube was pulled further.`,
		);
	});
});

describe('a dial that is not at its zero', () => {
	it('is not told to be a tenth of what it shows, which no dial can be read to', () => {
		const run = give(begin(plainJob({ tooling: { growth: 1 } })), { ready: true, pointer: 1.5 });
		expect(open(run, 'confirm').reason.map(({ code }) => code)).toEqual(['not-expected']);
	});
});
