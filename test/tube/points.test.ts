import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { corners } from '../../src/tube/frames.ts';
import type { Point } from '../../src/tube/job.ts';
import { bendsToPoints, pointFaults, pointsToBends, torsion } from '../../src/tube/points.ts';
import { distance } from '../../src/tube/vector.ts';
import { anyTube, OUT_OF_PLANE } from '../helpers/shop/tubes.ts';

/** Degrees between two rotations, modulo 360. */
const apart = (a: number, b: number): number => Math.abs(((((a - b) % 360) + 540) % 360) - 180);

describe('torsion', () => {
	// Source: Stack Overflow question 20305272; 14-digit values as in the QCElemental test suite (published torsion angles).
	const chain: Point[] = [
		[24.969, 13.428, 30.692],
		[24.044, 12.661, 29.808],
		[22.785, 13.482, 29.543],
		[21.951, 13.67, 30.431],
		[23.672, 11.328, 30.466],
		[22.881, 10.326, 29.62],
		[23.691, 9.935, 28.389],
		[22.557, 9.096, 30.459],
	];
	test.each([
		[[0, 1, 2, 3], -71.21515114671394],
		[[0, 1, 4, 5], -171.94319947953642],
		[[1, 4, 5, 6], 60.82226735264638],
		[[1, 4, 5, 7], -177.63641151521261],
	])('of published points %j is %d, in either order', (indices, published) => {
		const [a, b, c, d] = indices.map((i) => chain[i]!) as [Point, Point, Point, Point];
		expect(torsion(a, b, c, d)).toBeCloseTo(published, 10);
		expect(torsion(d, c, b, a)).toBeCloseTo(published, 10);
	});

	// Source: sign cases of open-source test suites, in the IUPAC sign (clockwise along the middle segment is positive).
	test.each<[Point, Point, Point, Point, number]>([
		[[3.2, 5.3, 2.5], [3.2, 3.3, 2.5], [1.2, 3.3, 2.5], [1.2, 4.3, 3.5], -45],
		[[3.2, 5.3, 2.5], [3.2, 3.3, 2.5], [1.2, 3.3, 2.5], [1.2, 4.3, 1.5], 45],
		[[1, 0, 0], [0, 0, 0], [0, 1, 0], [1, 1, 0], 0],
		[[1, 0, 0], [0, 0, 0], [0, 1, 0], [-1, 1, 0], 180],
		[[1, 0, 0], [0, 0, 0], [0, 1, 0], [0, 1, -1], 90],
		[[1, 0, 0], [0, 0, 0], [0, 1, 0], [0, 1, 1], -90],
	])('of %j %j %j %j is %d', (a, b, c, d, expected) => {
		expect(torsion(a, b, c, d)).toBeCloseTo(expected, 10);
	});
});

