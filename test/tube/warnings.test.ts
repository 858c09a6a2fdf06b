import { describe, expect, it } from 'vitest';
import { finishedShape } from '../../src/tube/resolve.ts';
import type { Warning } from '../../src/tube/warnings.ts';
import { warnings } from '../../src/tube/warnings.ts';
import { warningWords } from '../../src/words/warnings.ts';
import { byBends, type JobParts, plainJob } from '../helpers/shop/plain-job.ts';

const told = (warning: Warning) => warningWords(warning, plainJob());

/** Warnings with a stop that is 4 degrees over the angle. */
function warned(parts: JobParts) {
	const job = plainJob(parts);
	return warnings(job, finishedShape(job, { value: 1 }), { value: 1, from: 'job' }, (angle) => angle + 4);
}
const codes = (parts: JobParts) => warned(parts).map(({ at, code }) => `${code} ${at}`);

const twoBends = byBends(
	[
		[5, 60, 0],
		[4, 60, 90],
	],
	8,
);

describe('warnings', () => {
	it('are none where nothing stands in the way', () => {
		expect(warned({})).toEqual([]);
	});

	describe('of the clamp', () => {
		it('hold bend 1 against the raw start end, trim included, and a later bend against the bend before', () => {
			expect(codes({ shape: twoBends, tooling: { clamp: 4 } })).toEqual([]);
			expect(codes({ shape: twoBends, tooling: { clamp: 4.5 } })).toEqual(['short-clamp shape.bends[1].straight']);
			expect(codes({ shape: twoBends, tooling: { clamp: 6 } })).toEqual([
				'short-clamp shape.bends[0].straight',
				'short-clamp shape.bends[1].straight',
			]);
			expect(codes({ shape: twoBends, tooling: { clamp: 6 }, trim: { start: 1 } })).toEqual([
				'short-clamp shape.bends[1].straight',
			]);
		});

		it('count up to the mark, not to the tangent', () => {
			expect(codes({ shape: twoBends, tooling: { clamp: 4, markOffset: 0.25 } })).toEqual([
				'short-clamp shape.bends[1].straight',
			]);
		});

		it('say how much is there, how much is wanted and what would help', () => {
			const [first, second] = warned({ shape: twoBends, tooling: { clamp: 6 } });
			expect(told(first!)).toBe(
				'Bend 1: the clamp needs 6 in of straight tube before the mark, but from the raw start end to the mark there is 5 in. ' +
					'What would help: more trim at the start end (1 in more).',
			);
			expect(told(second!)).toContain('from bend 1 to the mark there is 4 in');
		});
	});

	it('of what must lie behind the last bend count the trim at the far end', () => {
		expect(codes({ shape: twoBends, tooling: { follow: 8 } })).toEqual([]);
		expect(codes({ shape: twoBends, tooling: { follow: 9 } })).toEqual(['short-follow shape.last']);
		expect(codes({ shape: twoBends, tooling: { follow: 9 }, trim: { end: 1 } })).toEqual([]);
	});

	it('of the dial compare its end with the loaded stop, not with the angle', () => {
		expect(codes({ shape: twoBends, tooling: { maxAngle: 64 } })).toEqual([]);
		expect(codes({ shape: twoBends, tooling: { maxAngle: 63 } })).toEqual([
			'dial-limit shape.bends[0].angle',
			'dial-limit shape.bends[1].angle',
		]);
	});

	it('of the stock compare it with the cut length', () => {
		const quarter = (6 * Math.PI) / 2;
		const tube = (stock: number) => ({ ...plainJob().tube, stock });
		expect(codes({ tube: tube(40 + quarter) })).toEqual([]);
		expect(codes({ tube: tube(40 + quarter - 0.01) })).toEqual(['stock-short tube.stock']);
		expect(told(warned({ tube: tube(40), trim: { start: 1, end: 0.5 } })[0]!)).toBe(
			'The piece in hand is 40 in, but the tube needs 50 59/64 in: 10 59/64 in short. Take a longer piece, or leave less trim (now 1 1/2 in in all).',
		);
	});

	// Source: FIA Appendix J (2009) art. 253 8.3.3: center-line bend radius at least 3 times the tube's diameter; Formula SAE Rules
	// 2021 F.5.2.1 has the same.
	it.each([
		[1.5, 4.5],
		[1.625, 4.875],
		[1.75, 5.25],
	])('of a tight radius begin under 3 diameters: %d in tube at %d in', (od, clr) => {
		const tube = { ...plainJob().tube, od };
		expect(codes({ tube, tooling: { clr } })).toEqual([]);
		expect(codes({ tube, tooling: { clr: clr - 0.01 } })).toEqual(['tight-radius tooling.clr']);
	});

	it('of contact name the parts that meet', () => {
		// Around three 90s, the last straight crosses the first, lifted by 32 sin 2 degrees.
		const ring = byBends(
			[
				[40, 90, 0],
				[20, 90, 2],
				[20, 90, 0],
			],
			30,
		);
		const [warning, ...others] = warned({ shape: ring });
		expect(others).toEqual([]);
		expect(warning).toMatchObject({ at: 'shape', code: 'self-contact' });
		expect(told(warning!)).toContain('straight 1 and straight 4 come within 1 7/64 in, and the tube is 1 1/2 in thick');
	});

	it('of a drop without crown name the check and the straights to use', () => {
		const shape = byBends(
			[
				[10, 30, 0],
				[9, 20, 180],
			],
			12,
		);
		const to = (bend: number) =>
			({ kind: 'drop', name: `to ${bend}`, tolerance: 0.1, from: 1, to: { bend }, surface: 'centre' }) as const;
		const [first, second, ...others] = warned({ shape, checks: [to(1), to(2)] });
		// Bend 1 begins parallel to straight 1, so it has a place where the tube runs along it.
		expect(first).toMatchObject({ at: 'checks[1]', code: 'no-crown' });
		expect(told(first!)).toContain('Check "to 2": the tube nowhere runs parallel to straight 1 in bend 2');
		expect(told(first!)).toContain('"straight": 3');
		expect([second, ...others].filter(Boolean)).toEqual([]);
	});

	it('of a shape by points are placed at the points', () => {
		const points = [
			[0, 0, 0],
			[10, 0, 0],
			[20, 10, 0],
			[40, 10, 0],
		] as const;
		expect(codes({ shape: { kind: 'points', points }, tooling: { clamp: 10, follow: 18, maxAngle: 45 } })).toEqual([
			'short-clamp shape.points[1]',
			'short-clamp shape.points[2]',
			'dial-limit shape.points[1]',
			'dial-limit shape.points[2]',
			'short-follow shape.points[3]',
		]);
	});
});
