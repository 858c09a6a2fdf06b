import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { type CorrectionInput, correct, type FitMeasure } from '../../src/fit/correct.ts';
import { drawnSideOf } from '../../src/fit/drawn-side.ts';
import { gripsOf, slopesOf } from '../../src/fit/grips.ts';
import { walk } from '../../src/fit/kinematics.ts';
import { partCount, partsOf } from '../../src/fit/measure-parts.ts';
import { checkValue } from '../../src/tube/checks.ts';
import { corners, frames, shapeEnd } from '../../src/tube/frames.ts';
import type { Check } from '../../src/tube/job.ts';
import type { Shape } from '../../src/tube/shape.ts';
import { sample } from '../helpers/sample-size.ts';
import { anyTube } from '../helpers/shop/tubes.ts';

const TUBE = { od: 1.5 };

function measureOf(check: Check, drawn: Shape): FitMeasure {
	const side = drawnSideOf(check, frames(drawn));
	return {
		name: check.name,
		design: checkValue(check, drawn, TUBE),
		tolerance: check.tolerance,
		value: (shape) => checkValue(check, shape, TUBE),
		grips: (at) => gripsOf(check, at, TUBE),
		...(side && { side }),
	};
}

/** What the measure's rows make of a shape, root of squares, in the check's own unit. */
const offOn = (measure: FitMeasure, shape: Shape): number =>
	Math.hypot(...partsOf(measure).map(({ off }) => off(shape, frames(shape))));

const named = { name: 'any', tolerance: 0.5 };
const ANGLE: Check = { ...named, kind: 'angle', between: [2, 5] };
const DROP: Check = { ...named, kind: 'drop', from: 1, to: { straight: 3, at: 'end' }, surface: 'centre' };
const WIDTH: Check = { ...named, kind: 'width', from: 1, to: { straight: 3, at: 'end' }, surface: 'outside' };

/** A flat tube by signed turns, inches. */
const flat = (straights: readonly number[], turns: readonly number[]): Shape => ({
	straights: [...straights],
	bends: turns.map((turn, i) => ({
		angle: Math.abs(turn),
		rotation: Math.sign(turn) === Math.sign(i === 0 ? 1 : turns[i - 1]!) ? 0 : 180,
		radius: 6,
	})),
});

/** Legs 2 and 5 run .8 degrees from parallel, leg 6 across. */
const TURNS = [30, -34, -30, 64.8, 40];
const STRAIGHTS = [12, 12, 14, 14, 14, 12];
const DRAWN = flat(STRAIGHTS, TURNS);
const turned = (by: number): Shape =>
	flat(
		STRAIGHTS,
		TURNS.map((turn, i) => (i === 3 ? turn + by : turn)),
	);

type Moved = (shape: Shape, k: number, by: number) => Shape;
const bendBy =
	(key: 'angle' | 'rotation'): Moved =>
	(shape, k, by) => ({
		...shape,
		bends: shape.bends.map((bend, i) => (i === k ? { ...bend, [key]: bend[key] + by } : bend)),
	});
const KINDS: readonly (readonly ['straights' | 'angles' | 'rotations', Moved])[] = [
	['straights', (shape, k, by) => ({ ...shape, straights: shape.straights.map((s, i) => (i === k ? s + by : s)) })],
	['angles', bendBy('angle')],
	['rotations', bendBy('rotation')],
];

