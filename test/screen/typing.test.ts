import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, test } from 'vitest';
import { sample } from '../helpers/sample-size.ts';
import { builtApp } from '../helpers/screen/built-app.ts';
import { Pty } from '../helpers/screen/pty.ts';

const TIMES = sample(6, 40);
const GAPS = [0, 1, 3, 8, 20];
const { app, remove } = await builtApp();
afterAll(remove);

/** Typed into the reading field, and into the text field of a note, which is the first thing under `*`. */
const READING = [...'12.5'];
const NOTE = (enter: string) => ['*', '1', enter, ...'12.5'];
const READ = { action: { do: 'angles', angles: [12.5] } };
const NOTED = { action: null, note: '12.5' };

describe.concurrent('a digital instrument, or fast fingers, in a real pseudo-terminal', () => {
	test.for([
		['as a newline', '\n'],
		['in application mode', '\x1bOM'],
	] as const)(
		'no key is lost at any speed, Enter of the numeric pad %s',
		{ timeout: 240_000 },
		async ([, enter], { expect }) => {
			const folder = mkdtempSync(join(tmpdir(), 'typing-'));
			const file = join(folder, 'answers.json');
			const pty = new Pty(process.execPath, [app, file]);
			try {
				await pty.until('Measure the bend');
				let entries = 0;
				for (const gap of GAPS) {
					const keys = [...READING, enter, ...NOTE(enter), enter];
					await pty.type(Array.from({ length: TIMES }, () => keys).flat(), gap);
					entries += 2 * TIMES;
					await pty.until(`Saved as line ${entries}:`);
				}
				pty.write('\x03');
				expect(await pty.ended).toEqual({ exitCode: 130, signal: 0 });
				const answers: unknown[] = JSON.parse(readFileSync(file, 'utf8'));
				const rounds = GAPS.map((_, at) => answers.slice(2 * TIMES * at, 2 * TIMES * (at + 1)));
				const right = Array.from({ length: TIMES }, () => [READ, NOTED]).flat();
				expect(rounds).toEqual(GAPS.map(() => right));
			} finally {
				pty.kill();
				rmSync(folder, { recursive: true });
			}
		},
	);
});
