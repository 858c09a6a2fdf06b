import { describe, expect, it } from 'vitest';
import { corners } from '../../src/tube/frames.ts';
import { cutLength, developedLength, marks } from '../../src/tube/marks.ts';
import { finishedShape } from '../../src/tube/resolve.ts';
import { distance } from '../../src/tube/vector.ts';
import { formatTape } from '../../src/units/tape.ts';
import { byBends, plainJob } from '../helpers/shop/plain-job.ts';

const laidOut = (job: ReturnType<typeof plainJob>) => {
	const shape = finishedShape(job, { value: job.tooling.growth ?? 1 });
	const cut = cutLength(job, shape);
	return { shape, cut, developed: developedLength(job, shape), marks: marks(job, shape, cut) };
};

describe('whole tubes as published', () => {
	// Source: US Navy NAVEDTRA 14119, Hull Maintenance Technician, p. 16-3, fig. 16-3: a 90 at R 18 in, 48 and 72 in to the corner;
	// legs 30 and 54, developed length 112.26 in (with 1.57 for the quarter circle; 112.2743 exactly).
	it('develops the Navy example', () => {
		const points = [
			[0, 0, 0],
			[48, 0, 0],
			[48, 72, 0],
		] as const;
		const job = plainJob({ shape: { kind: 'points', points }, tooling: { clr: 18 } });
		const { shape, developed } = laidOut(job);
		expect(shape.straights).toEqual([30, 54]);
		expect(developed).toBeCloseTo(112.2743, 4);
		expect(Math.abs(developed - 112.26)).toBeLessThan(0.02);
	});

	// Source: NJATC Conduit Fabrication, Level II, Lesson 4, example for questions 34 to 43: R 24 in, OD 2.375, stub 48 and leg 44 to
	// the outside; 22 13/16 and 18 13/16 straight, 37 11/16 of arc, 79 5/16 in all (with 1.57).
	it('develops the conduit example, fractions and all', () => {
		const back = 24 + 2.375 / 2;
		const job = plainJob({
			tube: { ...plainJob().tube, od: 2.375 },
			tooling: { clr: 24 },
			shape: byBends([[48 - back, 90, 0]], 44 - back),
		});
		const {
			shape,
			developed,
			marks: [mark],
		} = laidOut(job);
		const tape = (length: number) => formatTape(length, 1 / 16, 'in');
		expect(mark!.tape).toBe('22 13/16');
		expect(shape.straights.map(tape)).toEqual(['22 13/16', '18 13/16']);
		expect(tape(developed - shape.straights[0]! - shape.straights[1]!)).toBe('37 11/16');
		expect(tape(developed)).toBe('79 5/16');
		expect(Math.abs(developed - 79.305)).toBeLessThan(0.025);
	});

	// Source: FAA-H-8083-31, Airframe vol. 1, ch. 4: legs 1, 2, 1 in with setback 0.2 in have flats 0.8, 1.6, 0.8.
	it('has the flats of the channel example', () => {
		const points = [
			[0, 1, 0],
			[0, 0, 0],
			[2, 0, 0],
			[2, 1, 0],
		] as const;
		const job = plainJob({ shape: { kind: 'points', points }, tooling: { clr: 0.2 } });
		expect(laidOut(job).shape.straights).toEqual([
			expect.closeTo(0.8, 12),
			expect.closeTo(1.6, 12),
			expect.closeTo(0.8, 12),
		]);
	});
});

