import { describe, expect, it } from 'vitest';
import { type CutList, type CutPiece, cutList } from '../../src/tube/cut-list.ts';

const ENDLESS = Number.POSITIVE_INFINITY;
const piece = (length: number, wanted: number, cut: Partial<CutPiece> = {}): CutPiece => ({
	length,
	wanted,
	finished: 0,
	begun: 0,
	scrapped: 0,
	...cut,
});
const listed = (pieces: CutPiece[], sticks: { length: number; count: number }[], asNow = false): CutList => {
	const list = cutList(pieces, sticks, { kerf: 0.125, asNow });
	if ('why' in list) throw new Error(list.why);
	return list;
};

describe('the cut list', () => {
	it('marks each cut from the end of the stick, with the saw between', () => {
		const { sticks, used, inPieces, left } = listed([piece(80, 2), piece(30, 1)], [{ length: 240, count: ENDLESS }]);
		expect(sticks).toEqual([
			{
				length: 240,
				from: 'stick',
				cuts: [
					{ piece: 0, mark: 80 },
					{ piece: 0, mark: 160.125 },
					{ piece: 1, mark: 190.25 },
				],
				left: 49.625,
			},
		]);
		expect([used, inPieces, left]).toEqual([240, 190, 49.625]);
	});

	it('leaves out what is finished or being bent, and cuts a scrapped piece again', () => {
		const { sticks } = listed(
			[piece(80, 5, { finished: 2, begun: 1, scrapped: 1 })],
			[{ length: 100, count: ENDLESS }],
		);
		expect(sticks).toHaveLength(2);
	});

	it('takes the tube of every piece that was cut from the sticks that are counted', () => {
		// Three were cut from the first stick of 250; the fourth, cut again, takes the second.
		const pieces = [piece(80, 3, { finished: 2, scrapped: 1 })];
		const { sticks } = listed(pieces, [{ length: 250, count: 2 }]);
		expect(sticks.map(({ length, from }) => [length, from])).toEqual([[250, 'stick']]);
		const short = listed(pieces, [{ length: 250, count: 1 }]);
		expect(short.sticks.map(({ length, from }) => [length, from])).toEqual([[250, 'missing']]);
		expect(listed(pieces, [{ length: 250, count: 1 }], true).sticks[0]!.from).toBe('stick');
	});

	it('goes on with what earlier pieces left of a stick', () => {
		const { sticks } = listed([piece(80, 2, { scrapped: 1 })], [{ length: 250, count: 1 }]);
		expect(sticks).toEqual([
			{
				length: 250 - 80.125,
				from: 'left',
				cuts: [
					{ piece: 0, mark: 80 },
					{ piece: 0, mark: 160.125 },
				],
				left: 250 - 3 * 80.125,
			},
		]);
	});

	it('says what is longer than every stick, and that more was cut than the sticks hold', () => {
		const options = { kerf: 0, asNow: false };
		expect(cutList([piece(30, 1), piece(80, 1)], [{ length: 60, count: 3 }], options)).toEqual({
			why: 'too-long',
			piece: 1,
			longest: 60,
		});
		expect(cutList([piece(50, 4, { finished: 3 })], [{ length: 60, count: 2 }], options)).toEqual({ why: 'cut-more' });
	});
});
