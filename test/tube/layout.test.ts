import { describe, expect, it } from 'vitest';
import { layout } from '../../src/tube/layout.ts';
import { byBends, plainJob } from '../helpers/shop/plain-job.ts';

const arc = (angle: number, radius: number) => (angle * Math.PI * radius) / 180;

describe('the layout document', () => {
	const job = plainJob({
		name: 'Stretcher',
		shape: byBends(
			[
				[9, 90, 0],
				[12, 30, -60],
				[7.5, 30, -120],
			],
			8,
		),
		trim: { start: 0.5, end: 1.5 },
		tooling: { growth: 1.02, stretch: 0.003 },
		checks: [
			{ kind: 'ovality', name: 'round', tolerance: 0.1, bend: 2 },
			{ kind: 'span', name: 'whole', tolerance: 0.125, from: { end: 'start' }, to: { end: 'far' } },
		],
	});
	const choice = { possible: true, hindrances: [], left: 1 };
	const ends = { start: choice, far: { ...choice, left: 2 }, better: 'start' as const };
	const growth = { value: 1.02, from: 'die' as const };
	const document = layout(job, growth, [{ at: 'shape', code: 'tight-radius', clr: 4, least: 4.5, diameters: 3 }], ends);

	it('has the fields of its contract, and after them from which end it might be bent', () => {
		expect(Object.keys(document)).toEqual([
			'job',
			'units',
			'growth',
			'developedLength',
			'cutLength',
			'bends',
			'corners',
			'overall',
			'checks',
			'warnings',
			'ends',
		]);
		expect(document.ends).toBe(ends);
		expect(Object.keys(document.bends[0]!).sort()).toEqual(
			[
				'bend',
				'angle',
				'rotation',
				'straight',
				'arc',
				'setback',
				'external',
				'radius',
				'mark',
				'face',
				'around',
				'tubeTurn',
				'swing',
			].sort(),
		);
		expect(document.warnings).toEqual([{ at: 'shape', code: 'tight-radius', clr: 4, least: 4.5, diameters: 3 }]);
	});

	it('has the finished arc, the raw tube in marks, and both trims in the cut', () => {
		const radius = 6 * 1.02;
		const raw = (angle: number) => arc(angle, radius) / 1.003;
		const [first, second, third] = document.bends;
		expect(first!.arc).toBeCloseTo(arc(90, radius), 12);
		expect(first!.setback).toBeCloseTo(radius, 12);
		// The corners hold: each bend's ends move away from its corner by what the setback of the die's radius, 6, has grown by.
		const moved = (angle: number) => (radius - 6) * Math.tan((angle * Math.PI) / 360);
		expect(second!.mark.fromStart).toBeCloseTo(0.5 + 9 - moved(90) + raw(90) + 12 - moved(90) - moved(30), 12);
		expect(third!.straight).toBeCloseTo(7.5 - 2 * moved(30), 12);
		expect(third!.mark.fromLastBend).toBe(third!.straight);
		const straights = 36.5 - 2 * moved(90) - 4 * moved(30);
		expect(document.developedLength).toBeCloseTo(straights + raw(90) + 2 * raw(30), 12);
		expect(document.cutLength).toBeCloseTo(document.developedLength + 2, 12);
	});

	it('tells the growth that it is made with, and where that is from', () => {
		expect(document.growth).toEqual({ value: 1.02, from: 'die' });
	});

	it('tells rotations, faces and turns in one sense', () => {
		const [first, second, third] = document.bends;
		expect(first).toMatchObject({ rotation: 0, face: 'same', tubeTurn: { degrees: 0, way: 'none' } });
		expect(second).toMatchObject({ rotation: -60, face: 'other', tubeTurn: { degrees: 60, way: 'clockwise' } });
		expect(second!.around.degrees).toBe(-60);
		expect(second!.around.length).toBeLessThan(0);
		// Round the tube they add up to half a turn.
		expect(third).toMatchObject({ face: 'opposite', around: { degrees: 180 } });
		expect(third!.tubeTurn).toEqual({ degrees: 120, way: 'clockwise' });
	});

	it('has every corner, finished ends included, and every check with its design and when it is due', () => {
		expect(document.corners).toHaveLength(5);
		expect(document.corners[0]).toEqual([0, 0, 0]);
		const [round, whole] = document.checks;
		expect(round).toEqual({ name: 'round', kind: 'ovality', design: 1, tolerance: 0.1, after: 2 });
		const [start, end] = [document.corners[0]!, document.corners[4]!];
		expect(whole).toMatchObject({ kind: 'span', after: 3, tolerance: 0.125 });
		expect(whole!.design).toBeCloseTo(Math.hypot(end[0] - start[0], end[1] - start[1], end[2] - start[2]), 12);
	});
});
