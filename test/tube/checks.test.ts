import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { checkAfter, checkValue, hasCrown } from '../../src/tube/checks.ts';
import { corners, frames } from '../../src/tube/frames.ts';
import type { Check, Point } from '../../src/tube/job.ts';
import type { Shape } from '../../src/tube/shape.ts';
import { Kernel } from '../helpers/shop/kernel.ts';
import { anyTube } from '../helpers/shop/tubes.ts';

type Drop = Extract<Check, { kind: 'drop' }>;

const TUBE = { od: 1.5 };
const rad = Math.PI / 180;

const drop = (from: number, to: Drop['to'], surface: Drop['surface'] = 'centre'): Check => ({
	kind: 'drop',
	name: 'drop',
	tolerance: 1 / 16,
	from,
	to,
	surface,
});
const angle = (j: number, k: number): Check => ({ kind: 'angle', name: 'angle', tolerance: 0.5, between: [j, k] });
const span = (from: Extract<Check, { kind: 'span' }>['from'], to: Extract<Check, { kind: 'span' }>['to']): Check => ({
	kind: 'span',
	name: 'span',
	tolerance: 0.1,
	from,
	to,
});
const out = (j: number, k: number, m: number): Check => ({
	kind: 'out',
	name: 'out',
	tolerance: 0.1,
	plane: [j, k],
	to: { straight: m },
});
const width = (j: number, k: number, surface: 'outside' | 'inside' | 'center' = 'center'): Check => ({
	kind: 'width',
	name: 'width',
	tolerance: 0.1,
	from: j,
	to: { straight: k },
	surface,
});
const ovality: Check = { kind: 'ovality', name: 'ovality', tolerance: 0.1, bend: 2 };

/** `[angle, rotation]` each, between straights of these lengths, all of radius 6. */
const tube = (straights: number[], bends: [number, number][]): Shape => ({
	straights,
	bends: bends.map(([angle, rotation]) => ({ angle, rotation, radius: 6 })),
});

describe('width', () => {
	// By hand: two quarter bends of 6 in and 10 in between them.
	const u = tube(
		[20, 10, 18],
		[
			[90, 0],
			[90, 0],
		],
	);

	it('is how far apart two straights run: center to center, over the outsides, between the insides', () => {
		expect(checkValue(width(1, 3), u, TUBE)).toBeCloseTo(22, 12);
		expect(checkValue(width(1, 3, 'outside'), u, TUBE)).toBeCloseTo(23.5, 12);
		expect(checkValue(width(1, 3, 'inside'), u, TUBE)).toBeCloseTo(20.5, 12);
		expect(checkAfter(width(1, 3), 2)).toBe(2);
	});

	it('of an offset is its rise', () => {
		// Offset of 9 in at 30 degrees, 2 R (1 - cos 30) + L sin 30.
		const offset = tube(
			[20, 9, 18],
			[
				[30, 0],
				[30, 180],
			],
		);
		expect(checkValue(width(1, 3), offset, TUBE)).toBeCloseTo(12 * (1 - Math.cos(30 * rad)) + 4.5, 12);
	});

	it('is taken at the start of the later straight, square to the line of the other', () => {
		const open = tube(
			[20, 10, 18],
			[
				[90, 0],
				[89, 0],
			],
		);
		// A degree short of parallel: bend 2 ends 6 sin 89 further up and 6 (1 - cos 89) in.
		expect(checkValue(width(1, 3), open, TUBE)).toBeCloseTo(6 + 10 + 6 * Math.sin(89 * rad), 12);
	});
});

