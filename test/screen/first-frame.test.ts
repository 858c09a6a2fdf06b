import { setImmediate as turn } from 'node:timers/promises';
import { describe, expect, test } from 'vitest';
import * as asks from '../helpers/screen/asks.ts';
import { FakeHome, FakeLive, ROWS } from '../helpers/screen/fake-ports.ts';
import { leave, runScreen } from '../helpers/screen/run-screen.ts';

function start(live: FakeLive | null) {
	return runScreen(new FakeHome(live, ROWS), undefined, live === null ? {} : { jobPath: 'arch.json' });
}

describe('the first frame', () => {
	test('loses no key that comes before there is anything to take it', async () => {
		const terminal = start(new FakeLive([asks.MEASURE], [[asks.MEASURE]]));
		terminal.type('47.9\r');
		await terminal.until('Saved as line');
	});

	test.each([0, 1, 2, 3, 5, 8, 13, 40])('loses no key that comes %d turns after it', async (turns) => {
		const live = new FakeLive([asks.MEASURE], [[asks.MEASURE]]);
		const terminal = start(live);
		for (let count = 0; count < turns; count++) await turn();
		for (const key of '47.99\x7f\r') {
			terminal.type(key);
			await turn();
		}
		await terminal.until('Saved as line');
		expect(live.answers).toEqual([{ action: { do: 'angles', angles: [47.9] } }]);
	});

	test.each([0, 1, 2, 4, 8])(
		'takes free text across the moment at which Ink takes over, after %d turns',
		async (turns) => {
			const live = new FakeLive([asks.MEASURE], [[asks.MEASURE]]);
			const terminal = start(live);
			for (let count = 0; count < turns; count++) await turn();
			for (const key of '*1\rtight clamp, die two\r') {
				terminal.type(key);
				await turn();
			}
			await terminal.until('Saved as line');
			expect(live.answers).toEqual([{ action: null, note: 'tight clamp, die two' }]);
		},
	);

	test('is left alone by the terminal’s own echo, and raw mode is off at the end', async () => {
		const terminal = start(null);
		expect(terminal.rawMode).toBe(true);
		await leave(terminal);
		expect(terminal.rawMode).toBe(false);
	});
});
