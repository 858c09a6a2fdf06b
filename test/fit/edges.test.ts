import { describe, expect, test } from 'vitest';
import { type CorrectionInput, correct, type FitMeasure } from '../../src/fit/correct.ts';
import { drawnSideOf } from '../../src/fit/drawn-side.ts';
import { edged } from '../../src/fit/edges.ts';
import { gripsOf } from '../../src/fit/grips.ts';
import { posed, shapeUnknowns } from '../../src/fit/problem.ts';
import { costAt, type Problem } from '../../src/maths/least-squares.ts';
import { type Draw, draws } from '../../src/practice/random.ts';
import { checkValue } from '../../src/tube/checks.ts';
import { corners, frames, shapeEnd } from '../../src/tube/frames.ts';
import type { Check } from '../../src/tube/job.ts';
import type { Shape } from '../../src/tube/shape.ts';

const NO_WALL = { od: 0, wall: 0 };
const SPAN: Check = { name: 'span', kind: 'span', from: { bend: 1 }, to: { bend: 3 }, tolerance: 4 };
const ANGLE: Check = { name: 'angle', kind: 'angle', between: [1, 4], tolerance: 0.7 };

const ofCheck = (check: Check, nominal: Shape): FitMeasure => ({
	name: check.name,
	design: checkValue(check, nominal, NO_WALL),
	tolerance: check.tolerance / 2,
	value: (shape) => checkValue(check, shape, NO_WALL),
	grips: (at) => gripsOf(check, at, { od: 0 }),
});

/** A tube of four bends in space, in mm, whose first one is made and off. */
function anyInput(draw: Draw): CorrectionInput {
	const nominal: Shape = {
		straights: Array.from({ length: 5 }, () => draw.uniform(200, 400)),
		bends: Array.from({ length: 4 }, () => ({
			angle: draw.uniform(20, 90),
			rotation: draw.uniform(-180, 180),
			radius: 80,
		})),
	};
	const [first, ...left] = nominal.bends;
	const places = corners(nominal).slice(1, -1);
	return {
		shape: { ...nominal, bends: [{ ...first!, angle: first!.angle + draw.normal(0, 1) }, ...left] },
		nominal,
		made: 1,
		goal: shapeEnd(nominal),
		measures: [SPAN, ANGLE].map((check) => ofCheck(check, nominal)),
		tolerance: { position: 1.5, direction: 0.5 },
		dear: { straight: 25, angle: 5, rotation: 2.5 },
		bounds: { straights: nominal.straights.map((s) => [0, s + 150]), angles: nominal.bends.map(() => [1, 179]) },
		corners: { places, tolerances: places.map(() => 15) },
		edges: { shape: 10, turn: 1, measures: [SPAN.tolerance, ANGLE.tolerance] },
	};
}

/** The angle counts as near where it turns back, wherever it is. */
const sided = (input: CorrectionInput): CorrectionInput => ({
	...input,
	measures: input.measures.map((measure) => {
		if (measure.name !== ANGLE.name) return measure;
		const side = drawnSideOf({ ...ANGLE, tolerance: 180 }, frames(input.nominal));
		expect(side).toBeDefined();
		return { ...measure, side: side! };
	}),
});

/** Without what draws the variables: the rows alone. */
const costOf = (problem: Problem, x: readonly number[]): number =>
	costAt({ ...problem, drawnTo: [] }, x, problem.residuals(x));

function slopes(problem: Problem, x: readonly number[]): number[] {
	const [rows, found] = [problem.jacobian(x), problem.residuals(x)];
	return x.map((_, i) => rows.reduce((sum, row, k) => sum + row[i]! * found[k]!, 0));
}

const moved = (x: readonly number[], i: number, by: number) => x.map((value, k) => (k === i ? value + by : value));

describe('what the rows of what is near its edge tell the solver', () => {
	test.each([
		['', false, false],
		[', ended by the piece', true, false],
		[', a check kept on the drawing’s side', false, true],
		[', both', true, true],
	])('has the slopes of its cost, by central differences%s', (_, isEnded, isSided) => {
		const draw = draws(85_200_000);
		let added = 0;
		for (let n = 0; n < 60; n++) {
			const drawn = anyInput(draw);
			const plain = isSided ? sided(drawn) : drawn;
			const input = isEnded ? { ...plain, ended: { length: 1600, stretch: [0.01, 0.01, 0.02, 0.02] } } : plain;
			const unknowns = shapeUnknowns(input);
			const before = posed(input, unknowns);
			const problem = edged(before, input);
			const size = draw.uniform(0, 0.6);
			const x = unknowns.map((each) => each.now + draw.normal(0, size));
			if (costOf(problem, x) > costOf(before, x)) added++;
			for (const [i, slope] of slopes(problem, x).entries()) {
				const by = 1e-6;
				const rise = (costOf(problem, moved(x, i, by)) - costOf(problem, moved(x, i, -by))) / (2 * by);
				expect(Math.abs(slope - rise)).toBeLessThan(1e-4 * Math.max(1, costOf(problem, x)));
			}
		}
		expect(added).toBeGreaterThan(20);
	});

	test('is alike in whatever order the checks stand', () => {
		const draw = draws(85_300_000);
		for (let n = 0; n < 12; n++) {
			const input = anyInput(draw);
			const { measures, edges } = input;
			const turned = {
				...input,
				measures: measures.toReversed(),
				edges: { ...edges!, measures: edges!.measures.toReversed() },
			};
			const [one, other] = [correct(input).shape, correct(turned).shape];
			for (const [i, { angle }] of one.bends.entries()) expect(other.bends[i]!.angle).toBeCloseTo(angle, 5);
			for (const [i, straight] of one.straights.entries()) expect(other.straights[i]!).toBeCloseTo(straight, 4);
		}
	});
});

