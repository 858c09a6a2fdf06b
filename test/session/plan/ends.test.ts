import { describe, expect, it } from 'vitest';
import { jobEnds } from '../../../src/session/plan/ends.ts';
import { fromFar } from '../../../src/tube/from-far.ts';
import type { Job } from '../../../src/tube/job.ts';
import { mirrored } from '../../../src/tube/mirror.ts';
import { hatJob } from '../../helpers/shop/hat.ts';
import { byBends, plainJob } from '../../helpers/shop/plain-job.ts';

const endsOf = (job: Job) => jobEnds(job, { value: 1, from: 'job' });

describe('the end to begin at', () => {
	it('is the one whose clamp and follow find room', () => {
		// The first straight is too short for the clamp; begun at the far end it is the last, where only 1 in must lie behind.
		const shape = byBends(
			[
				[3, 40, 0],
				[12, 30, 90],
			],
			14,
		);
		const ends = endsOf(plainJob({ shape, tooling: { clamp: 4, follow: 1 } }));
		expect(ends.start).toMatchObject({ possible: false, hindrances: [{ code: 'short-clamp' }] });
		expect(ends.far).toMatchObject({ possible: true, hindrances: [] });
		expect(ends.better).toBe('far');
		// With little tube behind the last bend it is the other way about.
		const behind = endsOf(fromFar(plainJob({ shape, tooling: { clamp: 2, follow: 3.5 } })));
		expect(behind.far.hindrances.map(({ code }) => code)).toEqual(['short-follow']);
		expect(behind.better).toBe('start');
	});

	it('is told of two hundred bends in space, where rounding swallows more than of a few', () => {
		const bends = Array.from({ length: 200 }, (_, i): [number, number, number] => [10, 30, i % 2 === 0 ? -80 : 90]);
		const { start, far } = endsOf(plainJob({ shape: byBends(bends, 10) }));
		expect([start.left, far.left].every((left) => Number.isFinite(left) && left > 0)).toBe(true);
	});

	it('is not the one that swings into the floor', () => {
		// The elbow with its long leg comes first from the start end, and hangs when the small bend follows.
		const shape = byBends(
			[
				[30, 90, 0],
				[8, 20, 90],
			],
			9,
		);
		const ends = endsOf(plainJob({ shape, tooling: { floor: 30 } }));
		expect(ends.start.hindrances.map(({ code }) => code)).toEqual(['floor-contact']);
		expect(ends.far.possible).toBe(true);
		expect(ends.better).toBe('far');
	});

	it('matters nothing to a tube that is the same from both', () => {
		const even = hatJob({
			shape: byBends(
				[
					[18, 17, 0],
					[20, 34, 180],
					[20, 17, 180],
				],
				18,
			),
			checks: [],
		});
		const { start, far, better } = endsOf(even);
		expect(start.left).toBeCloseTo(far.left, 6);
		expect(better).toBeNull();
	});

	it('leaves less over where the largest straights come first: what follows a bend is what its errors are taken back with', () => {
		// A long plain leg before many bends, or after them all: then nothing is left to turn it back with.
		const shape = byBends(
			[
				[60, 30, 0],
				[10, 40, 90],
				[10, 30, 90],
				[10, 40, 90],
			],
			8,
		);
		const ends = endsOf(plainJob({ shape }));
		expect(ends.better).not.toBeNull();
		// Told for the drawing's ends, from whichever of them the job is bent, and for either hand.
		const turned = endsOf(fromFar(plainJob({ shape })));
		expect(turned.better).toBe(ends.better);
		expect(turned.start.left).toBeCloseTo(ends.start.left, 9);
		expect(turned.far.left).toBeCloseTo(ends.far.left, 9);
		expect(endsOf(mirrored(plainJob({ shape }))).start.left).toBeCloseTo(ends.start.left, 6);
	});
});
