import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { frames } from '../../src/tube/frames.ts';
import type { Job, Point } from '../../src/tube/job.ts';
import { finishedShape } from '../../src/tube/resolve.ts';
import type { Shape } from '../../src/tube/shape.ts';
import { type Swing, swing, trailing } from '../../src/tube/swing.ts';
import { warnings } from '../../src/tube/warnings.ts';
import { warningWords } from '../../src/words/warnings.ts';
import { hatJob } from '../helpers/shop/hat.ts';
import { Kernel } from '../helpers/shop/kernel.ts';
import { byBends, plainJob } from '../helpers/shop/plain-job.ts';
import { anyTube } from '../helpers/shop/tubes.ts';

const shapeOf = (job: Job): Shape => finishedShape(job, { value: job.tooling.growth ?? 1 });
const RAW = { od: 1.5, trim: 0 };

describe('the swing of the made part, by hand', () => {
	it('at the first bend is a straight tangent to the die: to its start end by Pythagoras', () => {
		const shape = shapeOf(plainJob({ shape: byBends([[8, 90, 0]], 20) }));
		// Die of 6 in: 8 and 6 make 10; half the tube of 1.5 lies outside.
		expect(swing(shape, 1, RAW)).toEqual({ reach: 10.75, above: 0.75, below: 0.75 });
		// With 3.25 of trim still on: 11.25 and 6 make 12.75.
		expect(swing(shape, 1, { od: 1.5, trim: 3.25 }).reach).toBeCloseTo(13.5, 12);
	});

	it('of a flat hat lies in the plane, each bend farther out', () => {
		const shape = shapeOf(hatJob());
		// Bend 2 turns the other way: the die's center lies 6 on the other side of straight 2, which runs from (0, 0) back to (-20, 0).
		// Bend 1's arc of 17 degrees and straight 1 of 16 in leave from there away from that center.
		const turn = (17 * Math.PI) / 180;
		const start: [number, number] = [
			-20 - 6 * Math.sin(turn) - 16 * Math.cos(turn),
			6 * (1 - Math.cos(turn)) + 16 * Math.sin(turn),
		];
		const { reach, above, below } = swing(shape, 2, RAW);
		expect(reach).toBeCloseTo(Math.hypot(start[0], start[1] + 6) + 0.75, 9);
		expect([above, below]).toEqual([expect.closeTo(0.75, 9), expect.closeTo(0.75, 9)]);
		expect(swing(shape, 3, RAW).reach).toBeGreaterThan(reach);
	});

	it('of a leg square to the plane comes out of it by the leg and the radius', () => {
		// An elbow of 90 with a first leg of 10, then a bend whose plane is square to the elbow's: the leg stands upright beyond the clamp.
		const job = (rotation: number) =>
			plainJob({
				shape: byBends(
					[
						[10, 90, 0],
						[7, 45, rotation],
					],
					20,
				),
			});
		const up = swing(shapeOf(job(-90)), 2, RAW);
		const down = swing(shapeOf(job(90)), 2, RAW);
		// Along the upright: the arc rises 6, the leg 10 more. From the axis: 7 of straight and 6 of arc, at 6 aside.
		for (const room of [up, down]) {
			expect(Math.max(room.above, room.below)).toBeCloseTo(16.75, 9);
			expect(Math.min(room.above, room.below)).toBeCloseTo(0.75, 9);
			expect(room.reach).toBeCloseTo(Math.hypot(13, 6) + 0.75, 9);
		}
		// With the die to the left the elbow leaves the leg lying to the left; +90 turns the tube a quarter counterclockwise as
		// seen from the clamp, which takes left down, and -90 clockwise, which takes it up.
		expect(up.above).toBeGreaterThan(up.below);
		expect(down.below).toBeGreaterThan(down.above);
	});

	it('finds the summit of an arc that rises and falls again', () => {
		// Half a turn standing square to the plane: its crown is a radius above the straights' ends.
		const shape = shapeOf(
			plainJob({
				shape: byBends(
					[
						[0.5, 170, 0],
						[9, 40, 90],
					],
					20,
				),
			}),
		);
		const room = swing(shape, 2, RAW);
		// Summit 6 out from straight 2's line toward the center, and 6 more: where the arc runs parallel to the plane's normal it is 12 high.
		const rise = 6 * (1 - Math.cos((170 * Math.PI) / 180)) + 0.5 * Math.sin((170 * Math.PI) / 180);
		expect(Math.max(room.above, room.below)).toBeCloseTo(rise + 0.75, 9);
	});

	it('leaves a bend pulled again with what is made behind it, which stands still', () => {
		const shape = shapeOf(
			plainJob({
				shape: byBends(
					[
						[10, 30, 0],
						[7, 90, -90],
					],
					20,
				),
			}),
		);
		// Behind bend 1: straight 2 in the plane, then a quarter square to it, 6 and 20 high.
		const room = trailing(shape, 1, RAW);
		expect(Math.max(room.above, room.below)).toBeCloseTo(26.75, 9);
	});
});

