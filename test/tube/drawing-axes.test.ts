import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawingAxes } from '../../src/tube/drawing-axes.ts';
import { corners, frames } from '../../src/tube/frames.ts';
import type { Point } from '../../src/tube/job.ts';
import { overall, sizeAlong } from '../../src/tube/overall.ts';
import { pointFaults } from '../../src/tube/points.ts';
import { finishedShape } from '../../src/tube/resolve.ts';
import { dot, subtract } from '../../src/tube/vector.ts';
import { plainJob } from '../helpers/shop/plain-job.ts';

const coordinate = fc.integer({ min: -60, max: 60 });
const anyPoints = fc
	.array(fc.tuple(coordinate, coordinate, coordinate), { minLength: 3, maxLength: 6 })
	.filter((points) => pointFaults(points, 2).length === 0);

const laid = (points: readonly Point[]) => {
	const job = plainJob({ shape: { kind: 'points', points }, tooling: { clr: 2 } });
	const shape = finishedShape(job, { value: 1 });
	return { job, shape, axes: drawingAxes(job.shape, shape) };
};

describe("the drawing's axes", () => {
	it('give back every corner as it was typed, from the first', () => {
		fc.assert(
			fc.property(anyPoints, (points) => {
				const { shape, axes } = laid(points);
				for (const [i, corner] of corners(shape).entries()) {
					const [x, y, z] = subtract(points[i]!, points[0]!);
					expect(dot(corner, axes.x)).toBeCloseTo(x, 8);
					expect(dot(corner, axes.y)).toBeCloseTo(y, 8);
					expect(dot(corner, axes.z)).toBeCloseTo(z, 8);
				}
			}),
			{ seed: 88, numRuns: 60 },
		);
	});

	it("of a shape by bends are bend 1's", () => {
		const job = plainJob();
		const shape = finishedShape(job, { value: 1 });
		const axes = drawingAxes(job.shape, shape);
		const { x, y, z } = overall(frames(shape), job.tube.od);
		expect([axes.x, axes.y, axes.z].map((axis) => sizeAlong(frames(shape), 1.5, axis))).toEqual([x, y, z]);
	});

	it('tell a hoop that stands on its feet as wide and as high as it is drawn', () => {
		// By hand: legs 30 in up, 20 in apart, 1.5 in tube: 21.5 in over the outsides and 30.75 in high.
		const points: Point[] = [
			[0, 0, 0],
			[0, 30, 0],
			[20, 30, 0],
			[20, 0, 0],
		];
		const { shape, axes } = laid(points);
		expect(sizeAlong(frames(shape), 1.5, axes.x)).toBeCloseTo(21.5, 9);
		expect(sizeAlong(frames(shape), 1.5, axes.y)).toBeCloseTo(30.75, 9);
		expect(sizeAlong(frames(shape), 1.5, axes.z)).toBeCloseTo(1.5, 9);
	});
});
