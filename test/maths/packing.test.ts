import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Packing, type Piece, packed, type Stick } from '../../src/maths/packing.ts';
import { type Draw, draws } from '../../src/practice/random.ts';
import { sample } from '../helpers/sample-size.ts';

const ENDLESS = Number.POSITIVE_INFINITY;

/**
 * E. Falkenauer's uniform instances of 120 pieces ("A hybrid grouping genetic algorithm for bin packing", Journal of Heuristics 2, 1996,
 * 5-30) as OR-Library has them (binpack1.txt): a name, the stick, how many pieces, the fewest sticks known, the pieces.
 */
const BINPACK1 = readFileSync(new URL('../fixtures/orlib-binpack1.txt', import.meta.url), 'utf8');

/**
 * The fewest sticks, proven. The file's own for two of them was one too many: I. P. Gent, "Heuristic solution of open bin packing
 * problems", Journal of Heuristics 3 (1998) 299-304, found 50 and 49 (from memory).
 */
const FEWEST: Record<string, number> = { u120_00: 48, u120_01: 49, u120_02: 46, u120_04: 50, u120_08: 50, u120_19: 49 };

function instance(name: string): { length: number; pieces: Piece[]; known: number } {
	const words = BINPACK1.split(/\s+/);
	const [length, count, known] = words.slice(words.indexOf(name) + 1).map(Number) as [number, number, number];
	const first = words.indexOf(name) + 4;
	const pieces = words.slice(first, first + count).map((word) => ({ length: Number(word), quantity: 1 }));
	return { length, pieces, known };
}

/** What would make a packing wrong, if anything. */
function isRight(
	{ sticks: cut, used }: Packing,
	pieces: readonly Piece[],
	sticks: readonly Stick[],
	kerf: number,
): void {
	const taken = cut.flatMap((each) => each.pieces);
	expect(pieces.map((_, i) => taken.filter((piece) => piece === i).length)).toEqual(
		pieces.map(({ quantity }) => quantity),
	);
	for (const [i, { count }] of sticks.entries())
		expect(cut.filter(({ stick, isMissing }) => stick === i && !isMissing).length).toBeLessThanOrEqual(count);
	for (const { stick, pieces: own, left } of cut) {
		const needed = own.reduce((sum, piece) => sum + pieces[piece]!.length, 0) + kerf * (own.length - 1);
		expect(needed).toBeLessThanOrEqual(sticks[stick]!.length + 1e-6);
		expect(left).toBeCloseTo(Math.max(0, sticks[stick]!.length - needed - kerf), 6);
		expect([...own].sort((a, b) => pieces[b]!.length - pieces[a]!.length)).toEqual(own);
	}
	expect(used).toBeCloseTo(
		cut.reduce((sum, { stick }) => sum + sticks[stick]!.length, 0),
		9,
	);
}

/** The fewest sticks missing and then the least length of sticks, by trying every way to share out the pieces. */
function tried(lengths: readonly number[], sticks: readonly Stick[], kerf: number): { missing: number; used: number } {
	const most = Math.max(...sticks.map(({ length }) => length));
	const known = new Map<string, { missing: number; used: number }>();
	const rest = (mask: number, counts: readonly number[]): { missing: number; used: number } => {
		if (mask === 0) return { missing: 0, used: 0 };
		const key = `${mask}|${counts}`;
		const before = known.get(key);
		if (before) return before;
		const first = mask & -mask;
		let best = { missing: ENDLESS, used: ENDLESS };
		for (let set = mask; set > 0; set = (set - 1) & mask) {
			if (!(set & first)) continue;
			const own = lengths.filter((_, i) => set & (1 << i));
			const needed = own.reduce((sum, length) => sum + length, 0) + kerf * (own.length - 1);
			for (const [i, { length }] of [...sticks, { length: most }].entries()) {
				const isMissing = i === sticks.length;
				if (needed > length + 1e-9 || (!isMissing && counts[i] === 0)) continue;
				const after = rest(
					mask & ~set,
					counts.map((count, kind) => (kind === i ? count - 1 : count)),
				);
				const next = { missing: after.missing + (isMissing ? 1 : 0), used: after.used + length };
				if (next.missing < best.missing || (next.missing === best.missing && next.used < best.used - 1e-9)) best = next;
			}
		}
		known.set(key, best);
		return best;
	};
	return rest(
		(1 << lengths.length) - 1,
		sticks.map(({ count }) => count),
	);
}

const sixteenths = (draw: Draw, low: number, high: number) => Math.round(draw.uniform(low, high) * 16) / 16;
const whole = (draw: Draw, low: number, high: number) => Math.floor(draw.uniform(low, high + 1));

