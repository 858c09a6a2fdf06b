import { lstatSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { COMMANDS } from '../../src/cli/commands.ts';
import { plainJobFile } from '../helpers/disk/job-file.ts';
import { runHere } from '../helpers/disk/run-here.ts';

let folder = '';
let job = '';
beforeEach(() => {
	folder = mkdtempSync(join(tmpdir(), 'pullbook-home-'));
	job = join(folder, 'bar.json');
	writeFileSync(job, JSON.stringify(plainJobFile()));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** Every file and folder below this one, with what others than its owner may do with it. */
function openToOthers(below: string): string[] {
	return readdirSync(below, { recursive: true, encoding: 'utf8' })
		.map((name) => join(below, name))
		.filter((path) => (lstatSync(path).mode & 0o077) !== 0);
}

const QUIT = '{"ready":true}\n{"quit":true}\n';

describe('a home', () => {
	it.each([
		['layout', (file: string) => [file]],
		['bend', (file: string) => [file, '--lines']],
		['practice', (file: string) => [file, '--auto']],
		['log', () => []],
		['bender', () => ['bay two', '--clr', '6 in', '--die', 'six']],
	] as const)(
		'that is a file, or lies below one, ends %s with exit code 2 and says what to give',
		async (command, args) => {
			expect(COMMANDS[command]).toBeDefined();
			const file = join(folder, 'file');
			writeFileSync(file, 'mine');
			for (const home of [file, join(file, 'below')]) {
				const run = await runHere([command, ...args(job)], { home, input: QUIT });
				expect(run).toMatchObject({ code: 2, out: '' });
				expect(run.err).toContain(`${home} is no folder: give a folder to keep settings and logs in with --home DIR.`);
			}
			expect(readdirSync(folder).sort()).toEqual(['bar.json', 'file']);
		},
	);

	it('and all that is kept in it are for their owner alone, whichever command made them first', async () => {
		const made = (name: string) => join(folder, name, 'deeper');
		const [bent, set, taken] = [made('bent'), made('set'), made('taken')];
		await runHere(['bend', job, '--lines'], { home: bent, input: QUIT });
		await runHere(['bender', 'bay two', '--die', 'six', '--clr', '6 in'], { home: set });
		await runHere(['log', 'export', join(folder, 'stick')], { home: bent });
		await runHere(['log', 'import', join(folder, 'stick')], { home: taken });
		for (const home of ['bent', 'set', 'taken'].map((name) => join(folder, name))) {
			expect(readdirSync(join(home, 'deeper')).length).toBeGreaterThan(0);
			expect([home, ...openToOthers(home)].filter((path) => (lstatSync(path).mode & 0o077) !== 0)).toEqual([]);
		}
	});

	it('that others can read already keeps its logs from them', async () => {
		const home = join(folder, 'open');
		mkdirSync(home, { mode: 0o755 });
		await runHere(['bend', job, '--lines'], { home, input: QUIT });
		expect(readdirSync(home)).toContain('sessions');
		expect(openToOthers(home)).toEqual([]);
	});
});