describe('drop in one plane', () => {
	// A shallow hat: down by 25, back by 40. By formula: the run falls R(1-cos 25) in bend 1, L sin 25 along the straight, and
	// R(1-cos 25) more in bend 2 up to where it runs level.
	const hat = tube(
		[10, 9, 12],
		[
			[25, 0],
			[40, 180],
		],
	);
	const crown = 2 * 6 * (1 - Math.cos(25 * rad)) + 9 * Math.sin(25 * rad);

	it('to a bend is the depth where the tube runs level again, inside the arc', () => {
		expect(checkValue(drop(1, { bend: 2 }), hat, TUBE)).toBeCloseTo(crown, 12);
		expect(hasCrown(drop(1, { bend: 2 }), hat)).toBe(true);
	});

	it.each([6, 12, 15, 20, 24, 30, 40])('finds the crown in the very middle of an arc: back by twice %d', (slope) => {
		const even = tube(
			[10, 9, 12],
			[
				[slope, 0],
				[2 * slope, 180],
			],
		);
		const depth = 2 * 6 * (1 - Math.cos(slope * rad)) + 9 * Math.sin(slope * rad);
		expect(checkValue(drop(1, { bend: 2 }), even, TUBE)).toBeCloseTo(depth, 12);
	});

	it('to a straight is the depth of its start', () => {
		const start = crown - 6 * (1 - Math.cos(15 * rad));
		expect(checkValue(drop(1, { straight: 3 }), hat, TUBE)).toBeCloseTo(start, 12);
		expect(checkValue(drop(1, { straight: 2 }), hat, TUBE)).toBeCloseTo(6 * (1 - Math.cos(25 * rad)), 12);
	});

	it('across the surface adds half the diameter on either side, the far one as the tube leans', () => {
		expect(checkValue(drop(1, { bend: 2 }, 'across'), hat, TUBE)).toBeCloseTo(crown + 1.5, 9);
		const start = checkValue(drop(1, { straight: 3 }), hat, TUBE);
		expect(checkValue(drop(1, { straight: 3 }, 'across'), hat, TUBE)).toBeCloseTo(
			start + 0.75 * (1 + Math.cos(15 * rad)),
			12,
		);
	});

	it('takes the acute angle where the tube has turned back past square', () => {
		const hook = tube([10, 5], [[150, 0]]);
		const depth = 6 * (1 - Math.cos(150 * rad));
		expect(checkValue(drop(1, { straight: 2 }, 'across'), hook, TUBE)).toBeCloseTo(
			depth + 0.75 * (1 + Math.cos(30 * rad)),
			12,
		);
	});

	it('of a 90 and more is its radius and what lies beyond, at the end of the arc', () => {
		const ell = tube([10, 5], [[90, 0]]);
		expect(checkValue(drop(1, { bend: 1 }), ell, TUBE)).toBeCloseTo(6, 12);
	});

	it('has a crown at the very end of an offset, none where the tube still falls', () => {
		const offset = tube(
			[10, 9, 12],
			[
				[30, 0],
				[30, 180],
			],
		);
		const falling = tube(
			[10, 9, 12],
			[
				[30, 0],
				[20, 180],
			],
		);
		expect(hasCrown(drop(1, { bend: 2 }), offset)).toBe(true);
		expect(hasCrown(drop(1, { bend: 2 }), falling)).toBe(false);
		expect(hasCrown(drop(1, { straight: 3 }), falling)).toBe(true);
		const end = 6 * (1 - Math.cos(30 * rad)) + 9 * Math.sin(30 * rad) + 6 * (Math.cos(10 * rad) - Math.cos(30 * rad));
		expect(checkValue(drop(1, { bend: 2 }), falling, TUBE)).toBeCloseTo(end, 12);
	});

	it('has a crown where the tube comes back against the straight', () => {
		const back = tube(
			[10, 4, 10],
			[
				[100, 0],
				[90, 0],
			],
		);
		expect(hasCrown(drop(1, { bend: 2 }), back)).toBe(true);
	});

	it('bent on past the line is measured on either side of it', () => {
		// Bend 2 turns the other way for long enough to cross the line of straight 1 and lie farther below than it was above.
		const crossing = tube(
			[10, 0, 5],
			[
				[20, 0],
				[120, 180],
			],
		);
		const lowest = frames(crossing).arcs[1]!.end[1];
		expect(lowest).toBeLessThan(-1);
		expect(checkValue(drop(1, { bend: 2 }), crossing, TUBE)).toBeCloseTo(-lowest, 10);
	});

	it('tells bends of their own radius apart', () => {
		const uneven: Shape = {
			straights: [10, 9, 12],
			bends: [
				{ angle: 25, rotation: 0, radius: 6.1 },
				{ angle: 40, rotation: 180, radius: 5.9 },
			],
		};
		const depth = (6.1 + 5.9) * (1 - Math.cos(25 * rad)) + 9 * Math.sin(25 * rad);
		expect(checkValue(drop(1, { bend: 2 }), uneven, TUBE)).toBeCloseTo(depth, 12);
	});
});

describe('the other checks', () => {
	const ell = tube(
		[10, 8, 12],
		[
			[90, 0],
			[90, 90],
		],
	);

	it('angle lies between the directions', () => {
		expect(checkValue(angle(1, 2), ell, TUBE)).toBe(90);
		expect(checkValue(angle(1, 3), ell, TUBE)).toBe(90);
		const hat = tube(
			[10, 9, 12],
			[
				[25, 0],
				[40, 180],
			],
		);
		expect(checkValue(angle(1, 3), hat, TUBE)).toBeCloseTo(15, 12);
		expect(checkValue(angle(3, 1), hat, TUBE)).toBeCloseTo(15, 12);
	});

	it('span runs from corner to corner and to the finished ends', () => {
		// Corners (0,0,0) (16,0,0) (16,20,0) (16,20,18).
		expect(checkValue(span({ bend: 1 }, { bend: 2 }), ell, TUBE)).toBeCloseTo(20, 12);
		expect(checkValue(span({ end: 'start' }, { bend: 2 }), ell, TUBE)).toBeCloseTo(Math.hypot(16, 20), 12);
		expect(checkValue(span({ end: 'far' }, { end: 'start' }), ell, TUBE)).toBeCloseTo(Math.hypot(16, 20, 18), 12);
	});

	it('out is signed by the plane normal t_j x t_k', () => {
		// Straights 1 and 2 lie in z = 0, normal +z; straight 3 starts one radius above it.
		expect(checkValue(out(1, 2, 3), ell, TUBE)).toBeCloseTo(6, 12);
		expect(checkValue(out(2, 1, 3), ell, TUBE)).toBeCloseTo(-6, 12);
		const below = tube(
			[10, 8, 12],
			[
				[90, 0],
				[90, -90],
			],
		);
		expect(checkValue(out(1, 2, 3), below, TUBE)).toBeCloseTo(-6, 12);
	});

	it('out on parallel straights is an error, not a number', () => {
		const offset = tube(
			[10, 9, 12],
			[
				[90, 0],
				[90, 0],
			],
		);
		const straightBack: Shape = { ...offset, bends: offset.bends.map((bend) => ({ ...bend, angle: 90 })) };
		expect(() => checkValue(out(1, 3, 2), straightBack, TUBE)).toThrow(RangeError);
	});

	it('ovality is designed round', () => {
		expect(checkValue(ovality, ell, TUBE)).toBe(1);
	});
});

