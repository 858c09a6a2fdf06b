import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { COMMANDS } from '../../src/cli/commands.ts';
import { TOPICS } from '../../src/words/topics/index.ts';
import { runHere } from '../helpers/disk/run-here.ts';

/** Those that need neither terminal nor shell; what is printed or played takes long and has tests of its own. */
const TRIED = new Set(['layout', 'check', 'cut', 'bender', 'log', 'schema', 'help', 'completion']);
const examples = new Set(
	[...Object.values(COMMANDS), ...Object.values(TOPICS)]
		.flatMap((page) => page.examples.map(([line]) => line))
		.filter((line) => TRIED.has(line.split(' ')[1] ?? '') && !/[;&"]/.test(line)),
);

const folder = mkdtempSync(join(tmpdir(), 'pullbook-examples-'));
const home = join(folder, 'home');
let ids: string[] = [];

beforeAll(async () => {
	for (const input of ['{"ready":true}\n{"quit":true}\n', '{"scrap":"kinked"}\n']) {
		await runHere(['bend', 'jobs/bow-rail.json', '--lines'], { input, home });
	}
	ids = JSON.parse((await runHere(['log', '--json'], { home })).out).map(({ id }: { id: string }) => id);
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** As a shell hands it on, with the samples and a session in place of what a page of help leaves open. */
function asTyped(line: string): string[] {
	const left = [...ids];
	return line
		.split(' ')
		.slice(1)
		.flatMap((word) => (word === 'jobs/*.json' ? ['jobs/bow-rail.json', 'jobs/mast-brace.json'] : [word]))
		.map((word) => (word === 'ID' ? left.shift()! : word === 'JOB' ? 'jobs/bow-rail.json' : word))
		.map((word) => (word === '/media/stick' || word === 'DIR' ? join(folder, 'stick') : word))
		.map((word) => (word.endsWith('.pdf') ? join(folder, word) : word));
}

describe('the examples of help', () => {
	it('are many', () => {
		expect(examples.size).toBeGreaterThan(35);
	});

	it.each([...examples])('%s does what it says', async (line) => {
		const { code, err } = await runHere(asTyped(line), { home });
		expect(code, err).toBe(0);
	});
});