describe('packing', () => {
	it.each(Object.entries(FEWEST))(
		'cuts the published instance %s from %i sticks, and proves it',
		{ timeout: 60_000 },
		(name, fewest) => {
			const { length, pieces, known } = instance(name);
			const sticks = [{ length, count: ENDLESS }];
			const packing = packed(pieces, sticks, 0);
			isRight(packing, pieces, sticks, 0);
			expect(packing.sticks).toHaveLength(fewest);
			expect(fewest).toBeLessThanOrEqual(known);
			expect([packing.isProven, packing.bound]).toEqual([true, fewest * length]);
		},
	);

	it('is the best there is of up to eight pieces, by trying every way', { timeout: 60_000 }, () => {
		for (let seed = 1; seed <= 80; seed++) {
			const draw = draws(seed);
			const kerf = [0, 1 / 16, 1 / 8][seed % 3]!;
			const lengths = Array.from({ length: whole(draw, 1, 8) }, () => sixteenths(draw, 8, 70));
			const sticks = [70, ...Array.from({ length: whole(draw, 0, 2) }, () => sixteenths(draw, 20, 120))].map(
				(length) => ({
					length,
					count: draw.happens(0.3) ? ENDLESS : whole(draw, 0, 3),
				}),
			);
			const pieces = lengths.map((length) => ({ length, quantity: 1 }));
			const packing = packed(pieces, sticks, kerf);
			isRight(packing, pieces, sticks, kerf);
			const { missing, used } = tried(lengths, sticks, kerf);
			const found = packing.sticks.filter(({ isMissing }) => isMissing).length;
			expect([seed, found, packing.used, packing.isProven]).toEqual([seed, missing, used, true]);
		}
	});

	it('is proven for thirty pieces from sticks of one length and of two', { timeout: 120_000 }, () => {
		for (let seed = 1; seed <= 12; seed++) {
			const draw = draws(seed);
			const [low, high] = [whole(draw, 10, 60), whole(draw, 70, 130)];
			const pieces = Array.from({ length: 30 }, () => ({ length: sixteenths(draw, low, high), quantity: 1 }));
			const sticks = [240, ...(seed % 2 === 0 ? [144] : [])].map((length) => ({ length, count: ENDLESS }));
			const packing = packed(pieces, sticks, 1 / 8);
			isRight(packing, pieces, sticks, 1 / 8);
			expect([seed, packing.isProven]).toEqual([seed, true]);
		}
	});

	it('never says that less is needed than a cutting that is known to be there', { timeout: 60_000 }, () => {
		// Sticks sawn into three without waste, as in Falkenauer's triplets: no cutting is better.
		for (let seed = 1; seed <= sample(1, 2); seed++) {
			const draw = draws(seed);
			const pieces = Array.from({ length: 20 }, () => {
				const first = whole(draw, 380, 490);
				const second = whole(draw, 250, (1000 - first) / 2);
				return [first, second, 1000 - first - second].map((length) => ({ length, quantity: 1 }));
			}).flat();
			const sticks = [{ length: 1000, count: ENDLESS }];
			const packing = packed(pieces, sticks, 0);
			isRight(packing, pieces, sticks, 0);
			expect(packing.bound).toBe(20_000);
			expect(packing.sticks.length).toBeLessThanOrEqual(21);
			expect(packing.isProven).toBe(packing.sticks.length === 20);
		}
	});

	it('leaves no cut after the last piece where the stick ends with it', () => {
		const pieces = [{ length: 80, quantity: 3 }];
		expect(packed(pieces, [{ length: 240, count: ENDLESS }], 0.125).sticks).toHaveLength(2);
		expect(packed(pieces, [{ length: 240.25, count: ENDLESS }], 0.125).sticks).toHaveLength(1);
	});

	it('says which sticks are missing', () => {
		const packing = packed(
			[{ length: 60, quantity: 5 }],
			[
				{ length: 130, count: 1 },
				{ length: 90, count: 1 },
			],
			0,
		);
		const missing = packing.sticks.filter(({ isMissing }) => isMissing);
		expect(missing.map(({ stick, pieces }) => [stick, pieces])).toEqual([[0, [0, 0]]]);
		expect(packing.isProven).toBe(true);
	});

	it('cuts nothing from nothing, and refuses a piece that is longer than every stick', () => {
		expect(packed([], [], 0)).toEqual({ sticks: [], used: 0, bound: 0, isProven: true });
		expect(() => packed([{ length: 61, quantity: 1 }], [{ length: 60, count: ENDLESS }], 0)).toThrow(RangeError);
	});
});
