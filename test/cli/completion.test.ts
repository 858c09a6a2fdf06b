import { spawnSync } from 'node:child_process';
import { chmodSync, cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Candidate, candidates, type KnownNames } from '../../src/cli/completion/candidates.ts';
import { SCRIPTS } from '../../src/cli/completion/scripts.ts';
import { openSettings } from '../../src/settings/settings.ts';
import { bendIn } from '../helpers/disk/kept-home.ts';
import { PROGRAM, SAMPLE_JOBS } from '../helpers/disk/program.ts';
import { Pty } from '../helpers/screen/pty.ts';

const list = (...values: string[]): Candidate[] => values.map((value) => ({ value, says: '' }));

const KNOWN: KnownNames = {
	sessions: (open) => (open ? list('20260102-open') : list('20260102-open', '20260101-done')),
	benders: () => list('shop', 'big one'),
	dies: (bender) => (bender === 'shop' ? list('five') : list('five', 'six')),
	jobs: () => list('jobs/bow-rail.json', 'jobs/mast-brace.json'),
	folders: () => list('tubes/', 'sticks/'),
	topics: () => list('keys'),
};

const offered = (line: string): string[] => candidates(line.split(' ').slice(1), KNOWN).map(({ value }) => value);

describe('what may be typed next', () => {
	it.each([
		['pullbook be', ['bend', 'bender']],
		['pullbook t', ['tubes/']],
		['pullbook bend ', ['jobs/bow-rail.json', 'jobs/mast-brace.json']],
		['pullbook bend jobs/m', ['jobs/mast-brace.json']],
		['pullbook bend jobs/bow-rail.json ', []],
		['pullbook bend jobs/bow-rail.json --resu', ['--resume']],
		['pullbook bend jobs/bow-rail.json --resume ', ['20260102-open']],
		['pullbook bend --resume ', ['20260102-open', 'jobs/bow-rail.json', 'jobs/mast-brace.json']],
		['pullbook bend --rescue s', ['sticks/']],
		['pullbook bend --rescue sticks/ jobs/b', ['jobs/bow-rail.json']],
		['pullbook bend jobs/bow-rail.json --from ', ['start', 'far']],
		['pullbook check jobs/bow-rail.json jobs/m', ['jobs/mast-brace.json']],
		['pullbook log ', ['last', 'verify', 'export', 'import', '20260102-open', '20260101-done']],
		['pullbook log import ', ['tubes/', 'sticks/']],
		['pullbook log verify ', []],
		['pullbook log export tubes/ ', []],
		['pullbook bender b', ['big one']],
		['pullbook bender shop --die ', ['five']],
		['pullbook bender --units ', ['in', 'mm']],
		['pullbook help k', ['keys']],
		['pullbook completion ', ['bash', 'zsh', 'fish']],
		['pullbook --home x log verify ', []],
		['pullbook nothing-of-ours ', []],
	])('%s', (line, values) => {
		expect(offered(line)).toEqual(values);
	});
});

const folder = mkdtempSync(join(tmpdir(), 'completion-'));
const home = join(folder, 'home');
const env = { ...process.env, PULLBOOK_HOME: home, PATH: `${join(folder, 'bin')}${delimiter}${process.env.PATH}` };
let id = '';

beforeAll(async () => {
	mkdirSync(join(folder, 'bin'));
	writeFileSync(join(folder, 'bin', 'pullbook'), `#!/bin/sh\nexec "${process.execPath}" "${PROGRAM}" "$@"\n`);
	chmodSync(join(folder, 'bin', 'pullbook'), 0o755);
	mkdirSync(join(folder, 'jobs'));
	cpSync(SAMPLE_JOBS.find((path) => path.includes('bow-rail'))!, join(folder, 'jobs', 'bow-rail.json'));
	cpSync(join(folder, 'jobs', 'bow-rail.json'), join(folder, 'jobs', 'bow rail 2.json'));
	for (const [shell, script] of Object.entries(SCRIPTS)) writeFileSync(join(folder, `script.${shell}`), script);
	id = bendIn(home, { day: 1, answers: 3 }).id;
	await openSettings(home).setMachine('big one', { units: 'in', fields: { maxAngle: 120 } });
});
afterAll(() => rmSync(folder, { recursive: true }));

const isThere = (shell: string) => spawnSync(shell, ['-c', 'true']).error === undefined;

/** What is typed before the key for completion, and what the line reads after it. `ID` is the kept session's. */
const LINES = [
	['pullbook lay', 'pullbook layout '],
	['pullbook log 2026', 'pullbook log ID '],
	['pullbook bend jobs/bow-', 'pullbook bend jobs/bow-rail.json '],
	['pullbook bend jobs/bow\\ ', 'pullbook bend jobs/bow\\ rail\\ 2.json '],
	['pullbook bend jobs/bow-rail.json --resume 2', 'pullbook bend jobs/bow-rail.json --resume ID '],
	['pullbook bender big', 'pullbook bender big\\ one '],
	['pullbook log export ho', 'pullbook log export home/'],
] as const;

/** How each shell starts with the script and nothing of the user's own; `$ ` is what it says when it waits for a line. */
const STARTS: Readonly<Record<keyof typeof SCRIPTS, { args: string[]; setUp: string }>> = {
	bash: { args: ['--norc', '--noprofile', '-i'], setUp: ". ./script.bash; PS1='ready> '" },
	zsh: { args: ['-f', '-i'], setUp: "autoload -U compinit; compinit -u -D; . ./script.zsh; PS1='ready> '" },
	fish: {
		args: ['--no-config', '-i'],
		setUp: "source ./script.fish; function fish_prompt; echo -n 'ready> '; end; function fish_greeting; end",
	},
};

describe.each(Object.keys(SCRIPTS) as (keyof typeof SCRIPTS)[])('in %s itself', (shell) => {
	it.runIf(isThere(shell))(
		'the key for completion writes jobs, sessions and benders',
		{ timeout: 60_000 },
		async () => {
			const { args, setUp } = STARTS[shell];
			const pty = new Pty(shell, args, {
				cwd: folder,
				env: { ...env, TERM: 'xterm', LC_ALL: 'C.UTF-8' },
				columns: 100,
			});
			pty.write(`${setUp}\r`);
			await pty.until('ready>');
			for (const [typed, right] of LINES) {
				pty.write(`${typed}\t`);
				await pty.until(`ready> ${right.replace('ID', id)}`.trimEnd());
				// The line is emptied.
				pty.write('\x15');
			}
			pty.kill();
			await pty.ended;
		},
	);
});