/** Far end, direction, two checks and two corners. */
const COUNT = 3 + 3 + 2 + 2 * 3;
/** A problem whose variables are its rows themselves. */
const ROWS: Problem = {
	residuals: (x) => [...x],
	jacobian: (x) => x.map((_, i) => x.map((__, k) => Number(i === k))),
	lower: Array<number>(COUNT).fill(Number.NEGATIVE_INFINITY),
	upper: Array<number>(COUNT).fill(Number.POSITIVE_INFINITY),
};
const plainInput = anyInput(draws(1));
// Each has a tolerance of its own, so that none can stand for another.
const BARE = edged(ROWS, {
	...plainInput,
	made: 2,
	edges: { shape: 3, turn: 0.8, measures: [2.5, 0.6] },
	corners: { places: plainInput.corners!.places, tolerances: [9, 9, 6, 4.5] },
	tolerance: { position: 1.5, direction: 0.5 },
});
/** The first row of each thing, how many it has, and how much of it its tolerance is: what it is held against over what a row counts in. */
const THINGS = [
	['the end', 0, 3, 3 / 1.5],
	['the direction', 3, 3, 0.8 / 0.5],
	['a check', 6, 1, 2.5 / (SPAN.tolerance / 2)],
	['another check', 7, 1, 0.6 / (ANGLE.tolerance / 2)],
	['a corner', 8, 3, 3 / 6],
	['another corner', 11, 3, 3 / 4.5],
] as const;

const at = (row: number, off: number) => moved(Array<number>(COUNT).fill(0), row, off);
const slopeAt = (row: number, off: number) => slopes(BARE, at(row, off))[row]!;
/** What is added to the slope that a row has by itself. */
const pull = (row: number, off: number) => slopeAt(row, off) - off;

describe.each(THINGS)('%s', (name, row, rows, tolerance) => {
	const isCorner = name.endsWith('corner');

	test('adds nothing up to half its tolerance, and draws back beyond it', () => {
		for (const part of [0, 0.1, 0.3, 0.5]) expect(pull(row, part * tolerance)).toBe(0);
		for (const part of [0.7, 0.9, 1.1, 3]) {
			expect(pull(row, part * tolerance)).toBeGreaterThan(0.1);
			expect(pull(row, -part * tolerance)).toBeCloseTo(-pull(row, part * tolerance), 9);
		}
	});

	test('has neither a step in its cost nor in its slope', () => {
		const largest = (of: (off: number) => number, step: number) => {
			const gaps = Array.from({ length: 2 / step }, (_, i) =>
				Math.abs(of((i + 1) * step * tolerance) - of(i * step * tolerance)),
			);
			return gaps.reduce((most, gap) => Math.max(most, gap), 0);
		};
		const cost = (off: number) => costOf(BARE, at(row, off));
		for (const of of [cost, (off: number) => slopeAt(row, off)]) {
			expect(largest(of, 1e-3) / largest(of, 1e-2)).toBeLessThan(0.2);
		}
	});

	test(isCorner ? 'pulls no harder three tolerances off than one' : 'pulls harder the further it is off', () => {
		const [near, far] = [pull(row, tolerance), pull(row, 3 * tolerance)];
		if (isCorner) expect(far).toBeCloseTo(near, 9);
		else expect(far / near).toBeGreaterThan(3);
	});

	test('is off by the length of its rows, whichever way', () => {
		const draw = draws(85_400_000);
		const added = (x: readonly number[]) => costOf(BARE, x) - costOf(ROWS, x);
		for (let n = 0; n < 20; n++) {
			const way = Array.from({ length: rows }, () => draw.normal(0, 1));
			const off = draw.uniform(0.7, 2) * tolerance;
			const length = Math.hypot(...way);
			const x = way.reduce((all, part, i) => moved(all, row + i, (off * part) / length), at(row, 0));
			expect(added(x)).toBeCloseTo(added(at(row, off)), 9);
		}
	});

	test('tells how the cost curves across the way it is off', () => {
		if (rows === 1) return;
		for (const part of [0.8, 1.5]) {
			const x = at(row, part * tolerance);
			const curve = BARE.jacobian(x).reduce((sum, each) => sum + each[row + 1]! ** 2, 0);
			const cost = (by: number) => costOf(BARE, moved(x, row + 1, by));
			const by = 1e-3;
			expect(curve).toBeCloseTo((cost(by) - 2 * cost(0) + cost(-by)) / by ** 2, 3);
		}
	});
});
