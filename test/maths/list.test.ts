import { expect, it } from 'vitest';
import { at, largestFirst } from '../../src/maths/list.ts';

it('gives what stands there, 0 and false too, and says where nothing does', () => {
	expect(at([7, 0], 1)).toBe(0);
	expect(at([false], 0)).toBe(false);
	expect(() => at([7, 0], 2)).toThrow('index 2 lies outside a list of 2');
	expect(() => at([7, 0], -1)).toThrow('index -1 lies outside a list of 2');
});

it('puts the largest first, and leaves what is the same but for rounding as it came', () => {
	// By hand: .1 + .2 and .3 are the same number summed in two ways.
	const list = ['b', 'a', 'c', 'd'];
	const of: Record<string, number> = { b: 0.3, a: 0.1 + 0.2, c: 2, d: 0.31 };
	expect(largestFirst(list, (each) => of[each]!)).toEqual(['c', 'd', 'b', 'a']);
	expect(largestFirst(list.toReversed(), (each) => of[each]!)).toEqual(['c', 'd', 'a', 'b']);
	expect(list).toEqual(['b', 'a', 'c', 'd']);
});
