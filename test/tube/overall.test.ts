import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { checkAfter, checkValue } from '../../src/tube/checks.ts';
import { frames } from '../../src/tube/frames.ts';
import type { Axis, Check } from '../../src/tube/job.ts';
import { overall } from '../../src/tube/overall.ts';
import { bendsToPoints } from '../../src/tube/points.ts';
import type { Shape } from '../../src/tube/shape.ts';
import { Kernel } from '../helpers/shop/kernel.ts';
import { anyTube } from '../helpers/shop/tubes.ts';

const over = (axis: Axis): Check => ({ kind: 'overall', name: 'size', tolerance: 1 / 8, axis });

const tube = (straights: number[], radius: number, bends: [number, number][]): Shape => ({
	straights,
	bends: bends.map(([angle, rotation]) => ({ angle, rotation, radius })),
});

describe('the size over all', () => {
	// NJATC, Conduit Fabrication, Level II, lesson 4, example for questions 34 to 43: a 90 with a stub of 48 in and a leg of 44 in, outside
	// to outside, of conduit 2.375 in over a shoe of 24 in; straights 22 13/16 and 18 13/16 in.
	const elbow = tube([22.8125, 18.8125], 24, [[90, 0]]);

	it('of an elbow is its stub and its leg, outside to outside, as a published example has them', () => {
		expect(checkValue(over('x'), elbow, { od: 2.375 })).toBeCloseTo(48, 12);
		expect(checkValue(over('y'), elbow, { od: 2.375 })).toBeCloseTo(44, 12);
		expect(checkValue(over('z'), elbow, { od: 2.375 })).toBeCloseTo(2.375, 12);
	});

	it('goes by the plane of bend 1, however that lies in space', () => {
		const turned = tube([22.8125, 18.8125], 24, [[90, 37]]);
		expect(overall(frames(turned), 2.375)).toEqual({
			x: expect.closeTo(48, 9),
			y: expect.closeTo(44, 9),
			z: expect.closeTo(2.375, 9),
		});
	});

	it('wants the whole tube', () => {
		expect(checkAfter(over('z'), 3)).toBe(3);
	});
});

describe('the size over all against the OpenCASCADE kernel', () => {
	let kernel: Kernel;
	beforeAll(async () => {
		kernel = await Kernel.load();
	});

	it('is the box in which the swept rod just fits', () => {
		const OD = 40;
		fc.assert(
			fc.property(anyTube({ bends: { min: 1, max: 4 } }), (any) => {
				// Its plane for the kernel's: bend 1 toward +y.
				const shape = {
					...any,
					bends: any.bends.map((bend, i) => ({ ...bend, rotation: i === 0 ? 0 : bend.rotation, radius: 152 })),
				};
				const list = shape.bends.map(({ angle, rotation }, i) => ({ straight: shape.straights[i]!, angle, rotation }));
				const points = bendsToPoints({ bends: list, last: shape.straights.at(-1)! }, 152);
				const wire = kernel.spine(
					points,
					shape.bends.map(({ radius }) => radius),
				);
				const [x, y, z] = kernel.rodSize(wire, OD / 2);
				const size = overall(frames(shape), OD);
				for (const [mine, its] of [
					[size.x, x],
					[size.y, y],
					[size.z, z],
				] as const)
					expect(Math.abs(mine - its)).toBeLessThan(1e-4 * its);
			}),
			{ seed: 87, numRuns: 25 },
		);
	});
});
