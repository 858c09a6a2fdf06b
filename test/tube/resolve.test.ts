import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { corners, frames, shapeEnd } from '../../src/tube/frames.ts';
import type { Point } from '../../src/tube/job.ts';
import { finishedShape, keepCorners } from '../../src/tube/resolve.ts';
import { distance, dot, norm } from '../../src/tube/vector.ts';
import { byBends, plainJob } from '../helpers/shop/plain-job.ts';
import { anyTube } from '../helpers/shop/tubes.ts';

describe('the designed shape', () => {
	it('has the straights as given where neither the radius grows nor the drawing has another', () => {
		const job = plainJob({ shape: byBends([[10, 90, 0]], 12) });
		const shape = finishedShape(job, { value: 1 });
		expect(shape.straights).toEqual([10, 12]);
		expect(shape.bends).toEqual([{ angle: 90, rotation: 0, radius: 6 }]);
	});

	// By hand: corners 16 and 18 from the ends; at 90 degrees a setback is the radius, 6.3.
	it('keeps the corners of bends, whatever the growth', () => {
		const job = plainJob({ shape: byBends([[10, 90, 0]], 12) });
		const { straights, bends } = finishedShape(job, { value: 1.05 });
		expect(straights[0]).toBeCloseTo(9.7, 12);
		expect(straights[1]).toBeCloseTo(11.7, 12);
		expect(bends[0]!.radius).toBeCloseTo(6.3, 12);
	});

	it('has its corners by the radius that the drawing shows', () => {
		const shape = { kind: 'bends' as const, bends: [{ straight: 10, angle: 90, rotation: 0 }], last: 12, radius: 8 };
		const { straights, bends } = finishedShape(plainJob({ shape }), { value: 1.05 });
		expect(straights[0]).toBeCloseTo(18 - 6.3, 12);
		expect(straights[1]).toBeCloseTo(20 - 6.3, 12);
		expect(bends[0]!.radius).toBeCloseTo(6.3, 12);
	});

	it('leaves a straight of nothing as nothing, whatever rounding makes of it', () => {
		const bends = [
			{ straight: 10, angle: 77, rotation: 0 },
			{ straight: 0, angle: 41, rotation: 30 },
		];
		const growth = 1.037;
		// The drawing's radius is the finished one, so that nothing moves.
		const shape = { kind: 'bends' as const, bends, last: 12, radius: 6 * growth };
		expect(finishedShape(plainJob({ shape }), { value: growth }).straights[1]).toBe(0);
	});

	it('keeps the corners of points, whatever the growth', () => {
		const points: Point[] = [
			[5, 1, 0],
			[5, 41, 0],
			[45, 41, 0],
			[60, 60, 20],
		];
		const job = plainJob({ shape: { kind: 'points', points } });
		for (const growth of [1, 1.03]) {
			const made = corners(finishedShape(job, { value: growth }));
			for (let i = 0; i < 4; i++) {
				for (let j = 0; j < i; j++) {
					expect(distance(made[i]!, made[j]!)).toBeCloseTo(distance(points[i]!, points[j]!), 10);
				}
			}
		}
	});
});

describe('the frame of the tube', () => {
	it('starts at the origin along +x, bends toward +y, and turns by the right-hand rule', () => {
		const job = plainJob({
			shape: byBends(
				[
					[10, 90, 0],
					[10, 90, 90],
				],
				10,
			),
		});
		const shape = finishedShape(job, { value: 1 });
		// Travel +y after bend 1, toward -x inside; +90 about +y takes -x to +z.
		expect(corners(shape)).toEqual([
			[0, 0, 0],
			[16, 0, 0],
			[16, 22, 0],
			[16, 22, 16],
		]);
		const { end, direction } = shapeEnd(shape);
		expect(end).toEqual([16, 22, 16]);
		expect(direction).toEqual([0, 0, 1]);
	});

	it('has the first bend in the plane that its rotation sets', () => {
		const job = plainJob({ shape: byBends([[10, 90, 90]], 10) });
		expect(shapeEnd(finishedShape(job, { value: 1 })).direction).toEqual([0, 0, 1]);
	});

	it('is right-handed with unit vectors, and its arcs keep their radius', () => {
		fc.assert(
			fc.property(anyTube({ bends: { min: 1, max: 8 } }), (tube) => {
				for (const arc of frames(tube).arcs) {
					expect(norm(arc.normal)).toBeCloseTo(1, 12);
					expect(dot(arc.tangent, arc.normal)).toBeCloseTo(0, 12);
					expect(distance(arc.start, arc.center)).toBeCloseTo(152, 9);
					expect(distance(arc.end, arc.center)).toBeCloseTo(152, 9);
				}
			}),
			{ seed: 41, numRuns: 100 },
		);
	});
});

describe('other radii between the same corners', () => {
	it('keep every corner and both ends', () => {
		const withRadii = anyTube({ bends: { min: 1, max: 6 } }).chain((tube) =>
			fc
				.array(fc.double({ min: 100, max: 200, noNaN: true }), {
					minLength: tube.bends.length,
					maxLength: tube.bends.length,
				})
				.map((radii) => ({ tube, radii })),
		);
		fc.assert(
			fc.property(withRadii, ({ tube, radii }) => {
				const other = keepCorners(tube, radii);
				expect(other.bends.map((bend) => bend.radius)).toEqual(radii);
				const [were, are] = [corners(tube), corners(other)];
				for (const [i, corner] of were.entries()) expect(distance(corner, are[i]!)).toBeLessThan(1e-9);
			}),
			{ seed: 42, numRuns: 200 },
		);
	});

	it('leave a negative straight where there is no room', () => {
		const shape = finishedShape(plainJob({ shape: byBends([[1, 90, 0]], 5) }), { value: 1 });
		expect(keepCorners(shape, [8]).straights).toEqual([-1, 3]);
	});
});
