import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { expect } from 'vitest';
import type { Size } from '../../src/terminal/output.ts';
import type { ShownScreen } from './shown-screen.ts';

/**
 * Waits until the screen is the one kept under that name and size. A screen that nobody has kept yet fails the test; with
 * PULLBOOK_SCREENS=keep in the environment what is shown is kept instead, to be read before it is believed.
 */
export async function expectedScreen(screen: ShownScreen, name: string, { columns, rows }: Size): Promise<void> {
	const file = new URL(`../fixtures/screens/${name}-${columns}x${rows}.txt`, import.meta.url);
	if (process.env.PULLBOOK_SCREENS === 'keep') {
		// Whatever is still on its way has been drawn once nothing new has come for a while of frames.
		for (let before = ''; before !== screen.raw; ) {
			before = screen.raw;
			for (let turn = 0; turn < 200; turn++) await new Promise(setImmediate);
		}
		writeFileSync(file, `${screen.text}\n`);
		return;
	}
	const wanted = existsSync(file) ? readFileSync(file, 'utf8').trimEnd() : 'a screen that is not kept';
	await screen.until((text) => text === wanted, 3000).catch(() => undefined);
	expect(screen.text).toBe(wanted);
}
