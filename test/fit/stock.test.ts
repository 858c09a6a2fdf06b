import { describe, expect, test } from 'vitest';
import { type CorrectionInput, correct } from '../../src/fit/correct.ts';
import { scales } from '../../src/fit/scales.ts';
import { shapeEnd } from '../../src/tube/frames.ts';
import type { Shape } from '../../src/tube/shape.ts';

const RADIUS = 152;
const STRETCH = 0.004;

const shapeOf = (straights: number[], bends: [number, number][]): Shape => ({
	straights,
	bends: bends.map(([angle, rotation]) => ({ angle, rotation, radius: RADIUS })),
});
const design: [number, number][] = [
	[40, 0],
	[60, 70],
	[35, -110],
	[50, 150],
];
const nominal = shapeOf([350, 400, 450, 400, 430], design);
/** The second bend's plane came out 12 degrees wrong: to come back to its place takes a longer way. */
const made = shapeOf(
	nominal.straights.slice(),
	design.map(([angle, rotation], i) => [angle, rotation + (i === 1 ? 12 : 0)]),
);

/** Raw tube of a shape, by hand: every straight, and of every arc what it is longer than the tube that it took. */
const rawOf = ({ straights, bends }: Shape): number =>
	straights.reduce((sum, s) => sum + s, 0) +
	bends.reduce((sum, { angle }) => sum + (angle / 180) * Math.PI * (RADIUS / (1 + STRETCH)), 0);

const input: CorrectionInput = {
	shape: made,
	nominal,
	made: 2,
	goal: shapeEnd(nominal),
	measures: [],
	...scales('mm'),
	bounds: { straights: nominal.straights.map((s) => [100, s + 400]), angles: nominal.bends.map(() => [1, 160]) },
};
const from = (length: number): CorrectionInput => ({
	...input,
	stock: { length, stretch: input.shape.bends.map(() => STRETCH) },
});

/** What is to be made least, with the last straight whatever the rest leaves: half the squares, each in its own unit. */
function costOf(shape: Shape, length: number): number {
	const rest = rawOf({ ...shape, straights: shape.straights.slice(0, -1) });
	const { end, direction } = shapeEnd({ ...shape, straights: [...shape.straights.slice(0, -1), length - rest] });
	const miss = (a: readonly number[], b: readonly number[], unit: number) =>
		a.reduce((sum, x, i) => sum + ((x - b[i]!) / unit) ** 2, 0);
	const changes = [2, 3].map((i) => {
		const [now, was] = [shape.bends[i]!, nominal.bends[i]!];
		const turn = ((now.rotation - was.rotation + 540) % 360) - 180;
		return (
			((shape.straights[i]! - nominal.straights[i]!) / 10) ** 2 + ((now.angle - was.angle) / 2) ** 2 + (turn / 4) ** 2
		);
	});
	const { end: goal, direction: way } = input.goal;
	return (miss(end, goal, 0.5) + miss(direction, way, (0.25 * Math.PI) / 180) + changes[0]! + changes[1]!) / 2;
}

describe('a correction of which the piece is too short', () => {
	const length = rawOf(nominal) + 5;

	test('would without that take more tube than there is', () => {
		expect(rawOf(correct(input).shape)).toBeGreaterThan(length + 5);
	});

	test('ends where the piece ends', () => {
		const got = correct(from(length));
		expect(rawOf(got.shape)).toBeCloseTo(length, 8);
		expect(got.active).toContainEqual({ of: 'piece' });
	});

	test('is the nearest that this piece comes: no change of anything that is left brings it nearer', () => {
		const got = correct(from(length));
		expect(costOf(got.shape, length)).toBeCloseTo(got.cost, 6);
		for (const size of [1e-3, 1e-2, 0.1, 1, 5]) {
			for (const i of [2, 3]) {
				for (const by of [-size, size]) {
					const moved = (change: 'straight' | 'angle' | 'rotation'): Shape => ({
						straights: got.shape.straights.map((s, k) => (k === i && change === 'straight' ? s + by : s)),
						bends: got.shape.bends.map((b, k) =>
							k === i && change !== 'straight' ? { ...b, [change]: b[change] + by } : b,
						),
					});
					for (const change of ['straight', 'angle', 'rotation'] as const) {
						expect(costOf(moved(change), length)).toBeGreaterThan(got.cost);
					}
				}
			}
		}
	});

	test('comes nearer than the shape for a longer piece with its end missing', () => {
		const cut = (shape: Shape): Shape => ({
			...shape,
			straights: [...shape.straights.slice(0, -1), shape.straights.at(-1)! - Math.max(0, rawOf(shape) - length)],
		});
		const off = (shape: Shape) => {
			const { end } = shapeEnd(cut(shape));
			return Math.hypot(...end.map((x, i) => x - input.goal.end[i]!));
		};
		expect(off(correct(from(length)).shape)).toBeLessThan(off(correct(input).shape) / 4);
	});

	test('takes no account of a piece that is long enough', () => {
		const enough = rawOf(correct(input).shape) + 1;
		expect(correct(from(enough))).toEqual(correct(input));
	});

	test('is as without a piece where that ends before its last leg begins', () => {
		expect(correct(from(rawOf(nominal) - 900))).toEqual(correct(input));
	});
});
