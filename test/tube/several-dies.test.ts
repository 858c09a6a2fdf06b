import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { jobEnds } from '../../src/session/plan/ends.ts';
import { jobWarnings } from '../../src/session/plan/job-warnings.ts';
import { toolingOfDie } from '../../src/tube/dies.ts';
import { fromFar } from '../../src/tube/from-far.ts';
import { byDie } from '../../src/tube/growth.ts';
import type { Job, Point } from '../../src/tube/job.ts';
import { layout } from '../../src/tube/layout.ts';
import { mirrored } from '../../src/tube/mirror.ts';
import { Kernel } from '../helpers/shop/kernel.ts';
import { builtForward } from '../helpers/shop/kernel-tube.ts';
import { along, apart, less, meeting } from '../helpers/shop/lines.ts';
import { plainJob } from '../helpers/shop/plain-job.ts';
import { twoDieJob } from '../helpers/shop/two-dies.ts';

let kernel: Kernel;
beforeAll(async () => {
	kernel = await Kernel.load();
});

const DIES = ['own', 'second', 'third'] as const;
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });

const anyDie = fc.record({
	clr: number(100, 170),
	growth: number(0.98, 1.05),
	stretch: number(0, 0.006),
	markOffset: number(-6, 6),
});
const anyBend = fc.record({
	straight: number(220, 400),
	angle: number(20, 100),
	rotation: number(-179, 180),
	die: fc.constantFrom(...DIES),
});
const anyTwoDieJob = fc.record({
	dies: fc.tuple(anyDie, anyDie, anyDie),
	bends: fc.array(anyBend, { minLength: 1, maxLength: 5 }),
	drawn: fc.option(number(110, 160), { nil: undefined }),
});
type Drawn = typeof anyTwoDieJob extends fc.Arbitrary<infer T> ? T : never;

const TRIM = { start: 30, end: 12 };

function jobOf({ dies: [own, second, third], bends, drawn }: Drawn): Job {
	return plainJob({
		units: 'mm',
		tube: { ...plainJob().tube, od: 38, wall: 2 },
		shape: {
			kind: 'bends',
			// The job's own die may be named or not.
			bends: bends.map(({ die, ...bend }, i) => ({ ...bend, ...(die === 'own' && i % 2 === 0 ? {} : { die }) })),
			last: 250,
			...(drawn === undefined ? {} : { radius: drawn }),
		},
		tooling: { ...own, die: 'own', dies: { second, third }, tape: 1 },
		trim: TRIM,
	});
}

const ENDS = {
	start: { possible: true, hindrances: [], left: 0 },
	far: { possible: true, hindrances: [], left: 0 },
	better: null,
};
const laid = (job: Job) =>
	layout(
		job,
		byDie(job, (die) => ({ value: toolingOfDie(job, die).growth!, from: 'job' as const })),
		[],
		ENDS,
	);

/** Marks and cut length as the kernel measures them along the center line of a tube between the drawing's corners, each arc of its own die. */
function kernelSays({ dies, bends, drawn }: Drawn) {
	const of = (name: (typeof DIES)[number]) => dies[DIES.indexOf(name)]!;
	const shape = {
		straights: [...bends.map(({ straight }) => straight), 250],
		bends: bends.map(({ angle, rotation, die }) => ({ angle, rotation, radius: drawn ?? of(die).clr })),
	};
	const { starts, ends, directions, end } = builtForward(kernel, shape);
	const corners = bends.map((_, i) => meeting(ends[i]!, directions[i]!, starts[i + 1]!, directions[i + 1]!));
	const points = [starts[0]!, ...corners, end];
	const radii = bends.map(({ die }) => of(die).clr * of(die).growth);
	const back = (i: number) => radii[i]! * Math.tan((bends[i]!.angle * Math.PI) / 360);
	const to = (count: number, last: Point) =>
		kernel.length(kernel.spine([...points.slice(0, count + 1), last], radii.slice(0, count)));
	let spared = 0;
	const marks = bends.map(({ die }, i) => {
		const [before, corner, after] = [points[i]!, points[i + 1]!, points[i + 2]!];
		const begins = to(i, along(corner, -back(i) / apart(before, corner), less(corner, before)));
		const ending = to(i + 1, after) - (apart(corner, after) - back(i));
		const mark = TRIM.start + begins - spared - of(die).markOffset;
		const arc = ending - begins;
		spared += arc - arc / (1 + of(die).stretch);
		return { mark, endsAt: TRIM.start + ending - spared };
	});
	return { points, radii, marks, cut: TRIM.start + TRIM.end + to(bends.length, end) - spared, of };
}

