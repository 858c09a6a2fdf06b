import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { checkAfter, checkValue } from '../../src/tube/checks.ts';
import { corners, frames, shapeEnd } from '../../src/tube/frames.ts';
import { fromFar } from '../../src/tube/from-far.ts';
import type { Check, Job, Point } from '../../src/tube/job.ts';
import { cutLength } from '../../src/tube/marks.ts';
import { mirrored } from '../../src/tube/mirror.ts';
import { bendsToPoints } from '../../src/tube/points.ts';
import { finishedShape } from '../../src/tube/resolve.ts';
import type { Shape } from '../../src/tube/shape.ts';
import { asBent } from '../../src/tube/turned-job.ts';
import { cross, distance, dot, subtract } from '../../src/tube/vector.ts';
import { warnings } from '../../src/tube/warnings.ts';
import { warningWords } from '../../src/words/warnings.ts';
import { Kernel } from '../helpers/shop/kernel.ts';
import { byBends, plainJob } from '../helpers/shop/plain-job.ts';
import { anyTube } from '../helpers/shop/tubes.ts';

const shapeOf = (job: Job): Shape => finishedShape(job, { value: job.tooling.growth ?? 1 });

/** A check of every kind and of every place that one may name, on a tube of four bends. */
const CHECKS: Check[] = [
	{ kind: 'drop', from: 1, to: { bend: 3 }, surface: 'across' },
	{ kind: 'drop', from: 2, to: { straight: 4 }, surface: 'centre' },
	{ kind: 'drop', from: 5, to: { straight: 1 }, surface: 'across' },
	{ kind: 'angle', between: [1, 4] },
	{ kind: 'span', from: { bend: 1 }, to: { bend: 4 } },
	{ kind: 'span', from: { end: 'start' }, to: { bend: 3 } },
	{ kind: 'span', from: { bend: 2 }, to: { end: 'far' } },
	{ kind: 'out', plane: [1, 2], to: { straight: 5 } },
	{ kind: 'out', plane: [4, 2], to: { straight: 2 } },
	{ kind: 'width', from: 1, to: { straight: 4 }, surface: 'outside' },
	{ kind: 'overall', axis: 'x' },
	{ kind: 'overall', axis: 'y' },
	{ kind: 'overall', axis: 'z' },
	{ kind: 'ovality', bend: 2 },
].map((check, i) => ({ name: `check ${i + 1}`, tolerance: 0.5, ...check }) as Check);

/** Any tube of four bends, given by bends or by points. */
const anyJob = fc
	.record({ tube: anyTube({ bends: { min: 4, max: 4 } }), points: fc.boolean() })
	.map(({ tube, points }) => {
		const list = tube.bends.map(({ angle, rotation }, i) => ({ straight: tube.straights[i]!, angle, rotation }));
		const last = tube.straights[4]!;
		return plainJob({
			units: 'mm',
			shape: points
				? { kind: 'points', points: bendsToPoints({ bends: list, last }, 152) }
				: { kind: 'bends', bends: list, last },
			tooling: { clr: 152, stretch: 0.004, markOffset: 6 },
			trim: { start: 25, end: 40 },
			checks: CHECKS,
		});
	});

const closeTo = (a: Point, b: Point, within = 1e-7) => expect(distance(a, b)).toBeLessThan(within);
const valuesOf = (job: Job): number[] => job.checks.map((check) => checkValue(check, shapeOf(job), job.tube));