describe('the bend after which a check is due', () => {
	it.each<[Check, number]>([
		[drop(1, { bend: 2 }), 2],
		[drop(4, { bend: 2 }), 3],
		[drop(1, { straight: 3 }), 2],
		[angle(2, 5), 4],
		[span({ bend: 3 }, { bend: 1 }), 3],
		[span({ end: 'start' }, { bend: 2 }), 2],
		[span({ end: 'start' }, { end: 'far' }), 6],
		[out(1, 2, 5), 4],
		[ovality, 2],
	])('of %j is %d of 6', (check, after) => {
		expect(checkAfter(check, 6)).toBe(after);
	});
});

describe('checks on tubes in space', () => {
	let kernel: Kernel;
	beforeAll(async () => {
		kernel = await Kernel.load();
	});
	const metric = { od: 40 };
	const anyThree = anyTube({ bends: { min: 3, max: 5 }, angle: { min: 20, max: 150 } });

	/** Distance of a point from the line of straight 1, +x through the origin, far beyond the tube at both ends. */
	const fromFirstLine = (point: Point) => kernel.pointDistance(point, kernel.segment([-1e5, 0, 0], [1e5, 0, 0]));

	it('have the drop to a straight that the kernel measures', () => {
		fc.assert(
			fc.property(anyThree, (shape) => {
				const depth = fromFirstLine(frames(shape).straights[2]!.start);
				expect(checkValue(drop(1, { straight: 3 }), shape, metric)).toBeCloseTo(depth, 7);
			}),
			{ seed: 51, numRuns: 30 },
		);
	});

	it('have the drop to a bend that no point of the kernel arc exceeds, and one of them reaches', () => {
		fc.assert(
			fc.property(anyThree, (shape) => {
				const arc = frames(shape).arcs[2]!;
				const depths = kernel.pointsAlong(kernel.arc(arc.start, arc.tangent, arc.end), 2000).map(fromFirstLine);
				const depth = checkValue(drop(1, { bend: 3 }), shape, metric);
				const greatest = Math.max(...depths);
				expect(depth).toBeGreaterThan(greatest - 1e-7);
				// Between 1000 places on an arc of up to 400 the distance rises by under (400/1000)^2 / (8 R).
				expect(depth).toBeLessThan(greatest + 2e-4);
			}),
			{ seed: 52, numRuns: 6 },
		);
	});

	it('have the spans that the kernel measures', () => {
		fc.assert(
			fc.property(anyThree, (shape) => {
				const at = corners(shape);
				const whole = checkValue(span({ end: 'start' }, { end: 'far' }), shape, metric);
				expect(whole).toBeCloseTo(kernel.length(kernel.wire([kernel.segment(at[0]!, at.at(-1)!)])), 7);
				const inner = checkValue(span({ bend: 1 }, { bend: 3 }), shape, metric);
				expect(inner).toBeCloseTo(kernel.length(kernel.wire([kernel.segment(at[1]!, at[3]!)])), 7);
			}),
			{ seed: 53, numRuns: 30 },
		);
	});

	it('mirrored in the first plane, change the sign of out and nothing else', () => {
		fc.assert(
			fc.property(anyThree, (shape) => {
				const flat = { ...shape, bends: shape.bends.map((bend, i) => (i === 0 ? { ...bend, rotation: 0 } : bend)) };
				const mirrored = { ...flat, bends: flat.bends.map((bend) => ({ ...bend, rotation: -bend.rotation })) };
				const value = (check: Check, of: Shape) => checkValue(check, of, metric);
				expect(value(out(1, 2, 4), mirrored)).toBeCloseTo(-value(out(1, 2, 4), flat), 8);
				for (const check of [drop(1, { bend: 3 }), angle(1, 4), span({ bend: 1 }, { end: 'far' })]) {
					expect(value(check, mirrored)).toBeCloseTo(value(check, flat), 8);
				}
			}),
			{ seed: 54, numRuns: 50 },
		);
	});
});
