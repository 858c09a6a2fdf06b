import { describe, expect, it } from 'vitest';
import { judged, keeps, type Limits, largestMiss } from '../../src/fit/judged.ts';
import { frames } from '../../src/tube/frames.ts';
import type { Shape } from '../../src/tube/shape.ts';

describe('a tube beside its drawing', () => {
	const drawn: Shape = { straights: [10, 10], bends: [{ angle: 90, rotation: 0, radius: 4 }] };
	// Legs of 14 in to a square corner: the far end lies at (14, 14).
	const limits: Limits = {
		corners: [
			[0, 0, 0],
			[14, 0, 0],
			[14, 14, 0],
		],
		direction: [0, 1, 0],
		shape: 0.25,
		turn: 1,
		measures: [{ design: 14, tolerance: 0.1, value: ({ straights }) => straights[1]!.end[1] }],
	};

	it('keeps the drawing to the last digit', () => {
		const tube = judged(frames(drawn), limits);
		expect(tube.endOffset).toBeCloseTo(0, 12);
		expect(tube.endAngle).toBeCloseTo(0, 6);
		expect(tube.off[0]).toBeCloseTo(0, 12);
		expect(keeps(tube, limits)).toBe(true);
	});

	it.each([
		['a leg that brings the corner too far', { ...drawn, straights: [10.3, 10] }, 'off', 0.3],
		['a last leg too long', { ...drawn, straights: [10, 10.3] }, 'endOffset', 0.3],
		['a bend too far over', { ...drawn, bends: [{ angle: 91.2, rotation: 0, radius: 4 }] }, 'endAngle', 1.2],
	] as const)('does not with %s', (_, shape, what, by) => {
		const tube = judged(frames(shape as Shape), limits);
		expect(what === 'off' ? tube.off[0] : tube[what]).toBeCloseTo(by, 6);
		expect(keeps(tube, limits)).toBe(false);
		expect(largestMiss(tube, limits)).toBeGreaterThan(1.19);
	});

	it('is off by its check alone where that is narrower', () => {
		const tube = judged(frames({ ...drawn, straights: [10, 10.15] }), limits);
		expect(largestMiss(tube, limits)).toBeCloseTo(1.5, 9);
	});
});
