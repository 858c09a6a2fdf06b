import { expect, it } from 'vitest';
import { table } from '../../src/terminal/table.ts';

it('puts numbers to the right and words to the left, by the cells that they take', () => {
	const rows = [
		['bend', 'way', 'angle'],
		['1', '船尾', '7.5'],
		['12', 'up', '90'],
	];
	expect(table(rows, [1])).toEqual(['  bend  way   angle', '     1  船尾    7.5', '    12  up       90']);
});
