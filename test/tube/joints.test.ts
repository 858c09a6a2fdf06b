import { beforeAll, describe, expect, it } from 'vitest';
import { draws } from '../../src/practice/random.ts';
import { shapeEnd } from '../../src/tube/frames.ts';
import { fromFar } from '../../src/tube/from-far.ts';
import type { Cope, Point } from '../../src/tube/job.ts';
import { joints } from '../../src/tube/joints.ts';
import { mirrored } from '../../src/tube/mirror.ts';
import { finishedShape } from '../../src/tube/resolve.ts';
import { distance, dot, subtract, unit } from '../../src/tube/vector.ts';
import { Kernel } from '../helpers/shop/kernel.ts';
import { byBends, plainJob } from '../helpers/shop/plain-job.ts';

const cope = (parts: Partial<Cope>): { cope: Cope } => ({ cope: { od: 1.5, angle: 90, offset: 0, turn: 0, ...parts } });
const shape = byBends(
	[
		[20, 40, 0],
		[15, 70, 65],
		[12, 30, -130],
	],
	18,
);

describe('the tube that an end meets', () => {
	let kernel: Kernel;
	beforeAll(async () => {
		kernel = await Kernel.load();
	});

	it('lies where the geometry kernel turns it to at the start end', () => {
		for (let seed = 1; seed <= 40; seed++) {
			const draw = draws(seed);
			const [angle, turn, offset] = [draw.uniform(20, 160), draw.uniform(-180, 180), draw.uniform(-1, 1)];
			const job = plainJob({ shape, ends: { start: cope({ angle, turn, offset }) } });
			const [joint] = joints(job, finishedShape(job, { value: 1 }));
			// Straight 1 runs along +x from the origin and bend 1 goes to +y. The ray back along the tube is turned toward the joint line.
			const round = kernel.turn([0, 0, 0], [1, 0, 0], turn);
			const line = kernel.moved([0, 1, 0], round);
			// Looking out along -x with +y up, the right hand is at -z.
			const middle = kernel.moved([0, 0, -offset], round);
			const axis = kernel.moved([1, 0, 0], kernel.turn([0, 0, 0], kernel.moved([0, 0, 1], round), angle));
			expect(dot(axis, line)).toBeGreaterThan(0);
			expect(distance(joint!.middle, middle)).toBeLessThan(1e-9);
			expect(distance(unit(subtract(joint!.to, joint!.from)), axis)).toBeLessThan(1e-9);
		}
	});

	it('lies at the same angle to the last straight at the far end, and past it by the offset', () => {
		const job = plainJob({ shape, ends: { far: cope({ angle: 35, turn: 20, offset: 0.4 }) } });
		const laid = finishedShape(job, { value: 1 });
		const { end, direction } = shapeEnd(laid);
		const [joint] = joints(job, laid);
		expect(dot(unit(subtract(joint!.to, joint!.from)), direction)).toBeCloseTo(-Math.cos((35 * Math.PI) / 180), 9);
		expect(distance(joint!.middle, end)).toBeCloseTo(0.4, 9);
	});

	it('is the same tube begun at the far end, and its mirror image for the other hand', () => {
		const ends = {
			start: cope({ angle: 50, turn: -70, offset: 0.3 }),
			far: cope({ angle: 35, turn: 20, offset: -0.4 }),
		};
		const job = plainJob({ shape, ends });
		const spots = (of: typeof job) => joints(of, finishedShape(of, { value: 1 })).flatMap(({ from, to }) => [from, to]);
		const apart = (places: readonly Point[]) => places.flatMap((a) => places.map((b) => distance(a, b)));
		const [a, b, c, d] = spots(job) as [Point, Point, Point, Point];
		for (const [i, value] of apart([c, d, a, b]).entries()) expect(apart(spots(fromFar(job)))[i]).toBeCloseTo(value, 9);
		for (const [i, value] of apart([a, b, c, d]).entries())
			expect(apart(spots(mirrored(job)))[i]).toBeCloseTo(value, 9);
	});
});
