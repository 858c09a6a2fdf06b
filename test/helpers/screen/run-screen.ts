import { expect, onTestFinished } from 'vitest';
import type { HomePort } from '../../../src/screen/home/home-port.ts';
import { openScreen, type ScreenOptions } from '../../../src/screen/shell/open-screen.tsx';
import { HeadlessTerminal } from './mount.tsx';
import { screenAsKept } from './screen-fixtures.ts';

export const SIZE = { columns: 80, rows: 24 };
const running = new Map<HeadlessTerminal, Promise<number>>();

/** The home screen on a headless terminal, or with a `jobPath` that job's session; left when the test is over. */
export function runScreen(port: HomePort, size = SIZE, options: Partial<ScreenOptions> = {}): HeadlessTerminal {
	const terminal = new HeadlessTerminal(size);
	const streams = { stdin: terminal.stdin, stdout: terminal.stdout, environment: { TERM: 'xterm' } };
	running.set(terminal, openScreen({ ...streams, ...options, port }));
	onTestFinished(async () => {
		if (running.has(terminal)) await leave(terminal);
	});
	return terminal;
}

/** Leaves a screen that `runScreen` gave, to its end. */
export async function leave(terminal: HeadlessTerminal): Promise<void> {
	terminal.type('\x03');
	await running.get(terminal);
	running.delete(terminal);
}

/** The screen is literally the kept one. */
export async function asKept(...screen: Parameters<typeof screenAsKept>): Promise<void> {
	const { wanted, shown } = await screenAsKept(...screen);
	expect(shown).toBe(wanted);
}
