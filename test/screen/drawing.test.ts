import { describe, expect, test } from 'vitest';
import { pullLadder } from '../../src/screen/drawing/pull-ladder.ts';
import { tapeStrip } from '../../src/screen/drawing/tape-strip.ts';
import { drawTube, tubeDrawing } from '../../src/screen/drawing/tube-drawing.ts';
import { type Line, widthOf } from '../../src/screen/text/line.ts';
import type { Point } from '../../src/tube/job.ts';
import { joints } from '../../src/tube/joints.ts';
import { principalViews } from '../../src/tube/principal-views.ts';
import { finishedShape } from '../../src/tube/resolve.ts';
import type { Shape } from '../../src/tube/shape.ts';
import { cross, dot, norm } from '../../src/tube/vector.ts';
import { ARCH } from '../helpers/screen/fake-ports.ts';
import { plainJob } from '../helpers/shop/plain-job.ts';

const textOf = (lines: readonly Line[]) =>
	lines
		.map((line) =>
			line
				.map(({ text }) => text)
				.join('')
				.trimEnd(),
		)
		.join('\n');

/** Two legs and a top in one plane, with a kick out of it at the end. */
const KICKED: Shape = {
	straights: [20, 30, 20, 8],
	bends: [
		{ angle: 90, rotation: 0, radius: 5 },
		{ angle: 90, rotation: 0, radius: 5 },
		{ angle: 45, rotation: 90, radius: 5 },
	],
};