describe('marks', () => {
	const shape = byBends(
		[
			[10, 90, 0],
			[8, 45, 180],
		],
		7,
	);
	const quarter = (6 * Math.PI) / 2;

	it('lie at the tangents along the raw tube, from the start, from the far end and from the bend before', () => {
		const { marks, cut } = laidOut(plainJob({ shape, trim: { start: 2, end: 3 } }));
		expect(cut).toBeCloseTo(2 + 10 + quarter + 8 + quarter / 2 + 7 + 3, 12);
		expect(marks[0]).toEqual({ fromStart: 12, fromFarEnd: cut - 12, fromLastBend: null, tape: '12' });
		expect(marks[1]!.fromStart).toBeCloseTo(12 + quarter + 8, 12);
		expect(marks[1]!.fromFarEnd).toBeCloseTo(quarter / 2 + 7 + 3, 12);
		expect(marks[1]!.fromLastBend).toBe(8);
	});

	it('move toward the start end by the offset, in all three distances', () => {
		const plain = laidOut(plainJob({ shape }));
		const offset = laidOut(plainJob({ shape, tooling: { markOffset: 0.5 } }));
		expect(offset.cut).toBe(plain.cut);
		offset.marks.forEach((mark, i) => {
			const was = plain.marks[i]!;
			expect(mark.fromStart).toBeCloseTo(was.fromStart - 0.5, 12);
			expect(mark.fromFarEnd).toBeCloseTo(was.fromFarEnd + 0.5, 12);
			if (was.fromLastBend !== null) expect(mark.fromLastBend).toBeCloseTo(was.fromLastBend - 0.5, 12);
		});
	});

	it('reckon with stretch in arcs only, and with growth where the corners hold', () => {
		const { marks, developed } = laidOut(plainJob({ shape, tooling: { stretch: 0.004, growth: 1.02 } }));
		const arc = (quarter * 1.02) / 1.004;
		// A setback grows with the radius, by .12 times 1 at 90 degrees and tan(22.5) at 45.
		const [first, second] = [0.12, 0.12 * Math.tan(Math.PI / 8)];
		expect(marks[1]!.fromStart).toBeCloseTo(10 - first + arc + 8 - first - second, 12);
		expect(developed).toBeCloseTo(25 - 2 * first - 2 * second + 1.5 * arc, 12);
	});

	it('measure from the far end of the piece as really cut', () => {
		const job = plainJob({ shape });
		expect(marks(job, finishedShape(job, { value: 1 }), 50).map((mark) => mark.fromStart + mark.fromFarEnd)).toEqual([
			50, 50,
		]);
	});

	it('read on a tape in mm as whole millimeters', () => {
		const metric = plainJob({ units: 'mm', shape: byBends([[586.6, 30, 0]], 100), tooling: { clr: 150, tape: 1 } });
		expect(laidOut(metric).marks[0]!.tape).toBe('587');
	});
});

describe('an offset of two bends opposite', () => {
	// Source: electricians' offset tables (multipliers 5.76, 3.86, 2.6, 2, 1.4, 1.15 of the offset between the bends), printed coarsely;
	// exactly they are the cosecants, and the shrink by sharp corners is tan(angle/2) an inch.
	it.each([
		[10, 5.76, 0.005],
		[15, 3.86, 0.005],
		[22.5, 2.6, 0.02],
		[30, 2, 1e-9],
		[45, 1.4, 0.015],
		[60, 1.15, 0.006],
	])('at %d degrees has its corners offset x %d apart', (angle, printed, within) => {
		const job = plainJob({
			tooling: { clr: 4 },
			shape: byBends(
				[
					[20, angle, 0],
					[9, angle, 180],
				],
				20,
			),
		});
		const { shape, developed } = laidOut(job);
		const points = corners(shape);
		const offset = points[3]![1];
		const half = (angle * Math.PI) / 360;
		const travel = distance(points[1]!, points[2]!);
		expect(Math.abs(travel / offset - printed)).toBeLessThan(within);
		expect(travel / offset).toBeCloseTo(1 / Math.sin(2 * half), 10);
		const sharp = distance(points[0]!, points[1]!) + travel + distance(points[2]!, points[3]!);
		expect((sharp - points[3]![0]) / offset).toBeCloseTo(Math.tan(half), 10);
		// Real bends cut the corners: 2 (2 R tan(angle/2) - R angle) less tube.
		expect(sharp - developed).toBeCloseTo(2 * (2 * 4 * Math.tan(half) - 4 * 2 * half), 10);
	});
});