describe('a check that reads the same on either side, near there', () => {
	it('is off by what its value says on the drawing’s side, and by both lengths on the other, where its value is as drawn', () => {
		const measure = measureOf(ANGLE, DRAWN);
		for (const by of [-0.7, -0.3, 0, 0.4, 1.5]) {
			expect(offOn(measure, turned(by))).toBeCloseTo(Math.abs(by), 2);
			expect(Math.abs(measure.value(turned(by)) - measure.design)).toBeCloseTo(Math.abs(by), 6);
		}
		expect(measure.value(turned(-1.6))).toBeCloseTo(measure.design, 6);
		expect(offOn(measure, turned(-1.6))).toBeCloseTo(1.6, 2);
	});

	it('is the same near 180 degrees', () => {
		const hoop = flat([20, 15, 20], [92, 87.5]);
		const measure = measureOf({ ...ANGLE, between: [1, 3] }, hoop);
		expect(measure.design).toBeCloseTo(179.5, 6);
		const mirrored = flat([20, 15, 20], [92, 88.5]);
		expect(measure.value(mirrored)).toBeCloseTo(measure.design, 6);
		expect(offOn(measure, mirrored)).toBeCloseTo(1, 2);
	});

	it.each([DROP, WIDTH])(
		'counts a place aside as one tolerance where that makes a $kind one tolerance too much',
		(check) => {
			// A step of .3 in: R (1 - cos th) twice and s sin th (the offset of two like bends, plane geometry).
			const [radians, by] = [(5 * Math.PI) / 180, 0.3];
			const slope = (by - 12 * (1 - Math.cos(radians))) / Math.sin(radians);
			const measure = measureOf(check, flat([12, slope, 12], [5, -5]));
			const faces = check.kind === 'width' ? TUBE.od : 0;
			expect(measure.design).toBeCloseTo(by + faces, 9);
			const { side, tolerance } = measure;
			const aside = Math.sqrt((by + tolerance) ** 2 - by ** 2);
			const [one, way] = [1 / by, side!.aim];
			// The start of leg 1 moves aside, square to the leg and to the step.
			const laid = frames(flat([12, slope, 12], [5, -5]));
			const along = laid.straights[0]!.direction;
			const square = [0, 1, 2].map((i) => {
				const [j, k] = [(i + 1) % 3, (i + 2) % 3];
				return one * (along[j]! * way[k]! - along[k]! * way[j]!) * aside;
			}) as [number, number, number];
			const [first, ...rest] = laid.straights;
			const start = first!.start.map((x, i) => x + square[i]!) as [number, number, number];
			const moved = { ...laid, straights: [{ ...first!, start }, ...rest] };
			const offs = partsOf(measure).map(({ off }) => off(DRAWN, moved));
			expect(Math.hypot(...offs)).toBeCloseTo(tolerance, 9);
		},
	);

	it('has the slopes of its rows, by central differences', () => {
		const wide = { name: 'any', tolerance: 1000 };
		const checks: Check[] = [
			{ ...wide, kind: 'angle', between: [1, 4] },
			{ ...wide, kind: 'angle', between: [4, 2] },
			{ ...wide, kind: 'drop', from: 1, to: { straight: 4 }, surface: 'centre' },
			{ ...wide, kind: 'width', from: 5, to: { straight: 2, at: 'end' }, surface: 'inside' },
		];
		const tube = anyTube({ bends: { min: 4, max: 4 } });
		fc.assert(
			fc.property(tube, tube, fc.constantFrom(...checks), (drawn, shape, check) => {
				const measure = measureOf(check, drawn);
				const of = (key: 'angle' | 'rotation' | 'radius') => shape.bends.map((bend) => bend[key]);
				const chain = {
					straights: shape.straights,
					angles: of('angle'),
					rotations: of('rotation'),
					radii: of('radius'),
				};
				const parts = partsOf(measure);
				expect(parts).toHaveLength(partCount(measure));
				expect(parts).toHaveLength(3);
				for (const { off, grips } of parts) {
					const slopes = slopesOf(grips(frames(shape)), walk(chain));
					for (const [kind, moved] of KINDS)
						for (const [k, slope] of slopes[kind].entries()) {
							const at = (by: number) => {
								const other = moved(shape, k, by);
								return off(other, frames(other));
							};
							expect(slope - (at(1e-3) - at(-1e-3)) / 2e-3).toBeCloseTo(0, 3);
						}
				}
			}),
			{ numRuns: sample(60, 300) },
		);
	});
});

test.each<[string, Check]>([
	['an angle well away from 0', { ...named, kind: 'angle', between: [1, 3] }],
	['a distance', { ...named, kind: 'span', from: { bend: 1 }, to: { bend: 2 } }],
	['a height over a plane, which has a sign', { ...named, kind: 'out', plane: [1, 2], to: { straight: 4 } }],
])('%s is told by its value alone', (_, check) => {
	const measure = measureOf(check, flat([12, 12, 12, 12], [40, 30, 20]));
	expect(measure.side).toBeUndefined();
	expect(partCount(measure)).toBe(1);
	expect(partsOf(measure)).toHaveLength(1);
});

describe('a correction whose made bend passed the place where a check turns back', () => {
	const inputWith = (off: number, isSided: boolean): CorrectionInput => {
		const [first, second, ...left] = DRAWN.bends;
		const places = corners(DRAWN).slice(1, -1);
		const { side, ...bare } = measureOf(ANGLE, DRAWN);
		return {
			shape: { ...DRAWN, bends: [first!, { ...second!, angle: second!.angle + off }, ...left] },
			nominal: DRAWN,
			made: 2,
			goal: shapeEnd(DRAWN),
			measures: [{ ...bare, tolerance: ANGLE.tolerance / 2, ...(isSided && side && { side }) }],
			tolerance: { position: 1 / 16, direction: 0.5 },
			dear: { straight: 1, angle: 5, rotation: 2.5 },
			bounds: { straights: DRAWN.straights.map((s) => [0, s + 8]), angles: DRAWN.bends.map(() => [1, 160]) },
			corners: { places, tolerances: places.map(() => 0.375) },
		};
	};
	const OFFS = Array.from({ length: 121 }, (_, i) => -3 + i / 20);
	const turnsOf = (off: number, isSided: boolean) =>
		correct(inputWith(off, isSided)).shape.bends.map((bend) => bend.angle);
	/** From leg 2 to leg 5, with its sign. */
	const signed = ([, second, third, fourth]: readonly number[]) => fourth! - second! - third!;
	const largestStep = (found: readonly (readonly number[])[]) =>
		Math.max(
			...found.slice(1).flatMap((turns, k) => turns.slice(2).map((turn, i) => Math.abs(turn - found[k]![i + 2]!))),
		);

	it('meets the check on the drawing’s side, and follows without a jump what was measured', () => {
		const found = OFFS.map((off) => turnsOf(off, true));
		for (const turns of found) expect(signed(turns)).toBeGreaterThan(0);
		// A twentieth of a degree at a time, three degrees for a degree.
		expect(largestStep(found)).toBeLessThanOrEqual(0.15);
	});

	it('would meet it on either side, and jump, by its value alone', () => {
		const found = OFFS.map((off) => turnsOf(off, false));
		expect(found.some((turns) => signed(turns) < 0)).toBe(true);
		expect(largestStep(found)).toBeGreaterThan(0.5);
	});
});
