import { describe, expect, test } from 'vitest';
import { digitSize } from '../../../src/screen/text/digits.ts';
import { type BigNumber, heightOf, numbersLayout, rowsForNumbers } from '../../../src/screen/text/numbers-layout.ts';

const MARK: BigNumber = {
	label: 'MARK',
	unit: 'in',
	value: '39 5/8',
	below: 'from the far end',
	brief: 'from FAR',
	place: 3,
};
const LONG_MARK: BigNumber = { ...MARK, value: '111 13/16' };
const METRIC_MARK: BigNumber = { ...MARK, unit: 'mm', value: '2946' };
const TURN: BigNumber = { label: 'TURN', unit: '°', value: '90', below: 'clockwise', place: 3, way: 'clockwise' };
const LONG_TURN: BigNumber = { ...TURN, value: '129.5', below: 'counterclockwise', way: 'counterclockwise' };
const LEAD: BigNumber = { label: 'EASE UP', unit: '°', value: '49', below: 'from here', place: 2 };
const STOP: BigNumber = { label: 'STOP', unit: '°', value: '51.5', below: 'held under load', place: 1 };
const LONG_STOP: BigNumber = { ...STOP, value: '112.25' };
const LONG_LEAD: BigNumber = { ...LEAD, value: '109.25' };

/** What the bend needs: a short line of numbers, one with the longest there are, a metric one, one without a lead. */
const STATES: Record<string, readonly BigNumber[]> = {
	short: [MARK, TURN, LEAD, STOP],
	long: [LONG_MARK, LONG_TURN, LONG_LEAD, LONG_STOP],
	metric: [METRIC_MARK, LONG_TURN, LEAD, STOP],
	'no lead': [MARK, TURN, STOP],
};

/** How many rows each number's digits are high; 1: in words. */
function rowsOf(state: string, columns: number, rows: number): Record<string, number> {
	const lines = numbersLayout(STATES[state]!, columns, rowsForNumbers(rows));
	return Object.fromEntries(
		lines.flat().map(({ number, scale }) => [number.label, digitSize(number.value, scale).height]),
	);
}

describe('the large numbers by size of the window and state', () => {
	test.each([
		[60, 20, 'short', { MARK: 1, TURN: 1, 'EASE UP': 5, STOP: 5 }],
		[60, 20, 'long', { MARK: 1, TURN: 1, 'EASE UP': 5, STOP: 5 }],
		[60, 20, 'metric', { MARK: 1, TURN: 1, 'EASE UP': 5, STOP: 5 }],
		[60, 20, 'no lead', { MARK: 5, TURN: 5, STOP: 5 }],
		[80, 24, 'short', { MARK: 5, TURN: 5, 'EASE UP': 5, STOP: 5 }],
		[80, 24, 'long', { MARK: 1, TURN: 1, 'EASE UP': 5, STOP: 5 }],
		[80, 24, 'metric', { MARK: 5, TURN: 5, 'EASE UP': 5, STOP: 5 }],
		[80, 24, 'no lead', { MARK: 5, TURN: 5, STOP: 5 }],
		[100, 30, 'short', { MARK: 5, TURN: 5, 'EASE UP': 10, STOP: 10 }],
		[100, 30, 'long', { MARK: 5, TURN: 5, 'EASE UP': 5, STOP: 5 }],
		[100, 30, 'metric', { MARK: 5, TURN: 5, 'EASE UP': 5, STOP: 10 }],
		[100, 30, 'no lead', { MARK: 5, TURN: 5, STOP: 10 }],
		[160, 50, 'short', { MARK: 10, TURN: 10, 'EASE UP': 10, STOP: 15 }],
		[160, 50, 'long', { MARK: 5, TURN: 5, 'EASE UP': 10, STOP: 10 }],
		[160, 50, 'metric', { MARK: 5, TURN: 5, 'EASE UP': 15, STOP: 20 }],
		[160, 50, 'no lead', { MARK: 10, TURN: 10, STOP: 20 }],
	])('%i by %i, %s', (columns, rows, state, wanted) => {
		expect(rowsOf(state, columns, rows)).toEqual(wanted);
	});

	// What the bench screen promises: the stop is read from three metres.
	test.each(Object.keys(STATES))(
		'the stop is at least 5 rows high from 60 by 20 up and 9 at 160 by 50: %s',
		(state) => {
			expect(rowsOf(state, 60, 20).STOP).toBeGreaterThanOrEqual(5);
			expect(rowsOf(state, 80, 24).STOP).toBeGreaterThanOrEqual(5);
			expect(rowsOf(state, 160, 50).STOP).toBeGreaterThanOrEqual(9);
		},
	);

	test('at any size from 60 by 20 up all fits, the stop is the largest, the lead the second', () => {
		for (const state of Object.keys(STATES)) {
			for (let columns = 60; columns <= 200; columns += 7) {
				for (let rows = 20; rows <= 70; rows += 5) {
					const budget = rowsForNumbers(rows);
					const lines = numbersLayout(STATES[state]!, columns, budget);
					const height = lines.reduce((sum, line) => sum + heightOf(line), 0);
					expect(height, `${state} at ${columns}x${rows}`).toBeLessThanOrEqual(budget);
					const area = (place: number) =>
						lines
							.flat()
							.filter(({ number }) => number.place === place)
							.map(({ scale }) => (scale ? scale.across * scale.down : 0));
					const [stop = 0] = area(1);
					const [lead = stop] = area(2);
					expect(stop).toBeGreaterThanOrEqual(lead);
					expect(lead).toBeGreaterThanOrEqual(Math.max(...area(3)));
				}
			}
		}
	});

	test('a larger window never makes the stop smaller', () => {
		let before = 0;
		for (let rows = 20; rows <= 80; rows++) {
			const { STOP: now = 0 } = rowsOf('short', 160, rows);
			expect(now).toBeGreaterThanOrEqual(before);
			before = now;
		}
	});
});
