import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ImpossiblePiece, readTestPiece, type TestPiece } from '../../src/fit/test-piece.ts';
import { radians } from '../../src/tube/angles.ts';
import { corners } from '../../src/tube/frames.ts';
import { distance } from '../../src/tube/vector.ts';
import { impossiblePieceWords } from '../../src/words/test-piece.ts';

const scatter = { tape: 1 / 32, begin: 1 / 16, angle: 0.25 };

/** Readings without error on a piece that was bent so. */
function readOff(made: {
	clr: number;
	growth: number;
	markOffset: number;
	stretch: number;
	angle: number;
	mark: number;
}): TestPiece {
	const { clr, growth, markOffset, stretch, angle, mark } = made;
	const [od, radius, farStraight] = [1.75, clr * growth, 9.5];
	const straight = mark + markOffset;
	const [start, corner, far] = corners({ straights: [straight, farStraight], bends: [{ angle, rotation: 0, radius }] });
	// Two edges at half the diameter outside the center line cross this much further on.
	const outside = (od / 2) * Math.tan(radians(angle / 2));
	return {
		od,
		clr,
		angle,
		mark,
		before: straight + farStraight + (radius * radians(angle)) / (1 + stretch),
		startLeg: distance(start!, corner!) + outside,
		farLeg: distance(corner!, far!) + outside,
		straight,
		stretch: 0,
	};
}

const made = fc.record({
	clr: fc.double({ min: 3, max: 12, noNaN: true }),
	growth: fc.double({ min: 0.97, max: 1.08, noNaN: true }),
	markOffset: fc.double({ min: -0.5, max: 0.5, noNaN: true }),
	stretch: fc.double({ min: -0.005, max: 0.03, noNaN: true }),
	angle: fc.double({ min: 45, max: 150, noNaN: true }),
	mark: fc.double({ min: 8, max: 20, noNaN: true }),
});

describe('a test piece', () => {
	it('with its beginning read tells growth, mark offset and stretch', () => {
		fc.assert(
			fc.property(made, (truth) => {
				const { growth, markOffset, stretch } = readTestPiece(readOff(truth), scatter);
				expect(growth.value).toBeCloseTo(truth.growth, 9);
				expect(markOffset.value).toBeCloseTo(truth.markOffset, 9);
				expect(stretch?.value).toBeCloseTo(truth.stretch, 9);
			}),
		);
	});

	it('says what a bend of 90 becomes: its tangent further back, its arc longer, less raw tube under it', () => {
		fc.assert(
			fc.property(made, (truth) => {
				const { clr, growth, markOffset, stretch } = truth;
				const { mark, tube } = readTestPiece(readOff(truth), scatter).on90;
				// Laid out both ways from the same sharp corner: straight, arc, straight.
				const laid = (radius: number, stretched: number) => ({
					mark: 30 - radius,
					tube: 2 * (30 - radius) + (radius * Math.PI) / 2 / (1 + stretched),
				});
				const [drawn, real] = [laid(clr, 0), laid(clr * growth, stretch)];
				expect(mark.value).toBeCloseTo(real.mark - drawn.mark - markOffset, 6);
				expect(tube.value).toBeCloseTo(real.tube - drawn.tube, 6);
				expect(mark.sd).toBeGreaterThan(0);
				expect(tube.sd).toBeGreaterThan(0);
			}),
		);
	});

	it('without it tells growth and mark offset, stretch being known', () => {
		fc.assert(
			fc.property(made, (truth) => {
				const piece = { ...readOff(truth), straight: null, stretch: truth.stretch };
				const { growth, markOffset, stretch } = readTestPiece(piece, scatter);
				expect(growth.value).toBeCloseTo(truth.growth, 8);
				expect(markOffset.value).toBeCloseTo(truth.markOffset, 7);
				expect(stretch).toBeNull();
			}),
		);
	});

	it('says how far it can be trusted: a wide bend tells growth more finely than a right angle', () => {
		const truth = { clr: 6, growth: 1.02, markOffset: 0.1, stretch: 0, mark: 12 };
		const at = (angle: number) => readTestPiece({ ...readOff({ ...truth, angle }), straight: null }, scatter).growth.sd;
		expect(at(90)).toBeGreaterThan(1.5 * at(120));
		// By hand at 120 degrees, tape alone: three lengths of 1/32 in over 6 (2 tan 60 - 2.0944), that is sqrt(3)/32/8.218.
		const tapeOnly = readTestPiece({ ...readOff({ ...truth, angle: 120 }), straight: null }, { ...scatter, angle: 0 });
		expect(tapeOnly.growth.sd).toBeCloseTo(Math.sqrt(3) / 32 / (6 * (2 * Math.tan(radians(60)) - radians(120))), 9);
		// The same errors, drawn: the spread of what comes out is what was said, within a tenth.
		const piece = { ...readOff({ ...truth, angle: 120 }), straight: null };
		const said = readTestPiece(piece, scatter).growth.sd;
		const signs = [-1, 1];
		const outcomes = signs.flatMap((a) =>
			signs.flatMap((b) =>
				signs.flatMap((c) =>
					signs.map(
						(d) =>
							readTestPiece(
								{
									...piece,
									before: piece.before + a / 32,
									startLeg: piece.startLeg + b / 32,
									farLeg: piece.farLeg + c / 32,
									angle: piece.angle + d / 4,
								},
								scatter,
							).growth.value - 1.02,
					),
				),
			),
		);
		const drawn = Math.sqrt(outcomes.reduce((sum, e) => sum + e * e, 0) / outcomes.length);
		expect(drawn / said).toBeGreaterThan(0.9);
		expect(drawn / said).toBeLessThan(1.1);
	});

	it('refuses readings that cannot all be right', () => {
		const piece = readOff({ clr: 6, growth: 1.02, markOffset: 0, stretch: 0, angle: 90, mark: 12 });
		const refused = (changes: Partial<TestPiece>): string => {
			try {
				readTestPiece({ ...piece, ...changes }, scatter);
			} catch (error) {
				if (error instanceof ImpossiblePiece) return impossiblePieceWords(error);
				throw error;
			}
			return 'taken';
		};
		expect(refused({ startLeg: piece.startLeg + 8 })).toContain('cannot all be right');
		expect(refused({ before: 1, straight: null })).toContain('read on the outside');
	});
});
