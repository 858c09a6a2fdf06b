import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { farEndMotion, type Motion } from '../../src/fit/kinematics.ts';
import { shapeEnd } from '../../src/tube/frames.ts';
import type { Shape } from '../../src/tube/shape.ts';
import { anyTube } from '../helpers/shop/tubes.ts';

/** Central differences of the far end by the change that `moved` makes to the shape. */
function slope(moved: (by: number) => Shape, by: number): Motion {
	const above = shapeEnd(moved(by));
	const below = shapeEnd(moved(-by));
	const over = (a: number, b: number) => (a - b) / (2 * by);
	const each = (a: readonly number[], b: readonly number[]) =>
		[over(a[0]!, b[0]!), over(a[1]!, b[1]!), over(a[2]!, b[2]!)] as const;
	return { end: each(above.end, below.end), direction: each(above.direction, below.direction) };
}

function movedBy(shape: Shape, kind: 'straight' | 'angle' | 'rotation', index: number, by: number): Shape {
	if (kind === 'straight') return { ...shape, straights: shape.straights.map((s, i) => (i === index ? s + by : s)) };
	return { ...shape, bends: shape.bends.map((b, i) => (i === index ? { ...b, [kind]: b[kind] + by } : b)) };
}

/** Largest difference, the motion of the end taken per unit of the tube's reach, so that 1e-7 means the same for every tube. */
function apart(exact: Motion, numeric: Motion, reach: number): number {
	return Math.max(
		...exact.end.map((v, i) => Math.abs(v - numeric.end[i]!) / reach),
		...exact.direction.map((v, i) => Math.abs(v - numeric.direction[i]!)),
	);
}

describe('how the far end moves', () => {
	test('agrees with central differences by every straight, angle and rotation', () => {
		fc.assert(
			fc.property(anyTube({ bends: { min: 1, max: 8 } }), (shape) => {
				const motion = farEndMotion(shape);
				const reach = shape.straights.reduce((sum, s) => sum + s, 0);
				for (const kind of ['straight', 'angle', 'rotation'] as const) {
					for (const [i, exact] of motion[`${kind}s`].entries()) {
						const numeric = slope((by) => movedBy(shape, kind, i, by), 1e-3);
						expect(apart(exact, numeric, reach)).toBeLessThan(1e-7);
					}
				}
			}),
			{ numRuns: 60 },
		);
	});

	test('gives the far end that the tube room gives', () => {
		fc.assert(
			fc.property(anyTube({ bends: { min: 0, max: 8 } }), (shape) => {
				const { end, direction } = farEndMotion(shape);
				expect({ end, direction }).toEqual(shapeEnd(shape));
			}),
			{ numRuns: 60 },
		);
	});

	test('one right angle: a degree more swings the far leg about the center of the arc, a rotation about the first straight', () => {
		// By hand: arc from (10,0,0), center (10,6,0), ends at (16,6,0) going +y; the far end is at (16,26,0).
		const motion = farEndMotion({ straights: [10, 20], bends: [{ angle: 90, rotation: 0, radius: 6 }] });
		const degree = Math.PI / 180;
		expect(motion.angles[0]!.end.map((v) => v / degree)).toEqual([-20, expect.closeTo(6, 12), 0]);
		expect(motion.rotations[0]!.end.map((v) => v / degree)).toEqual([0, expect.closeTo(0, 12), expect.closeTo(26, 12)]);
		expect(motion.straights.map((s) => s.end)).toEqual([
			[1, 0, 0],
			[0, 1, 0],
		]);
	});
});