describe('points to bends', () => {
	// Source of the points: a bending-data question on a public mathematics forum; bends and lengths are a second opinion by formula.
	it('reads an S of two 90s out of plane', () => {
		const points: Point[] = [
			[38.5202, -14.0264, 0],
			[45.3142, -14.0264, 0],
			[45.3142, -17.5214, 0.9654],
			[48.6822, -17.5214, 0.9654],
		];
		const { bends, last } = pointsToBends(points, 0);
		expect(bends.map((bend) => bend.angle)).toEqual([90, 90]);
		expect(bends[0]!.rotation).toBe(0);
		expect(apart(bends[1]!.rotation, 180)).toBeLessThan(1e-9);
		expect(bends[0]!.straight).toBeCloseTo(6.794, 10);
		expect(bends[1]!.straight).toBeCloseTo(3.6258823, 7);
		expect(last).toBeCloseTo(3.368, 10);
	});

	// Second opinion: the same tube computed independently and confirmed by a geometry kernel.
	it('gives straights, angles and rotations of a tube out of plane', () => {
		const { bends, last } = pointsToBends(OUT_OF_PLANE, 6);
		expect(bends.map((bend) => bend.straight)).toEqual([
			expect.closeTo(24, 10),
			expect.closeTo(31.443202930538, 10),
			expect.closeTo(15.458760637124, 10),
		]);
		expect(bends.map((bend) => bend.angle)).toEqual([
			90,
			expect.closeTo(46.160893181975, 10),
			expect.closeTo(62.499452026131, 10),
		]);
		expect(bends[1]!.rotation).toBeCloseTo(129.805571092, 8);
		expect(bends[2]!.rotation).toBeCloseTo(60.006613742, 8);
		expect(last).toBeCloseTo(26.359149878878, 10);
	});

	it('gives back the bends that points were made from', () => {
		fc.assert(
			fc.property(
				anyTube({ bends: { min: 1, max: 9 }, straight: { min: 0.1, max: 500 }, angle: { min: 1, max: 175 } }),
				(tube) => {
					const bends = tube.bends.map(({ angle, rotation }, i) => ({
						straight: tube.straights[i]!,
						angle,
						rotation: i === 0 ? 0 : rotation,
					}));
					const list = { bends, last: tube.straights.at(-1)! };
					const back = pointsToBends(bendsToPoints(list, 152), 152);
					for (const [i, bend] of back.bends.entries()) {
						// A near half turn has a setback of many radii, whose rounding falls on the straights.
						expect(Math.abs(bend.straight - bends[i]!.straight)).toBeLessThan(1e-7);
						expect(Math.abs(bend.angle - bends[i]!.angle)).toBeLessThan(1e-7);
						expect(apart(bend.rotation, bends[i]!.rotation)).toBeLessThan(1e-7);
					}
					expect(Math.abs(back.last - list.last)).toBeLessThan(1e-7);
				},
			),
			{ seed: 31, numRuns: 400 },
		);
	});

	it('reads a mirrored tube as the same with every rotation the other way', () => {
		fc.assert(
			fc.property(anyTube({ bends: { min: 2, max: 6 } }), (tube) => {
				const points = corners(tube);
				const mirrored = points.map(([x, y, z]): Point => [x, y, -z]);
				const right = pointsToBends(points, 152).bends;
				for (const [i, bend] of pointsToBends(mirrored, 152).bends.entries()) {
					expect(bend.angle).toBeCloseTo(right[i]!.angle, 8);
					expect(apart(bend.rotation, -right[i]!.rotation)).toBeLessThan(1e-8);
				}
			}),
			{ seed: 32, numRuns: 100 },
		);
	});

	it('reads the tube from its far end with the same angles and rotations, reversed', () => {
		const there = pointsToBends(OUT_OF_PLANE, 6);
		const back = pointsToBends([...OUT_OF_PLANE].reverse(), 6);
		expect(back.bends.map((bend) => bend.angle)).toEqual(
			there.bends.map((bend) => expect.closeTo(bend.angle, 10)).reverse(),
		);
		expect(back.bends[1]!.rotation).toBeCloseTo(there.bends[2]!.rotation, 10);
		expect(back.bends[2]!.rotation).toBeCloseTo(there.bends[1]!.rotation, 10);
	});
});

describe('points that are no tube', () => {
	const line: Point[] = [
		[0, 0, 0],
		[10, 0, 0],
		[20, 0, 0],
		[20, 10, 0],
	];
	test.each<[string, Point[], number]>([
		['too few', line.slice(0, 2), 0],
		['in a line', line, 1],
		[
			'coinciding',
			[
				[0, 0, 0],
				[10, 0, 0],
				[10, 0, 0],
				[20, 5, 0],
			],
			2,
		],
		[
			'turning straight back',
			[
				[0, 0, 0],
				[10, 0, 0],
				[2, 0, 0],
			],
			1,
		],
	])('%s: told with their place, refused by the conversion', (_, points, at) => {
		expect(pointFaults(points, 1).map((fault) => fault.point)).toEqual([at]);
		expect(() => pointsToBends(points, 1)).toThrow(`points[${at}]`);
	});

	it('with corners closer than their setbacks: told how much room is missing, straights left negative', () => {
		// Two 90s of radius 6 need 12 between their corners; here are 10.
		const points: Point[] = [
			[0, 0, 0],
			[20, 0, 0],
			[20, 10, 0],
			[40, 10, 0],
		];
		const [fault, ...others] = pointFaults(points, 6);
		expect(others).toEqual([]);
		expect(fault).toEqual({
			point: 2,
			fact: { code: 'further', by: 2, bends: [1, 2] },
		});
		expect(pointsToBends(points, 6).bends[1]!.straight).toBeCloseTo(-2, 12);
	});

	it('with corners exactly their setbacks apart: a tube whose straight is 0', () => {
		const points: Point[] = [
			[0, 0, 0],
			[0.3, 0, 0],
			[0.3, 0.6, 0],
			[0.6, 0.6, 0],
		];
		expect(pointFaults(points, 0.3)).toEqual([]);
		expect(pointsToBends(points, 0.3).bends.map((bend) => bend.straight)).toEqual([0, 0]);
	});
});

it('gives corners whose distances are straights and setbacks', () => {
	const points = bendsToPoints({ bends: [{ straight: 4, angle: 90, rotation: 0 }], last: 5 }, 6);
	expect(distance(points[0]!, points[1]!)).toBe(10);
	expect(distance(points[1]!, points[2]!)).toBe(11);
});
