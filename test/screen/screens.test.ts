import { readFileSync } from 'node:fs';
import { afterEach, describe, expect, test } from 'vitest';
import { openScreen, type ScreenOptions } from '../../src/screen/open-screen.tsx';
import type { Output } from '../../src/session/protocol.ts';
import * as asks from '../helpers/asks.ts';
import { FakeHome, FakeLive, KEPT, ROWS } from '../helpers/fake-ports.ts';
import { HeadlessTerminal } from '../helpers/mount.tsx';

const SIZES = [
	{ columns: 80, rows: 24 },
	{ columns: 60, rows: 20 },
];

/** Each page of a session: what the session has put out, the keys that lead to the page, and its title. */
const PAGES: [name: string, outputs: Output[], keys: string, title: string][] = [
	['start', [asks.SESSION, asks.SET], '', 'New session'],
	['warnings', [asks.WARNINGS, asks.SET], '', 'Warnings'],
	['set', [asks.SET], '', 'Set the tube'],
	['set-again', [asks.SET_AGAIN], '', 'seat 2'],
	['set-details', [asks.SET], '*7\r39.7\r', 'also tells'],
	['pull', [asks.SET, asks.PULL], '', 'Pull 1'],
	['pull-limit', [asks.SET, { ...asks.PULL, limit: true, lead: null, pull: 3 }], '', 'Pull 3'],
	['released', [asks.SET, asks.PULL], '51.5\r', 'released'],
	['measure', [asks.MEASURE], '47', 'Measure'],
	['confirm', [asks.CONFIRM], '', 'right?'],
	['check-drop', [asks.CHECK], '14 5/16', 'Check: rise'],
	['check-angle', [asks.CHECK_ANGLE], '', 'Check: legs'],
	['check-span', [asks.CHECK_SPAN], '', 'Check: reach'],
	['check-out', [asks.CHECK_OUT], '', 'Check: lie'],
	['check-ovality', [asks.CHECK_OVALITY], '', 'Check: section'],
	['least', [asks.CHECK_OVALITY], '1.76\r', 'Least'],
	['decide', [asks.DECIDE], '', 'Decide'],
	['decide-relieve', [asks.RELIEVE], '', 'Decide'],
	['decide-reopen', [asks.REOPEN], '', 'Decide'],
	['relief', [asks.RELIEVE], '+', 'Caution'],
	['corrected', [asks.CORRECTED, asks.SET], '', 'Corrected'],
	['as-made', [{ ...asks.CORRECTED, remaining: [], without: asks.CORRECTED.predicted }, asks.DONE], '', 'as made'],
	['done', [asks.DONE], '', 'Done'],
	['scrapped', [asks.SCRAPPED], '', 'Scrapped'],
	['more', [asks.SET], '*', 'More'],
	['undo', [asks.MEASURE], '/', 'Take back'],
	['amend', [asks.MEASURE], '*5\r', 'Correct an earlier'],
	['amend-which', [asks.MEASURE], '*5\r1\r', 'Correct entry 2'],
	['amend-value', [asks.MEASURE], '*5\r1\r2\r', 'What it really was'],
	['evidence', [asks.MEASURE], '*3\r', 'Something else'],
	['evidence-value', [asks.MEASURE], '*3\r1\r3\r', 'Bend 3, measured'],
	['reopen', [asks.MEASURE], '*6\r', 'Go back to a made bend'],
	['reopen-how', [asks.MEASURE], '*6\r1\r', 'Go back to bend 1'],
	['note', [asks.MEASURE], '*1\rtight clamp', 'tight clamp'],
	['scrap', [asks.MEASURE], '*8\r', 'Why is it scrap?'],
	['scrap-sure', [asks.MEASURE], '*8\rkinked at bend 2\r', 'Scrap the tube?'],
];

const open: { terminal: HeadlessTerminal; ended: Promise<number> }[] = [];

/** Opens the screen on a terminal of that size. */
function shown(size: { columns: number; rows: number }, options: ScreenOptions): HeadlessTerminal {
	const terminal = new HeadlessTerminal(size);
	const streams = { stdin: terminal.stdin, stdout: terminal.stdout, environment: { TERM: 'xterm' } };
	open.push({ terminal, ended: openScreen({ ...streams, ...options }) });
	return terminal;
}

afterEach(async () => {
	for (const { terminal, ended } of open.splice(0)) {
		terminal.type('\x03');
		await ended;
	}
});

/** The last keys may still be on their way: waits for the screen that is wanted, and no more than a while for another. */
async function settled(terminal: HeadlessTerminal, wanted: string): Promise<void> {
	await terminal.until((text) => text === wanted, 3000).catch(() => undefined);
}

function expected(name: string, { columns, rows }: { columns: number; rows: number }): string {
	return readFileSync(new URL(`../fixtures/screens/${name}-${columns}x${rows}.txt`, import.meta.url), 'utf8').trimEnd();
}

describe.each(SIZES)('at $columns by $rows', (size) => {
	test.each(PAGES)('the page %s', async (name, outputs, keys, title) => {
		const port = new FakeHome(new FakeLive(outputs, [], undefined, KEPT));
		const terminal = shown(size, { port, jobPath: 'arch.json' });
		await terminal.until(asks.ARCH_NAME);
		terminal.type(keys);
		await terminal.until(title);
		await settled(terminal, expected(name, size));
		expect(terminal.text).toBe(expected(name, size));
	});

	test('the home page', async () => {
		const terminal = shown(size, { port: new FakeHome(null, ROWS) });
		expect(await terminal.until('Besides')).toBe(expected('home', size));
	});
});
