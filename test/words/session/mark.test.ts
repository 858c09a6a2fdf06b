import { describe, expect, test } from 'vitest';
import { markEnd } from '../../../src/screen/session/pages/ask-set.ts';
import { seamInBend } from '../../../src/screen/session/pages/set-up.ts';
import type { SetAsk } from '../../../src/session/protocol/asks.ts';
import { frames } from '../../../src/tube/frames.ts';
import { around, tubeTurn } from '../../../src/tube/turns.ts';
import { cross, dot } from '../../../src/tube/vector.ts';
import { fromShown, inShown, nextLengths, tapeValue } from '../../../src/words/lengths.ts';
import * as words from '../../../src/words/session/mark.ts';
import { SET } from '../../helpers/screen/asks.ts';
import { ARCH } from '../../helpers/screen/fake-ports.ts';

const THIN = { ...ARCH, tube: { ...ARCH.tube, od: 1.5 } };

/** The set ask of bend 2 whose plane is turned so far, on a tube of 1 1/2 in. */
function turned(rotation: number): SetAsk {
	return { ...SET, rotation, tubeTurn: tubeTurn(rotation, 2), ...around(THIN, [0, rotation], 2) };
}

describe('mark round and tube turn', () => {
	// A third of the way round 1 1/2 in is 1.5708 in, 1 37/64 on a tape in 64ths.
	test.each([
		[120, 'Mark 1 37/64 in round, clockwise; turn the tube 120° counterclockwise'],
		[-120, 'Mark 1 37/64 in round, counterclockwise; turn the tube 120° clockwise'],
	])('go opposite ways, rotation %i', (rotation, said) => {
		expect(words.markLineWords(turned(rotation), THIN)).toBe(`${said}, seen from the clamp side toward the far end.`);
	});

	test.each([
		[0, "Mark on the line along the tube; don't turn the tube."],
		[180, 'Mark both faces, 2 23/64 in round to the opposite; flip the tube, either way.'],
	])('in the plane of the bend before, rotation %i', (rotation, said) => {
		expect(words.markLineWords(turned(rotation), THIN)).toBe(said);
	});

	// Looking along the travel with the first bend going up, clockwise is to the right hand: travel x up, right-handed axes.
	test.each([35, 90, -60])('agree with the tube in space, rotation %i', (rotation) => {
		const shape = {
			straights: [10, 10, 10],
			bends: [
				{ angle: 1e-6, rotation: 0, radius: 5 },
				{ angle: 30, rotation, radius: 5 },
			],
		};
		const [first, second] = frames(shape).arcs;
		const right = cross(second!.tangent, first!.normal);
		const toTheRight = dot(second!.normal, right);
		const { around: at, tubeTurn: turn } = turned(rotation);
		expect(Math.sign(at.degrees)).toBe(Math.sign(toTheRight));
		// The machine's plane stands still: a tube turned back by the rotation has its bend in that plane again.
		expect(turn.way).toBe(toTheRight > 0 ? 'counterclockwise' : 'clockwise');
		expect(words.goesWords(turned(rotation))).toContain(toTheRight > 0 ? ' clockwise' : ' counterclockwise');
	});
});

describe('the mark as it is read', () => {
	test('from the far end once a bend is made, from the start end before and where it is chosen', () => {
		expect([1, 2, 5].map((bend) => markEnd(bend, false))).toEqual(['start', 'far', 'far']);
		expect(markEnd(2, true)).toBe('start');
	});

	test('with what is left over, the hook burnt, and the other end for a check', () => {
		expect(words.tapeWords(SET, 'far', ARCH)).toBe(
			'76 3/8 in, just over (0.025 in) from the far end; burn an inch: hold 1 on the end, read 77 3/8.',
		);
		expect(words.otherEndWords(SET, 'far', ARCH)).toBe('Check: 39 5/8 in from the start end, 116 in together.');
		expect(words.tapeWords(SET, 'start', { ...ARCH, lengths: 'mm' })).toBe(
			'1006 mm, a hair under (0.2 mm) from the start end; burn 100 mm: hold 100 on the end, read 1106.',
		);
	});

	// 13 9/32 and 62 5/16 make 75 19/32, by hand; the piece of 75.618 reads 75 5/8.
	test('whose two readings come to what is said, where the rounding makes that another length than the piece', () => {
		const mark = { ...SET.mark, fromStart: 13.2951, fromFarEnd: 62.3233 };
		const job = { ...ARCH, tooling: { ...ARCH.tooling, tape: 1 / 32 } };
		expect(words.otherEndWords({ ...SET, mark }, 'start', job)).toBe(
			'Check: 62 5/16 in from the far end, 75 19/32 in together (the piece: 75 5/8 in).',
		);
	});

	test.each([
		[0.0625, "Moved 1/16 in from the drawing's mark, toward the far end."],
		[-0.3, "Moved 19/64 in from the drawing's mark, toward the start end."],
		[0.001, "It is the drawing's mark itself."],
	])('and how far it moved: %f', (moved, said) => {
		expect(words.movedWords({ ...SET, mark: { ...SET.mark, moved } }, ARCH)).toBe(said);
	});

	test('a seam at the side of bend 1 comes into the plane of a bend a quarter round', () => {
		expect([0, 45, 61, 90, -90, 119, 180].map(seamInBend)).toEqual([false, false, true, true, true, true, false]);
	});
});

describe('lengths as one chooses', () => {
	test('go round: fractions, decimals, millimeters', () => {
		expect(nextLengths(ARCH)).toBe('decimal');
		expect(nextLengths({ ...ARCH, lengths: 'decimal' })).toBe('mm');
		expect(nextLengths({ ...ARCH, lengths: 'mm' })).toBe('fraction');
	});

	test('of an inch job and of a metric one', () => {
		const shown = (lengths: 'fraction' | 'decimal' | 'mm', job = ARCH) => tapeValue(39.6, { ...job, lengths });
		expect([shown('fraction'), shown('decimal'), shown('mm')]).toEqual(['39 5/8', '39.6', '1006']);
		const metric = { ...ARCH, units: 'mm' as const, tooling: { ...ARCH.tooling, tape: 0.5 } };
		expect([shown('fraction', metric), shown('decimal', metric), shown('mm', metric)]).toEqual([
			'1 9/16',
			'1.559',
			'39.5',
		]);
	});

	test('what is typed is taken in what is shown', () => {
		const metric = { ...ARCH, lengths: 'mm' as const };
		expect(fromShown(254, metric)).toBeCloseTo(10, 12);
		expect(inShown(10, metric)).toBeCloseTo(254, 12);
	});
});
