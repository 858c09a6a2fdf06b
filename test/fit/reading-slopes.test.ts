import fc from 'fast-check';
import { expect, it } from 'vitest';
import { gripsOf, legGrips } from '../../src/fit/grips.ts';
import { type RawBend, type RawTube, uncutShape } from '../../src/fit/raw-tube.ts';
import { readingSlopes } from '../../src/fit/reading-slopes.ts';
import { checkValue } from '../../src/tube/checks.ts';
import { frames } from '../../src/tube/frames.ts';
import type { Check } from '../../src/tube/job.ts';
import type { Shape } from '../../src/tube/shape.ts';
import { sample } from '../helpers/sample-size.ts';

const TUBE = { od: 1.5 };
const PIECE = 90;
const named = { name: 'any', tolerance: 1 };
const CHECKS: readonly Check[] = [
	{ ...named, kind: 'angle', between: [1, 4] },
	{ ...named, kind: 'span', from: { bend: 1 }, to: { bend: 3 } },
	{ ...named, kind: 'span', from: { bend: 2 }, to: { end: 'far' } },
	{ ...named, kind: 'overall', axis: 'x' },
	{ ...named, kind: 'overall', axis: 'y' },
	{ ...named, kind: 'overall', axis: 'z', at: 'end' },
	{ ...named, kind: 'width', from: 1, to: { straight: 3 }, surface: 'inside' },
	{ ...named, kind: 'out', plane: [1, 2], to: { straight: 4 } },
	...(['centre', 'across'] as const).flatMap((surface): Check[] => [
		{ ...named, kind: 'drop', from: 1, to: { straight: 4 }, surface },
		{ ...named, kind: 'drop', from: 4, to: { straight: 2, at: 'end' }, surface },
		{ ...named, kind: 'drop', from: 1, to: { bend: 3 }, surface },
		{ ...named, kind: 'drop', from: 2, to: { bend: 3 }, surface },
		{ ...named, kind: 'drop', from: 4, to: { bend: 1 }, surface },
	]),
];

const reals = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Three bends, each as it was pulled or opened by up to five degrees. */
const anyRawTube: fc.Arbitrary<RawTube> = fc
	.record({
		bends: fc.array(
			fc.record({
				angle: reals(15, 120),
				rotation: reals(-170, 170),
				radius: reals(4, 7),
				opened: fc.boolean(),
				by: reals(0.5, 5),
			}),
			{ minLength: 3, maxLength: 3 },
		),
		stretch: reals(-0.01, 0.01),
		markOffset: reals(-0.2, 0.2),
	})
	.map(({ bends, ...rest }) => ({
		...rest,
		radius: 6,
		bends: bends.map(({ opened, by, ...bend }, i) => ({
			...bend,
			mark: 12 + 22 * i,
			wrapped: bend.angle + (opened ? by : 0),
		})),
	}));

/** A tube with one of its numbers moved: of an opened bend the wrapped length stays, of one that is pulled it goes with the angle. */
function moved(tube: RawTube, kind: keyof RawBend | 'stretch', bend: number, by: number): Shape {
	const change = (was: RawBend): RawBend => {
		if (kind === 'radius') return { ...was, radius: was.radius * Math.exp(by) };
		if (kind !== 'angle') return { ...was, [kind]: was[kind as 'mark'] + by };
		const angle = was.angle + by;
		return { ...was, angle, wrapped: was.wrapped > was.angle ? was.wrapped : angle };
	};
	if (kind === 'stretch') return uncutShape({ ...tube, stretch: tube.stretch + by }, PIECE);
	return uncutShape({ ...tube, bends: tube.bends.map((each, i) => (i === bend ? change(each) : each)) }, PIECE);
}

/** An angle near 0 or 180, a distance near 0 and the height of a tube that lies flat turn back there: on either side the slope is another. */
const turnsBack = ({ kind }: Check, value: number): boolean =>
	kind === 'overall'
		? value - TUBE.od < 0.01
		: kind === 'angle'
			? Math.min(value, 180 - value) < 0.1
			: kind !== 'out' && Math.abs(value) < 0.01;

const STEPS = { mark: 1e-4, angle: 1e-3, rotation: 1e-3, radius: 1e-5, stretch: 1e-5 } as const;

/** Central differences of a value by one number; null where a highest place jumps nearby, so that there is no slope. */
function difference(tube: RawTube, kind: keyof typeof STEPS, bend: number, value: (shape: Shape) => number) {
	const at = (by: number) => (value(moved(tube, kind, bend, by)) - value(moved(tube, kind, bend, -by))) / (2 * by);
	const [far, near] = [at(4 * STEPS[kind]), at(STEPS[kind])];
	// Where two places stand out alike, as of a part that lies flat, the slope is another on either side.
	const [less, here, more] = [-STEPS[kind], 0, STEPS[kind]].map((by) => value(moved(tube, kind, bend, by)));
	if (Math.abs(more! + less! - 2 * here!) > 1e-3 * STEPS[kind] * (1 + Math.abs(near))) return null;
	return Math.abs(far - near) < 1e-4 * (1 + Math.abs(near)) ? near : null;
}

function expectSlopes(
	tube: RawTube,
	value: (shape: Shape) => number,
	gripsIn: (shape: Shape) => ReturnType<typeof gripsOf>,
) {
	const uncut = uncutShape(tube, PIECE);
	const [slopes] = readingSlopes({ tube, uncut, laid: frames(uncut) }, [gripsIn(uncut)]);
	const agrees = (found: number, by: number | null) => {
		fc.pre(by !== null);
		expect(Math.abs(found - by!)).toBeLessThan(1e-4 * (1 + Math.abs(by!)));
	};
	for (const [i, bend] of slopes!.entries())
		for (const kind of ['mark', 'angle', 'rotation', 'radius'] as const)
			agrees(bend[kind], difference(tube, kind, i, value));
	agrees(
		slopes!.reduce((sum, { stretch }) => sum + stretch, 0),
		difference(tube, 'stretch', 0, value),
	);
}

it('every check goes with marks, angles, rotations, radii and stretch as central differences of its value say', () => {
	fc.assert(
		fc.property(anyRawTube, fc.constantFrom(...CHECKS), (tube, check) => {
			const bare =
				check.kind === 'drop'
					? { ...check, surface: 'centre' as const }
					: check.kind === 'width'
						? { ...check, surface: 'center' as const }
						: check;
			fc.pre(!turnsBack(check, checkValue(bare, uncutShape(tube, PIECE), TUBE)));
			expectSlopes(
				tube,
				(shape) => checkValue(check, shape, TUBE),
				(shape) => gripsOf(check, frames(shape), TUBE),
			);
		}),
		{ numRuns: sample(200, 600) },
	);
});

it('a leg goes with the marks on its two sides and with what the bend before it takes', () => {
	fc.assert(
		fc.property(anyRawTube, fc.integer({ min: 1, max: 4 }), (tube, straight) => {
			expectSlopes(
				tube,
				({ straights }) => straights[straight - 1]!,
				(shape) => legGrips(straight, frames(shape)),
			);
		}),
		{ numRuns: 100 },
	);
});
