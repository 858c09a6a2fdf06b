import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { segmentToSegment } from '../../src/tube/nearest.ts';
import { selfContact } from '../../src/tube/self-contact.ts';
import type { Shape } from '../../src/tube/shape.ts';
import { anyTube } from '../helpers/shop/tubes.ts';

/** `[angle, rotation]` each, between straights of these lengths, all of one radius. */
const tube = (straights: number[], bends: [number, number][], radius = 6): Shape => ({
	straights,
	bends: bends.map(([angle, rotation]) => ({ angle, rotation, radius })),
});

describe('a tube that runs into itself', () => {
	it('closing a square on its own line, is found where it comes back to it', () => {
		const ring = tube(
			[10, 8, 8, 8, 20],
			[
				[90, 0],
				[90, 0],
				[90, 0],
				[90, 0],
			],
		);
		// Bend 4 ends on straight 1, and straight 5 lies in it.
		expect(selfContact(ring, 1.5)).toEqual({
			first: { straight: 1 },
			second: { bend: 4 },
			distance: expect.closeTo(0, 9),
		});
	});

	it('crossing over itself, is found only when the tube is thicker than the gap', () => {
		// Around three 90s, the last straight comes back over the first, lifted by the tilt of the 32 in between corners 2 and 3.
		const lifted = (tilt: number) =>
			tube(
				[40, 20, 20, 30],
				[
					[90, 0],
					[90, tilt],
					[90, 0],
				],
			);
		expect(selfContact(lifted(3), 1.5)).toBeNull();
		const gap = 32 * Math.sin((2 * Math.PI) / 180);
		const contact = selfContact(lifted(2), 1.5)!;
		expect(contact).toEqual({ first: { straight: 1 }, second: { straight: 4 }, distance: expect.closeTo(gap, 9) });
		expect(selfContact(lifted(2), gap - 1e-6)).toBeNull();
	});

	it('with its end against a bend, is found there', () => {
		// A hairpin whose return leg turns back in and ends on bend 1's arc.
		const hook = tube(
			[20, 12, 6, 14],
			[
				[120, 0],
				[120, 0],
				[120, 0],
			],
		);
		const contact = selfContact(hook, 1.5);
		expect(contact).not.toBeNull();
		expect(contact!.distance).toBeLessThan(1.5);
	});
});

describe('a tube that does not', () => {
	it('may have a hairpin of two 90s without a straight between, two radii wide', () => {
		const hairpin = tube(
			[30, 0, 30],
			[
				[90, 0],
				[90, 0],
			],
		);
		expect(selfContact(hairpin, 1.5)).toBeNull();
		expect(selfContact(hairpin, 11.99)).toBeNull();
		expect(selfContact(hairpin, 12.01)?.distance).toBeCloseTo(12, 2);
	});

	it('may be a bare ring of 200 degrees whose ends are its nearest places half a turn apart', () => {
		// Chord of 200 degrees at radius 6, 11.817; places less than half a turn apart are nearer and no contact.
		const ring = tube(
			[0, 0, 0],
			[
				[100, 0],
				[100, 0],
			],
		);
		const ends = 12 * Math.sin((100 * Math.PI) / 180);
		expect(selfContact(ring, ends - 1e-6)).toBeNull();
		expect(selfContact(ring, ends + 0.1)?.distance).toBeCloseTo(ends, 6);
	});

	it('may have many small bends close together: neighbors are no contact', () => {
		fc.assert(
			fc.property(
				anyTube({ bends: { min: 1, max: 5 }, straight: { min: 0, max: 5 }, angle: { min: 1, max: 35 }, radius: 152 }),
				(shape) => {
					expect(selfContact(shape, 300)).toBeNull();
				},
			),
			{ seed: 61, numRuns: 200 },
		);
	});

	it('may be a coil that climbs by more than its thickness a turn, and not by less', () => {
		// 16 bends of 45 and a small turn between them climb steadily: two turns.
		const coil = (turn: number) => tube(Array(17).fill(2), Array(16).fill([45, turn]), 6);
		const pitch = selfContact(coil(5), 100)!.distance;
		expect(selfContact(coil(5), pitch * 0.999)).toBeNull();
		expect(selfContact(coil(5), pitch * 1.002)).not.toBeNull();
		expect(selfContact(coil(0), 0.1)?.distance).toBeCloseTo(0, 5);
	});
});

describe('the distance of two segments', () => {
	const at = fc.double({ min: -10, max: 10, noNaN: true });
	const point = fc.tuple(at, at, at);

	it('is not beaten by any pair of places on them, and one pair comes near it', () => {
		fc.assert(
			fc.property(point, point, point, point, (a, b, c, d) => {
				const least = segmentToSegment({ start: a, end: b }, { start: c, end: d });
				const on = (p: typeof a, q: typeof a, s: number) => p.map((x, i) => x + s * (q[i]! - x));
				let nearest = Number.POSITIVE_INFINITY;
				for (let i = 0; i <= 100; i++) {
					for (let j = 0; j <= 100; j++) {
						const [p, q] = [on(a, b, i / 100), on(c, d, j / 100)];
						nearest = Math.min(nearest, Math.hypot(p[0]! - q[0]!, p[1]! - q[1]!, p[2]! - q[2]!));
					}
				}
				expect(least).toBeLessThan(nearest + 1e-9);
				// Half a hundredth of each length away at most.
				const reach = [
					[a, b],
					[c, d],
				].reduce((sum, [p, q]) => sum + Math.hypot(...p!.map((x, i) => x - q![i]!)) / 200, 0);
				expect(nearest).toBeLessThan(least + reach + 1e-9);
			}),
			{ seed: 62, numRuns: 60 },
		);
	});

	it('is right for parallel, overlapping, crossing and pointlike segments', () => {
		const along = { start: [0, 0, 0], end: [10, 0, 0] } as const;
		expect(segmentToSegment(along, { start: [4, 3, 0], end: [20, 3, 0] })).toBe(3);
		expect(segmentToSegment(along, { start: [13, 4, 0], end: [20, 4, 0] })).toBe(5);
		expect(segmentToSegment(along, { start: [5, -1, 0], end: [5, 1, 0] })).toBe(0);
		expect(segmentToSegment(along, { start: [5, 0, 2], end: [5, 0, 2] })).toBe(2);
		expect(segmentToSegment({ start: [1, 1, 1], end: [1, 1, 1] }, { start: [1, 1, 3], end: [1, 1, 3] })).toBe(2);
	});
});