describe('the opposite part', () => {
	it('has the corners of the drawing seen in a mirror', () => {
		fc.assert(
			fc.property(anyJob, (job) => {
				const drawn = corners(shapeOf(job));
				const opposite = corners(shapeOf(mirrored(job)));
				// Straight 1 along +x, bend 1 at its rotation from +y: the mirror lies in the plane z = 0.
				for (const [i, [x, y, z]] of drawn.entries()) closeTo(opposite[i]!, [x, y, -z]);
			}),
			{ seed: 81, numRuns: 60 },
		);
	});

	it('is mirrored twice the job again, the rotation of half a turn too', () => {
		const job = plainJob({
			shape: byBends(
				[
					[10, 30, 12],
					[11, 40, 180],
					[12, 50, 0],
				],
				9,
			),
		});
		expect(mirrored(mirrored(job))).toEqual(job);
		expect(mirrored(job).bentAs).toEqual({ mirror: true, from: 'start' });
		const { shape } = mirrored(job);
		expect(shape.kind === 'bends' && shape.bends.map((bend) => bend.rotation)).toEqual([-12, 180, 0]);
	});

	it('keeps every design value, the height out of a plane with the other sign', () => {
		fc.assert(
			fc.property(anyJob, (job) => {
				const drawn = valuesOf(job);
				for (const [i, value] of valuesOf(mirrored(job)).entries()) {
					const sign = CHECKS[i]!.kind === 'out' ? -1 : 1;
					expect(value).toBeCloseTo(sign * drawn[i]!, 7);
				}
			}),
			{ seed: 82, numRuns: 60 },
		);
	});
});

describe('the tube begun at its far end', () => {
	/** A point in the frame that the first straight and the plane of the first bend (its rotation 0) span. */
	function seenFrom(end: { at: Point; ahead: Point; aside: Point }, point: Point): Point {
		const from = subtract(point, end.at);
		return [dot(from, end.ahead), dot(from, end.aside), dot(from, cross(end.ahead, end.aside))];
	}

	it('is the same tube: its corners are the drawing’s, met in the other order', () => {
		fc.assert(
			fc.property(anyJob, (job) => {
				const drawn = shapeOf(job);
				const turned = shapeOf(fromFar(job));
				const { arcs } = frames(drawn);
				const { end, direction } = shapeEnd(drawn);
				// Looking back from the far end the last bend curls toward its own center, as it does from the start end.
				const back: Point = [-direction[0], -direction[1], -direction[2]];
				const frame = { at: end, ahead: back, aside: arcs.at(-1)!.endNormal };
				const first = frames(turned).arcs[0]!;
				const own = { at: [0, 0, 0] as Point, ahead: [1, 0, 0] as Point, aside: first.normal };
				const there = corners(drawn).toReversed();
				for (const [i, corner] of corners(turned).entries()) closeTo(seenFrom(own, corner), seenFrom(frame, there[i]!));
				expect(cutLength(fromFar(job), turned)).toBeCloseTo(cutLength(job, drawn), 7);
			}),
			{ seed: 83, numRuns: 60 },
		);
	});

	it('is turned twice the job again', () => {
		fc.assert(
			fc.property(anyJob, (job) => {
				expect(fromFar(fromFar(job))).toEqual(job);
				expect(asBent(job, { mirror: false, from: 'start' })).toBe(job);
				expect(mirrored(fromFar(job))).toEqual(fromFar(mirrored(job)));
				expect(fromFar(mirrored(job)).bentAs).toEqual({ mirror: true, from: 'far' });
			}),
			{ seed: 84, numRuns: 30 },
		);
	});

	it('keeps every design value', () => {
		fc.assert(
			fc.property(anyJob, (job) => {
				const drawn = valuesOf(job);
				for (const [i, value] of valuesOf(fromFar(job)).entries()) expect(value).toBeCloseTo(drawn[i]!, 7);
			}),
			{ seed: 85, numRuns: 60 },
		);
	});

	it('counts straights, bends, ends and trims from there', () => {
		const shape = byBends(
			[
				[10, 30, 5],
				[11, 40, 60],
				[12, 50, -70],
				[13, 60, 80],
			],
			14,
		);
		const job = fromFar(plainJob({ shape, trim: { start: 1, end: 2 }, checks: CHECKS }));
		expect(job.shape).toEqual(
			byBends(
				[
					[14, 60, 5],
					[13, 50, 80],
					[12, 40, -70],
					[11, 30, 60],
				],
				10,
			),
		);
		expect(job.trim).toEqual({ start: 2, end: 1 });
		expect(job.checks.map(({ name, tolerance, ...what }) => what)).toEqual([
			{ kind: 'drop', from: 5, to: { bend: 2 }, surface: 'across' },
			{ kind: 'drop', from: 4, to: { straight: 2, at: 'end' }, surface: 'centre' },
			{ kind: 'drop', from: 1, to: { straight: 5, at: 'end' }, surface: 'across' },
			{ kind: 'angle', between: [5, 2] },
			{ kind: 'span', from: { bend: 4 }, to: { bend: 1 } },
			{ kind: 'span', from: { end: 'far' }, to: { bend: 2 } },
			{ kind: 'span', from: { bend: 3 }, to: { end: 'start' } },
			{ kind: 'out', plane: [5, 4], to: { straight: 1, at: 'end' } },
			{ kind: 'out', plane: [2, 4], to: { straight: 4, at: 'end' } },
			{ kind: 'width', from: 5, to: { straight: 2, at: 'end' }, surface: 'outside' },
			{ kind: 'overall', axis: 'x', at: 'end' },
			{ kind: 'overall', axis: 'y', at: 'end' },
			{ kind: 'overall', axis: 'z', at: 'end' },
			{ kind: 'ovality', bend: 3 },
		]);
		// A straight's end is there with the bend after it; the far end with the last.
		expect(job.checks.map((check) => checkAfter(check, 4))).toEqual([4, 3, 4, 4, 4, 4, 3, 4, 4, 4, 4, 4, 4, 3]);
	});

	it('is warned of in the numbers as bent, at the places of the file', () => {
		const shape = byBends(
			[
				[10, 30, 0],
				[5, 40, 0],
				[3, 50, 0],
			],
			14,
		);
		const job = fromFar(plainJob({ shape, tooling: { clamp: 4 } }));
		const found = warnings(job, shapeOf(job), { value: 1, from: 'job' }, (angle) => angle);
		expect(found).toMatchObject([{ at: 'shape.bends[2].straight', code: 'short-clamp' }]);
		expect(warningWords(found[0]!, plainJob())).toContain('Bend 2: the clamp needs 4 in');
	});
});