describe('the plan of the tube', () => {
	const flat = finishedShape(ARCH, { value: 1 });

	test('tells made, in hand and to come apart, in ASCII too', () => {
		expect(tubeDrawing(flat, 2, 60, 6, true).map((row) => row.trimEnd())).toEqual([
			'                     ##XXX',
			'           ########### X2X .                        .',
			'          ##                .                      .',
			'        ##                    ..                  .',
			'      ##                         .        . .. ...',
			'                                  ... .. .',
		]);
	});

	test('shows all as made when the last bend is', () => {
		expect(tubeDrawing(flat, 5, 60, 6, true).join('')).toMatch(/^[ #]+$/);
	});

	test('shows what its ends meet, where and how they lean', () => {
		const cope = (od: number, angle: number) => ({ cope: { od, angle, offset: 0, turn: 0 } });
		const job = plainJob({ ends: { start: cope(2, 45), far: cope(4, 90) } });
		const shape = finishedShape(job, { value: 1 });
		const { rows } = drawTube(shape, 2, 60, 14, true, shape, undefined, joints(job, shape));
		expect(rows.map((row) => row.trimEnd())).toEqual([
			'                           ####',
			'                        ####   ####',
			'                      ##           ##',
			'                    ##               ##',
			'                  ##                   ##',
			'                ##                       ##',
			'             ###                           ##',
			'           ###                               ##',
			'         ###                                   ##       ::',
			'       ###                                       ##   ::',
			'  ::::##::                                         #::',
			'                                                  ::',
			'                                                ::',
			'                                               :',
		]);
	});

	test('fits any room', () => {
		for (const shape of [flat, KICKED]) {
			for (const [columns, rows] of [
				[60, 4],
				[20, 9],
				[110, 10],
				[160, 40],
			] as const) {
				const drawing = tubeDrawing(shape, 1, columns, rows, false);
				expect(drawing.length).toBeLessThanOrEqual(rows);
				expect(new Set(drawing.map((row) => row.length))).toEqual(new Set([columns]));
				expect(drawing.join('').replaceAll('⠀', '').trim()).not.toBe('');
			}
		}
	});

	test('one view of a flat tube, two of one that is not, with a word where each stands', () => {
		expect(drawTube(flat, 1, 80, 8, false).views).toBe('');
		expect(drawTube(KICKED, 1, 80, 8, false).views).toBe('front view left, top view');
		expect(drawTube(KICKED, 1, 40, 30, false).views).toBe('front view above, top view');
	});

	test('the drawing is shown beside a tube that leaves it, and not where both are one line', () => {
		const off = {
			...flat,
			bends: flat.bends.map((bend, at) => (at === 0 ? { ...bend, angle: bend.angle + 6 } : bend)),
		};
		const near = { ...flat, bends: flat.bends.map((bend) => ({ ...bend, angle: bend.angle + 0.05 })) };
		const shown = drawTube(off, 2, 80, 12, true, flat);
		expect(shown.drawing).toBe(true);
		expect(shown.rows.join('')).toContain(',');
		expect(drawTube(near, 2, 80, 12, true, flat)).toMatchObject({ drawing: false });
		expect(drawTube(near, 2, 80, 12, true, flat).rows.join('')).not.toContain(',');
	});

	test('both directions have one scale: a square corner is square', () => {
		const square: Shape = { straights: [40, 40], bends: [{ angle: 90, rotation: 0, radius: 1 }] };
		const [view] = principalViews([
			[0, 0, 0],
			[41, 0, 0],
			[41, 41, 0],
		]);
		expect(Math.abs(dot(view!.right, [Math.SQRT1_2, Math.SQRT1_2, 0]))).toBeCloseTo(1, 9);
		const dots = tubeDrawing(square, 3, 80, 20, true);
		const rows = dots.filter((row) => row.trim() !== '').length;
		const columns =
			Math.max(...dots.map((row) => row.trimEnd().length)) - Math.min(...dots.map((row) => row.search(/\S|$/)));
		// The corner seen over its diagonal is half as high as wide, and a cell is twice as high as wide.
		expect(columns / rows).toBeGreaterThan(3);
		expect(columns / rows).toBeLessThan(5);
	});
});

describe('the views that show a tube best', () => {
	test('lie along greatest, second and least spread, square to one another', () => {
		const box: Point[] = [
			[0, 0, 0],
			[10, 0, 0],
			[10, 0, 4],
			[20, 1, 4],
		];
		const [front, above] = principalViews(box);
		for (const axis of [front!.right, front!.up, above!.up]) expect(norm(axis)).toBeCloseTo(1, 12);
		expect(dot(front!.right, front!.up)).toBeCloseTo(0, 12);
		expect(above!.right).toEqual(front!.right);
		// From above: up on the paper is away from who stands in front.
		const toward = cross(front!.right, front!.up);
		expect(dot(above!.up, toward)).toBeCloseTo(-1, 12);
		const spread = (axis: Point) => {
			const along = box.map((point) => dot(point, axis));
			const mean = along.reduce((sum, each) => sum + each, 0) / along.length;
			return along.reduce((sum, each) => sum + (each - mean) ** 2, 0);
		};
		expect(spread(front!.right)).toBeGreaterThan(spread(front!.up));
		expect(spread(front!.up)).toBeGreaterThan(spread(above!.up));
		// Spreads along the principal axes do not mix.
		const mixed = box.reduce((sum, point) => {
			const middle: Point = [10, 0.25, 2];
			const away: Point = [point[0] - middle[0], point[1] - middle[1], point[2] - middle[2]];
			return sum + dot(away, front!.right) * dot(away, front!.up);
		}, 0);
		expect(mixed).toBeCloseTo(0, 9);
	});

	test('the start end is at the left, what bulges bulges upwards', () => {
		const hat: Point[] = [
			[0, 0, 0],
			[10, -5, 0],
			[20, -5, 0],
			[30, 0, 0],
		];
		const [front, ...more] = principalViews(hat);
		expect(more).toEqual([]);
		expect(front!.right[0]).toBeCloseTo(1, 9);
		expect(front!.up[1]).toBeCloseTo(-1, 9);
	});
});

describe('the ladder of pulls', () => {
	const aim = { target: 48, low: 47.5, high: 48.5 };

	test('shows what was made and what is expected against target and band', () => {
		const rungs = [
			{ words: '1 held 44', angle: 45 },
			{ words: '2 stop 51', angle: 47.6, sd: 0.2 },
		];
		expect(textOf(pullLadder('wanted 48', rungs, aim, 60))).toBe(
			[
				'wanted 48                              47.5   48   48.5',
				'1 held 44  █·····························[·····|·····]······',
				'2 stop 51  ··························░░░▒[▒▒▒▒░|·····]······',
			].join('\n'),
		);
	});

	test('without room for a scale only the words', () => {
		expect(textOf(pullLadder('wanted 48', [{ words: '1 held 44, made 40.8', angle: 40.8 }], aim, 30))).toBe(
			'wanted 48\n1 held 44, made 40.8',
		);
	});

	test('is never wider than its room and has every angle on it', () => {
		for (const columns of [40, 60, 97]) {
			const rungs = [
				{ words: '1 held 12', angle: 10 },
				{ words: '2 held 60', angle: 57 },
				{ words: '3 held', angle: null },
				{ words: '4 stop', angle: 48, sd: 3 },
			];
			const lines = pullLadder('wanted', rungs, aim, columns);
			for (const line of lines) expect(widthOf(line)).toBeLessThanOrEqual(columns);
			const [, low, high, none, next] = textOf(lines).split('\n');
			expect(low!.indexOf('█')).toBeLessThan(low!.indexOf('['));
			expect(high!.indexOf('█')).toBeGreaterThan(high!.indexOf(']'));
			expect(none).not.toMatch(/[█▒]/);
			expect(next).toContain('▒');
		}
	});
});

describe('the tape along the straight tube', () => {
	test('marks to scale, what it reads under them, crowded ones in a second row', () => {
		const marks = [
			{ at: 25, bend: 1, reading: '25' },
			{ at: 50, bend: 2, reading: '50' },
			{ at: 52, bend: 3, reading: '52 1/16' },
		];
		expect(textOf(tapeStrip(100, marks, 41))).toBe(
			[
				'START                                 FAR',
				'├─────────┼─────────┼┼──────────────────┤',
				'          1         2',
				'                     3',
				'         25        50',
				'                  52 1/16',
			].join('\n'),
		);
	});
});
