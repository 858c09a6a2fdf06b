import { expect, it } from 'vitest';
import { at } from '../../src/maths/list.ts';

it('gives what stands there, 0 and false too, and says where nothing does', () => {
	expect(at([7, 0], 1)).toBe(0);
	expect(at([false], 0)).toBe(false);
	expect(() => at([7, 0], 2)).toThrow('index 2 lies outside a list of 2');
	expect(() => at([7, 0], -1)).toThrow('index -1 lies outside a list of 2');
});
