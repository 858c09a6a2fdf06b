import { afterEach, expect } from 'vitest';
import type { HomePort } from '../../src/screen/home-port.ts';
import { openScreen } from '../../src/screen/open-screen.tsx';
import { HeadlessTerminal } from './mount.tsx';
import { screenAsKept } from './screen-fixtures.ts';

export const SIZE = { columns: 80, rows: 24 };
const running: { terminal: HeadlessTerminal; ended: Promise<number> }[] = [];

/** The home screen on a headless terminal; left when the test is over. */
export function runScreen(port: HomePort, size = SIZE): HeadlessTerminal {
	const terminal = new HeadlessTerminal(size);
	const streams = { stdin: terminal.stdin, stdout: terminal.stdout, environment: { TERM: 'xterm' } };
	running.push({ terminal, ended: openScreen({ ...streams, port }) });
	return terminal;
}

/** The screen is literally the kept one. */
export async function asKept(...screen: Parameters<typeof screenAsKept>): Promise<void> {
	const { wanted, shown } = await screenAsKept(...screen);
	expect(shown).toBe(wanted);
}

afterEach(async () => {
	for (const { terminal, ended } of running.splice(0)) {
		terminal.type('\x03');
		await ended;
	}
});
