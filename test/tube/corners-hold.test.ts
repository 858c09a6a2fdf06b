import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { checkValue } from '../../src/tube/checks.ts';
import { fromFar } from '../../src/tube/from-far.ts';
import type { Check, Job, Point, Units } from '../../src/tube/job.ts';
import { cutLength, marks } from '../../src/tube/marks.ts';
import { finishedShape } from '../../src/tube/resolve.ts';
import type { Shape } from '../../src/tube/shape.ts';
import { Kernel } from '../helpers/shop/kernel.ts';
import { builtForward } from '../helpers/shop/kernel-tube.ts';
import { along, apart, less, meeting } from '../helpers/shop/lines.ts';
import { plainJob } from '../helpers/shop/plain-job.ts';
import { anyTube } from '../helpers/shop/tubes.ts';

let kernel: Kernel;
beforeAll(async () => {
	kernel = await Kernel.load();
});

/** The drawing's sharp corners and ends, from where the kernel puts the straights of a tube of the drawing's own radius. */
function drawnCorners(tube: Shape): Point[] {
	const { starts, ends, directions, end } = builtForward(kernel, tube);
	const corners = tube.bends.map((_, i) => meeting(ends[i]!, directions[i]!, starts[i + 1]!, directions[i + 1]!));
	return [starts[0]!, ...corners, end];
}

/** Lengths that the kernel measures along the finished center line: to where each bend begins and ends, and in all. */
function measured(corners: readonly Point[], angles: readonly number[], radius: number) {
	const to = (count: number, last: Point) => {
		const radii = Array.from({ length: count }, () => radius);
		return kernel.length(kernel.spine([...corners.slice(0, count + 1), last], radii));
	};
	return {
		begins: angles.map((angle, i) => {
			const [before, corner] = [corners[i]!, corners[i + 1]!];
			const back = (radius * Math.tan((angle * Math.PI) / 360)) / apart(before, corner);
			return to(i, along(corner, -back, less(corner, before)));
		}),
		// To the corner after it, less the way from its end to there.
		ends: angles.map((angle, i) => {
			const after = corners[i + 2]!;
			return to(i + 1, after) - (apart(corners[i + 1]!, after) - radius * Math.tan((angle * Math.PI) / 360));
		}),
		whole: to(angles.length, corners.at(-1)!),
	};
}

const INCH = 25.4;
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });

/** A tube as drawn, in mm, and what a job says of it; flat ones too. */
const anyDrawing = fc.record({
	tube: anyTube({ bends: { min: 1, max: 5 }, straight: { min: 220, max: 420 }, radius: 150 }),
	isFlat: fc.boolean(),
	units: fc.constantFrom<Units>('in', 'mm'),
	growth: number(0.98, 1.06),
	/** The die's radius over the drawing's. */
	die: fc.oneof(fc.constant(1), number(0.9, 1.1)),
	stretch: fc.constantFrom(0, 0.004),
	by: fc.constantFrom<'bends' | 'points'>('bends', 'points'),
});
type Drawing = typeof anyDrawing extends fc.Arbitrary<infer T> ? T : never;

const TRIM = { start: 30, end: 12 };

/** The drawing in its unit, the job that says it, and the kernel's figures for the tube that it is to become. */
function drawnIn({ tube, isFlat, units, growth, die, stretch, by }: Drawing) {
	const one = units === 'in' ? 1 / INCH : 1;
	const bends = tube.bends.map(({ angle, rotation }, i) => ({
		straight: tube.straights[i]! * one,
		angle,
		// The first bend of points is in its own plane.
		rotation: i === 0 ? 0 : isFlat ? (rotation > 0 ? 180 : 0) : rotation,
	}));
	const last = tube.straights.at(-1)! * one;
	const drawn = 150 * one;
	const corners = drawnCorners({
		straights: [...bends.map(({ straight }) => straight), last],
		bends: bends.map((bend) => ({ ...bend, radius: drawn })),
	});
	const clr = drawn * die;
	const job = plainJob({
		units,
		shape:
			by === 'points'
				? { kind: 'points', points: corners }
				: { kind: 'bends', bends, last, ...(die === 1 ? {} : { radius: drawn }) },
		tooling: { clr, growth, stretch },
		trim: { start: TRIM.start * one, end: TRIM.end * one },
	});
	const angles = bends.map(({ angle }) => angle);
	return { job, corners, angles, one, kernelSays: measured(corners, angles, clr * growth) };
}

const shapeOf = (job: Job) => finishedShape(job, { value: job.tooling.growth! });
const marksOf = (job: Job) => marks(job, shapeOf(job), cutLength(job, shapeOf(job))).map(({ fromStart }) => fromStart);

describe('a job of any growth and any drawn radius, against the kernel', () => {
	it('has marks and cut length of the finished radius between the drawing’s corners, from either end', () => {
		fc.assert(
			fc.property(anyDrawing, (drawing) => {
				const { job, angles, one, kernelSays } = drawnIn(drawing);
				const arcs = angles.map((_, i) => kernelSays.ends[i]! - kernelSays.begins[i]!);
				// Of the raw tube an arc takes so much less.
				const spared = (count: number) =>
					arcs.slice(0, count).reduce((sum, arc) => sum + arc - arc / (1 + drawing.stretch), 0);
				const cut = (TRIM.start + TRIM.end) * one + kernelSays.whole - spared(angles.length);
				expect(cutLength(job, shapeOf(job))).toBeCloseTo(cut, 7);
				const begins = kernelSays.begins.map((length, i) => TRIM.start * one + length - spared(i));
				for (const [i, mark] of marksOf(job).entries()) expect(mark).toBeCloseTo(begins[i]!, 7);
				// Begun at the far end, a bend begins where it ended.
				const ends = kernelSays.ends.map((length, i) => cut - (TRIM.start * one + length - spared(i + 1))).toReversed();
				for (const [i, mark] of marksOf(fromFar(job)).entries()) expect(mark).toBeCloseTo(ends[i]!, 7);
			}),
			{ seed: 91, numRuns: 60 },
		);
	});

	it('has checks between corners and ends as drawn, and a drop to an arc as it comes out', () => {
		let followed = 0;
		fc.assert(
			fc.property(anyDrawing, (drawing) => {
				const { job, corners, angles, one } = drawnIn(drawing);
				const shape = shapeOf(job);
				const value = (check: object) => checkValue({ name: 'x', tolerance: 1, ...check } as Check, shape, job.tube);
				const last = corners.length - 1;
				const name = (k: number) => (k === 0 ? { end: 'start' } : k === last ? { end: 'far' } : { bend: k });
				for (let k = 1; k <= last; k++) {
					const drawn = apart(corners[0]!, corners[k]!);
					expect(value({ kind: 'span', from: name(0), to: name(k) })).toBeCloseTo(drawn, 7);
				}
				// Bend 1 rises from straight 1's line by R (1 - cos a), highest at its end.
				const radius = 150 * one * drawing.die * drawing.growth;
				const rise = radius * (1 - Math.cos((angles[0]! * Math.PI) / 180));
				expect(value({ kind: 'drop', from: 1, to: { bend: 1 }, surface: 'centre' })).toBeCloseTo(rise, 7);
				if (Math.abs(drawing.die * drawing.growth - 1) > 0.01) followed++;
			}),
			{ seed: 92, numRuns: 60 },
		);
		expect(followed).toBeGreaterThan(30);
	});
});
