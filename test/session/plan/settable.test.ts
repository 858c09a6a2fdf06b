import { describe, expect, it } from 'vitest';
import type { CorrectionInput } from '../../../src/fit/correct.ts';
import { settable, stepsOf } from '../../../src/session/plan/settable.ts';
import { shapeEnd } from '../../../src/tube/frames.ts';
import type { Shape } from '../../../src/tube/shape.ts';
import { bendAndSkip } from '../../helpers/session/bend-to.ts';
import { begin, give } from '../../helpers/session/session-run.ts';
import { hatJob } from '../../helpers/shop/hat.ts';
import { plainJob } from '../../helpers/shop/plain-job.ts';

const steps = stepsOf(plainJob().tooling, { rotation: 1 });
const by = { stretch: 0, markOffset: 0.25 };
const marking = { trimStart: 1, by: [by, by] };

/** One bend made, the last still to come: marks at 1 + 12 - .25 and, an arc of 6 x 30 degrees and a leg further, at 24.891 in. */
const design: Shape = {
	straights: [12, 9, 15],
	bends: [
		{ angle: 30, rotation: 0, radius: 6 },
		{ angle: 40, rotation: 90, radius: 6 },
	],
};
const MARK = 1 + 12 + Math.PI + 9 - 0.25;
const now = [
	{ fromStart: 12.75, angle: 30, rotation: 0 },
	{ fromStart: MARK, angle: 40, rotation: 90 },
];

const input = (least = 0, greatest = 40): CorrectionInput => ({
	shape: design,
	made: 1,
	nominal: design,
	goal: shapeEnd(design),
	measures: [],
	tolerance: { position: 1 / 32, direction: 0.25 },
	dear: { straight: 0.4, angle: 2, rotation: 4 },
	bounds: { straights: design.straights.map(() => [least, greatest]), angles: design.bends.map(() => [1, 179]) },
});

/** What the last bend is set to when the correction would have it changed by so much. */
function set(by: { straight?: number; angle?: number; rotation?: number }, least?: number, greatest?: number) {
	const found: Shape = {
		straights: [12, 9 + (by.straight ?? 0), 15],
		bends: [design.bends[0]!, { angle: 40 + (by.angle ?? 0), rotation: 90 + (by.rotation ?? 0), radius: 6 }],
	};
	return settable(input(least, greatest), found, now, steps, marking)[1]!;
}

describe('numbers that hands can set', () => {
	it('go by half a division of the tape, a tenth of a dial step and a tenth of what a plane may be off by', () => {
		expect(steps).toEqual({ tape: 1 / 16, angle: expect.closeTo(0.05, 12), rotation: expect.closeTo(0.1, 12) });
	});

	it('stay as they were where less would change', () => {
		const kept = set({ straight: 0.031, angle: -0.049, rotation: 0.09 });
		expect(kept).toEqual({ fromStart: expect.closeTo(MARK, 12), angle: 40, rotation: 90 });
	});

	it('change where as much would change or more: the mark to the nearest division, the others as wanted', () => {
		const changed = set({ straight: 0.033, angle: -0.051, rotation: 0.11 });
		// 24.8916 + .033 lies nearer to 24 15/16 than to 24 7/8.
		expect(changed).toEqual({
			fromStart: 24.9375,
			angle: expect.closeTo(39.949, 9),
			rotation: expect.closeTo(90.11, 9),
		});
		expect(set({ straight: -0.06 }).fromStart).toBeCloseTo(24.8125, 12);
	});

	it('change each by itself', () => {
		expect(set({ angle: 2 })).toEqual({ fromStart: expect.closeTo(MARK, 12), angle: 42, rotation: 90 });
		expect(set({ rotation: -3 })).toEqual({ fromStart: expect.closeTo(MARK, 12), angle: 40, rotation: 87 });
	});

	it('go the other way round where that is nearer: 179.95 and -179.98 are .07 apart', () => {
		const turned = (rotation: number): Shape => ({
			...design,
			bends: [design.bends[0]!, { ...design.bends[1]!, rotation }],
		});
		const was = [now[0]!, { ...now[1]!, rotation: 179.95 }];
		expect(settable(input(), turned(-179.98), was, steps, marking)[1]!.rotation).toBe(179.95);
		expect(settable(input(), turned(-179.85), was, steps, marking)[1]!.rotation).toBe(-179.85);
	});

	it('keep a mark within the limits: to the division inside where the nearest one lies outside', () => {
		// Wanted 24.9416, nearest 24 15/16; a leg of 9.05 or more allows marks from 24.9416 on, so 25.
		expect(set({ straight: 0.05 }, 9.05, 40).fromStart).toBeCloseTo(25, 12);
		// Wanted 24.9706, nearest 25; a leg of 9.1 at most allows marks up to 24.9916, so 24 15/16.
		expect(set({ straight: 0.079 }, 0, 9.1).fromStart).toBeCloseTo(24.9375, 12);
	});

	it('move a mark that lies outside the limits, however little, and as wanted where no division lies inside', () => {
		// Wanted 24.9206; a leg of 9.02 or more allows marks from 24.9116 on.
		expect(set({ straight: 0.029 }, 9.02, 40).fromStart).toBeCloseTo(24.9375, 12);
		// Marks from 24.9266 to 24.9316 alone.
		expect(set({ straight: 0.037 }, 9.035, 9.04).fromStart).toBeCloseTo(MARK + 0.037, 9);
	});

	it('leave a mark alone where a tape shows the same one', () => {
		// Wanted 24.9216, nearest 24 15/16; a leg of 9.04 at most leaves 24 7/8, which is what 24.8916 is marked at.
		expect(set({ straight: 0.035 }, 0, 9.04).fromStart).toBeCloseTo(MARK, 12);
	});
});

describe('a correction in a session', () => {
	const corrected = [16, 16.3, 16.6, 17.4, 17.8].map((angle) => {
		const run = give(
			bendAndSkip(
				begin(hatJob({ trim: { start: 0, end: 2 }, tooling: { ...hatJob().tooling, growth: 1, tape: 1 / 8 } })),
				angle,
			),
			{
				do: 'accept',
			},
		);
		return { run, note: run.state.plan.note! };
	});

	it('changes marks to divisions only, and nothing by less than counts', () => {
		let changed = 0;
		for (const { note } of corrected) {
			for (const { fromStart, angle, rotation, was } of note.remaining) {
				if (fromStart !== was.fromStart) {
					changed++;
					expect(fromStart * 8).toBeCloseTo(Math.round(fromStart * 8), 9);
					expect(Math.abs(fromStart - was.fromStart)).toBeGreaterThanOrEqual(1 / 16 - 1e-9);
				}
				for (const [by, least] of [
					[angle - was.angle, 0.1],
					[rotation - was.rotation, 0.2],
				]) {
					if (Math.abs(by!) > 1e-9) expect(Math.abs(by!)).toBeGreaterThanOrEqual(least!);
				}
			}
		}
		expect(changed).toBeGreaterThan(3);
	});

	it('lets the rest of the tube take up what the rounding leaves', () => {
		for (const { note, run } of corrected) {
			const { length } = run.state.start.job.tolerance;
			expect(note.predicted.endOffset).toBeLessThan(length);
			expect(note.predicted.endOffset).toBeLessThan(note.without.endOffset);
			for (const [i, { value }] of note.predicted.checks.entries()) {
				const { check, design: wanted } = run.state.design.checks[i]!;
				expect(Math.abs(value - wanted)).toBeLessThanOrEqual(check.tolerance);
			}
		}
	});
});