describe('the swing against the OpenCASCADE kernel', () => {
	let kernel: Kernel;
	beforeAll(async () => {
		kernel = await Kernel.load();
	});

	/** The tube laid into the machine by the kernel: bend's start at the origin, travel +x, die's center at (0, R, 0), up +z. */
	function inMachine(shape: Shape, bend: number): Point[][] {
		const { straights, arcs } = frames(shape);
		const die = arcs[bend - 1]!;
		const edges = [
			...straights.slice(0, bend).map(({ start, end }) => kernel.segment(start, end)),
			...arcs.slice(0, bend - 1).map((arc) => kernel.arc(arc.start, arc.tangent, arc.end)),
		];
		return edges.map((edge) =>
			kernel.pointsAlong(edge, 400).map((point): Point => {
				const from = [0, 1, 2].map((i) => point[i]! - die.start[i]!) as unknown as Point;
				const along = (axis: Point) => from[0] * axis[0] + from[1] * axis[1] + from[2] * axis[2];
				return [along(die.tangent), along(die.normal), along(die.binormal)];
			}),
		);
	}

	it('no place of the turning part goes beyond, and one comes there, at any angle of the die', () => {
		fc.assert(
			fc.property(
				anyTube({ bends: { min: 1, max: 5 } }),
				fc.double({ min: 0, max: 120, noNaN: true }),
				(shape, angle) => {
					for (const bend of shape.bends.keys()) {
						const room: Swing = swing(shape, bend + 1, { od: 42, trim: 0 });
						const radius = shape.bends[bend]!.radius;
						const turn = kernel.turn([0, radius, 0], [0, 0, 1], -angle);
						const points = inMachine(shape, bend + 1)
							.flat()
							.map((point) => kernel.moved(point, turn));
						const reach = Math.max(...points.map(([x, y]) => Math.hypot(x, y - radius))) + 21;
						const high = Math.max(0, ...points.map((point) => point[2])) + 21;
						const low = Math.max(0, ...points.map((point) => -point[2])) + 21;
						for (const [told, found] of [
							[room.reach, reach],
							[room.above, high],
							[room.below, low],
						] as const) {
							expect(found).toBeLessThan(told + 1e-6);
							// The kernel's places lie up to .4 mm apart along an arc: its top is missed by far less.
							expect(found).toBeGreaterThan(told - 0.01);
						}
					}
				},
			),
			{ seed: 87, numRuns: 12 },
		);
	});
});

describe('the floor', () => {
	const job = (floor: number | null, rotation: number) =>
		plainJob({
			shape: byBends(
				[
					[10, 90, 0],
					[7, 45, rotation],
				],
				20,
			),
			tooling: { floor },
		});
	const found = (of: Job) => warnings(of, shapeOf(of), { value: 1, from: 'job' }, (angle) => angle);

	it('is told where a leg of the made part would come through it, and with the die on which side', () => {
		expect(found(job(16, 90))).toMatchObject([{ at: 'tooling.floor', code: 'floor-contact' }]);
		expect(warningWords(found(job(16, 90))[0]!, plainJob())).toContain(
			'Bend 2: with the die to the left of the tube, the made part hangs 16 3/4 in',
		);
		expect(warningWords(found(job(16, -90))[0]!, plainJob())).toContain(
			'Bend 2: with the die to the right of the tube, the made part hangs 16 3/4 in',
		);
	});

	it('is not where there is room, where nobody said how high the die stands, or where the tube is flat', () => {
		expect(found(job(17, -90))).toEqual([]);
		expect(found(job(null, -90))).toEqual([]);
		expect(found(hatJob({ tooling: { ...plainJob().tooling, floor: 10 } }))).toEqual([]);
	});
});
