import fc from 'fast-check';
import { expect, it } from 'vitest';
import { gripsOf, slopesOf } from '../../src/fit/grips.ts';
import { walk } from '../../src/fit/kinematics.ts';
import { checkValue } from '../../src/tube/checks.ts';
import { frames } from '../../src/tube/frames.ts';
import type { Check } from '../../src/tube/job.ts';
import type { Shape } from '../../src/tube/shape.ts';
import { sample } from '../helpers/sample-size.ts';
import { anyTube } from '../helpers/shop/tubes.ts';

const TUBE = { od: 40 };
const named = { name: 'any', tolerance: 1 };
const CHECKS: readonly Check[] = [
	{ ...named, kind: 'angle', between: [1, 4] },
	{ ...named, kind: 'angle', between: [4, 2] },
	{ ...named, kind: 'span', from: { bend: 1 }, to: { bend: 3 } },
	{ ...named, kind: 'span', from: { bend: 4 }, to: { end: 'start' } },
	{ ...named, kind: 'span', from: { end: 'far' }, to: { bend: 2 } },
	...(['x', 'y', 'z'] as const).flatMap((axis): Check[] => [
		{ ...named, kind: 'overall', axis },
		{ ...named, kind: 'overall', axis, at: 'end' },
	]),
	{ ...named, kind: 'width', from: 1, to: { straight: 4 }, surface: 'outside' },
	{ ...named, kind: 'width', from: 5, to: { straight: 2, at: 'end' }, surface: 'inside' },
	{ ...named, kind: 'out', plane: [1, 2], to: { straight: 5 } },
	{ ...named, kind: 'out', plane: [3, 4], to: { straight: 2, at: 'end' } },
	...(['centre', 'across'] as const).flatMap((surface): Check[] => [
		{ ...named, kind: 'drop', from: 1, to: { straight: 4 }, surface },
		{ ...named, kind: 'drop', from: 5, to: { straight: 2, at: 'end' }, surface },
		{ ...named, kind: 'drop', from: 1, to: { bend: 3 }, surface },
		{ ...named, kind: 'drop', from: 2, to: { bend: 4 }, surface },
		{ ...named, kind: 'drop', from: 4, to: { bend: 1 }, surface },
	]),
];

const KINDS = ['straights', 'angles', 'rotations'] as const;

function moved(shape: Shape, kind: (typeof KINDS)[number], k: number, by: number): Shape {
	const at = <T>(list: readonly T[], change: (value: T) => T) => list.map((v, i) => (i === k ? change(v) : v));
	if (kind === 'straights') return { ...shape, straights: at(shape.straights, (s) => s + by) };
	const key = kind === 'angles' ? 'angle' : 'rotation';
	return { ...shape, bends: at(shape.bends, (bend) => ({ ...bend, [key]: bend[key] + by })) };
}

it('every check goes with each straight, angle and rotation as central differences of its value say', () => {
	fc.assert(
		fc.property(anyTube({ bends: { min: 4, max: 4 } }), fc.constantFrom(...CHECKS), (shape, check) => {
			const of = (key: 'angle' | 'rotation' | 'radius') => shape.bends.map((bend) => bend[key]);
			const way = walk({
				straights: shape.straights,
				angles: of('angle'),
				rotations: of('rotation'),
				radii: of('radius'),
			});
			const slopes = slopesOf(gripsOf(check, frames(shape), TUBE), way);
			for (const kind of KINDS)
				for (const k of slopes[kind].keys()) {
					const at = (by: number) => checkValue(check, moved(shape, kind, k, by), TUBE);
					const [far, near] = [1e-3, 1e-4].map((by) => (at(by) - at(-by)) / (2 * by)) as [number, number];
					// Where the highest place changes from an end of the arc to another one, there is no slope to be compared.
					fc.pre(Math.abs(far - near) < 1e-5 * (1 + Math.abs(near)));
					// Nor where two places stand out alike, or it turns back: on either side the slope is another.
					fc.pre(Math.abs(at(1e-4) + at(-1e-4) - 2 * at(0)) < 1e-6 * (1 + Math.abs(near)));
					expect(slopes[kind][k]! - near).toBeCloseTo(0, 4);
				}
		}),
		{ numRuns: sample(200, 600) },
	);
});

it('a flat tube pulls on no rotation at all', () => {
	const shape: Shape = {
		straights: [16, 20, 20, 18],
		bends: [17, 34, 17].map((angle, i) => ({ angle, rotation: i === 0 ? 0 : 180, radius: 6 })),
	};
	const of = (key: 'angle' | 'rotation' | 'radius') => shape.bends.map((bend) => bend[key]);
	const way = walk({ straights: shape.straights, angles: of('angle'), rotations: of('rotation'), radii: of('radius') });
	for (const to of [{ straight: 4 }, { bend: 3 }]) {
		const check: Check = { ...named, kind: 'drop', from: 1, to, surface: 'across' };
		const { rotations } = slopesOf(gripsOf(check, frames(shape), TUBE), way);
		for (const slope of rotations) expect(Math.abs(slope)).toBe(0);
	}
});