describe('a tube of several dies, against the kernel', () => {
	it('has its marks and cut length by each bend’s own radius, stretch and offset, between the drawing’s corners, from either end', () => {
		fc.assert(
			fc.property(anyTwoDieJob, (drawn) => {
				const job = jobOf(drawn);
				const { marks, cut, points, radii, of } = kernelSays(drawn);
				const document = laid(job);
				expect(document.cutLength).toBeCloseTo(cut, 6);
				for (const [i, { mark, radius, setback }] of document.bends.entries()) {
					expect(mark.fromStart).toBeCloseTo(marks[i]!.mark, 6);
					expect(radius).toBeCloseTo(radii[i]!, 9);
					expect(setback).toBeCloseTo(radii[i]! * Math.tan((drawn.bends[i]!.angle * Math.PI) / 360), 9);
				}
				// Bend 1's rotation sets its plane, which no distance between corners knows.
				for (const [i, corner] of document.corners.entries())
					expect(apart(document.corners[0]!, corner)).toBeCloseTo(apart(points[0]!, points[i]!), 6);
				// Begun at the far end, a bend begins where it ended.
				const far = laid(fromFar(job))
					.bends.map(({ mark }) => mark.fromStart)
					.toReversed();
				for (const [i, mark] of far.entries())
					expect(mark).toBeCloseTo(cut - marks[i]!.endsAt - of(drawn.bends[i]!.die).markOffset, 6);
			}),
			{ seed: 151, numRuns: 20 },
		);
	});
});

describe('a tube of several dies', () => {
	it('for the other hand has the same marks and dies, each turn the other way; turned end for end twice it is the job again', () => {
		fc.assert(
			fc.property(anyTwoDieJob, (drawn) => {
				const job = jobOf(drawn);
				const [own, other] = [laid(job), laid(mirrored(job))];
				expect(other.bends.map(({ mark, die, radius }) => ({ mark, die, radius }))).toEqual(
					own.bends.map(({ mark, die, radius }) => ({ mark, die, radius })),
				);
				expect(other.cutLength).toBe(own.cutLength);
				expect(fromFar(fromFar(job))).toEqual(job);
				const dies = laid(fromFar(job)).bends.map(({ die }) => die);
				expect(dies.toReversed()).toEqual(own.bends.map(({ die }) => die));
			}),
			{ seed: 152, numRuns: 60 },
		);
	});

	it('with growth 1 and no drawn radius has its straights as given', () => {
		const { bends } = laid(twoDieJob({ tooling: { growth: 1 } }));
		expect(bends.map(({ straight, radius, die }) => ({ straight, radius, die }))).toEqual([
			{ straight: 10, radius: 4.5, die: 'tight' },
			{ straight: 14, radius: 7, die: 'wide' },
			{ straight: 15, radius: 7, die: 'wide' },
			{ straight: 13, radius: 4.5, die: 'tight' },
		]);
	});

	it('whose bends all name the job’s own die is as if none were named', () => {
		const { shape, ...job } = twoDieJob({ tooling: { growth: 1.02 } });
		if (shape.kind !== 'bends') throw new Error('the rail is drawn by bends');
		const on = (die?: string): Job => ({
			...job,
			shape: { ...shape, bends: shape.bends.map(({ die: _, ...bend }) => ({ ...bend, ...(die && { die }) })) },
		});
		expect(laid(on('wide'))).toEqual(laid(on()));
		expect(laid(on()).bends[0]).not.toHaveProperty('die');
	});
});

describe('warnings of a tube of several dies', () => {
	const grown = { value: 1, from: 'job', dies: { tight: { value: 1, from: 'job' } } } as const;
	const codes = (job: Job) =>
		jobWarnings(job, grown).map(
			(warning) => `${warning.code} ${warning.at}${'bend' in warning ? ` ${warning.bend}` : ''}`,
		);

	it('hold each bend against its own die: clamp, tube behind, dial, floor and radius', () => {
		expect(codes(twoDieJob())).toEqual([]);
		// To bend 1's mark 11 in, to bend 4's 13; on the wide die 14 and 15.
		expect(codes(twoDieJob({}, { clamp: 12 }))).toEqual(['short-clamp shape.bends[0].straight 1']);
		expect(codes(twoDieJob({ tooling: { clamp: 14.5 } }, { clamp: 2 }))).toEqual([
			'short-clamp shape.bends[1].straight 2',
		]);
		// A mark that lies an inch before the bend leaves so much less.
		expect(codes(twoDieJob({}, { clamp: 12.5, markOffset: 1 }))).toEqual([
			'short-clamp shape.bends[0].straight 1',
			'short-clamp shape.bends[3].straight 4',
		]);
		// The last bend is on the tight die, 12 in before the raw far end.
		expect(codes(twoDieJob({ tooling: { follow: 13 } }, { follow: 3 }))).toEqual([]);
		expect(codes(twoDieJob({}, { follow: 13 }))).toEqual(['short-follow shape.last 4']);
		expect(codes(twoDieJob({}, { maxAngle: 62 }))).toEqual([
			'dial-limit shape.bends[0].angle 1',
			'dial-limit shape.bends[3].angle 4',
		]);
		expect(codes(twoDieJob({ tooling: { maxAngle: 35 } }, { maxAngle: 180 }))).toEqual([
			'dial-limit shape.bends[2].angle 3',
		]);
		expect(codes(twoDieJob({}, { clr: 4.4 }))).toEqual(['tight-radius tooling.dies.tight.clr']);
		expect(codes(twoDieJob({}, { floor: 5 }))).toEqual(['floor-contact tooling.dies.tight.floor 4']);
	});

	it('say which end is better for the dies as they are', () => {
		// Begun at the far end, bend 1 is the last: 11 in behind it.
		const { start, far } = jobEnds(twoDieJob({}, { follow: 11.5 }), grown);
		expect([start.possible, far.possible]).toEqual([true, false]);
	});
});