describe('against the OpenCASCADE kernel', () => {
	let kernel: Kernel;
	beforeAll(async () => {
		kernel = await Kernel.load();
	});

	/** Every distance and every handed volume that four corners in a row span tells two tubes apart, wherever they lie. */
	function inKernel(job: Job) {
		const shape = shapeOf(job);
		const points = corners(shape);
		const wire = kernel.spine(
			points,
			shape.bends.map((bend) => bend.radius),
		);
		const apart = points.map((point) => kernel.pointDistance(point, kernel.segment(points[0]!, points.at(-1)!)));
		const volumes = points.slice(3).map((d, i) => {
			const [a, b, c] = [points[i]!, points[i + 1]!, points[i + 2]!];
			return dot(subtract(b, a), cross(subtract(c, a), subtract(d, a)));
		});
		return { length: kernel.length(wire), apart, volumes };
	}

	it('the turned tube has the same length and the same hand, the mirrored one the other', () => {
		fc.assert(
			fc.property(anyJob, (job) => {
				const drawn = inKernel(job);
				const turned = inKernel(fromFar(job));
				const opposite = inKernel(mirrored(job));
				expect(turned.length / drawn.length).toBeCloseTo(1, 10);
				expect(opposite.length / drawn.length).toBeCloseTo(1, 10);
				for (const [i, apart] of drawn.apart.entries()) {
					expect(turned.apart.at(-1 - i)).toBeCloseTo(apart, 6);
					expect(opposite.apart[i]).toBeCloseTo(apart, 6);
				}
				for (const [i, volume] of drawn.volumes.entries()) {
					expect(turned.volumes.at(-1 - i)! - volume).toBeLessThan(1e-6 * (1 + Math.abs(volume)));
					expect(Math.abs(turned.volumes.at(-1 - i)! - volume)).toBeLessThan(1e-6 * (1 + Math.abs(volume)));
					expect(Math.abs(opposite.volumes[i]! + volume)).toBeLessThan(1e-6 * (1 + Math.abs(volume)));
				}
			}),
			{ seed: 86, numRuns: 15 },
		);
	});
});
