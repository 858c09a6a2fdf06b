import { readFileSync, writeFileSync } from 'node:fs';
import type { Size } from '../../../src/terminal/output.ts';
import type { ShownScreen } from './shown-screen.ts';

/**
 * Screens kept as text, one file a page and size, compared letter by letter. To write them anew after a change that is wanted:
 * `PULLBOOK_SCREENS=write npx vitest run --config .ci/vitest.config.ts test/screen`, then read what `git diff` shows.
 */
const WRITING = process.env.PULLBOOK_SCREENS === 'write';

/** How long the last keys may take to show; with the screen that is wanted nobody waits. */
const LATE_MS = 3000;

function fileOf(name: string, { columns, rows }: Size): URL {
	return new URL(`../../fixtures/screens/${name}-${columns}x${rows}.txt`, import.meta.url);
}

/** What is kept of a page at that size; `shown` is written down first where that is asked for. */
export function keptText(shown: string, name: string, size: Size): string {
	const file = fileOf(name, size);
	if (WRITING) writeFileSync(file, `${shown}\n`);
	return readFileSync(file, 'utf8').trimEnd();
}

/** What is wanted, as its frame was kept, and what a terminal shows, once it is shown or has been waited for. */
export async function screenAsKept(terminal: ShownScreen, name: string, size: Size) {
	const wanted = readFileSync(fileOf(name, size), 'utf8').trimEnd();
	await terminal.until((text) => text === wanted, LATE_MS).catch(() => undefined);
	return { wanted, shown: terminal.text };
}
