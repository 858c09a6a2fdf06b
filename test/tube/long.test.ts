import { describe, expect, it } from 'vitest';
import { farEndMotion } from '../../src/fit/kinematics.ts';
import { frames, shapeEnd } from '../../src/tube/frames.ts';
import { dot, norm } from '../../src/tube/vector.ts';

const bends = Array.from({ length: 200 }, (_, i) => ({
	angle: 30 + (i % 7),
	rotation: i % 2 === 0 ? -80 : 90,
	radius: 5,
}));
const long = { straights: Array.from({ length: 201 }, (_, i) => 7 + (i % 3)), bends };

/** As many bends as a job may have. Rounding must not grow from one to the next: every direction stays a direction. */
describe('a tube of two hundred bends in space', () => {
	it('has directions of length 1, and normals square to them', () => {
		for (const { tangent, normal, binormal, endTangent } of frames(long).arcs) {
			for (const each of [tangent, normal, binormal, endTangent]) expect(norm(each)).toBeCloseTo(1, 12);
			expect(dot(tangent, normal)).toBeCloseTo(0, 12);
		}
	});

	it('ends no further away than it is long, and in one place for the layout and the correction', () => {
		const [end, walked] = [shapeEnd(long), farEndMotion(long)];
		const length = bends.reduce(
			(sum, { angle, radius }, i) => sum + long.straights[i]! + (angle * Math.PI * radius) / 180,
			9,
		);
		expect(norm(end.end)).toBeLessThan(length);
		for (let i = 0; i < 3; i++) {
			expect(walked.end[i]!).toBeCloseTo(end.end[i]!, 9);
			expect(walked.direction[i]!).toBeCloseTo(end.direction[i]!, 12);
		}
	});
});
