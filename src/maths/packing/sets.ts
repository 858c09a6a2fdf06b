import { ROUNDING } from '../scalar.ts';
import type { StickKind } from './wanted.ts';

/** So many of each kind of stick, and what they cost together. */
export interface StickSet {
	counts: readonly number[];
	cost: number;
}

/** More sets than these are not looked through. */
const MOST = 20_000;

/**
 * The sets of sticks that cost `least` or more but less than `below` and are long enough for `length` of pieces together, cheapest first;
 * null where they are too many.
 */
export function stickSets(
	kinds: readonly StickKind[],
	{ least, below, length }: { least: number; below: number; length: number },
): StickSet[] | null {
	const found: StickSet[] = [];
	const counts = kinds.map(() => 0);
	let left = MOST;
	const add = (kind: number, cost: number, room: number): void => {
		if (left-- <= 0 || cost >= below * (1 - ROUNDING)) return;
		if (kind === kinds.length) {
			if (cost >= least * (1 - ROUNDING) && room >= length * (1 - ROUNDING)) found.push({ counts: [...counts], cost });
			return;
		}
		const { cost: each, room: own, count } = kinds[kind]!;
		for (let taken = 0; taken <= count && cost + taken * each < below; taken++) {
			counts[kind] = taken;
			add(kind + 1, cost + taken * each, room + taken * own);
		}
		counts[kind] = 0;
	};
	add(0, 0, 0);
	return left > 0 ? found.sort((a, b) => a.cost - b.cost) : null;
}
