/**
 * How long a person waits for the program, as a multiple of what Node itself takes to start and stop. Ratios within one
 * run are compared, since the times of one machine say little about another. Exit code 1 when a limit is passed.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { timeInTerminal } from './in-terminal.ts';
import { interleave, type Measurement, table } from './rounds.ts';

const ROUNDS = 21;
/** Longer than any start; only a program that hangs gets there. */
const GIVE_UP_MS = 20_000;

const root = fileURLToPath(new URL('../..', import.meta.url));
const program = join(root, '.build', 'pullbook.js');
const home = mkdtempSync(join(tmpdir(), 'pullbook-bench-'));
const env = { ...process.env, PULLBOOK_HOME: home, TERM: 'xterm-256color', CI: 'false' };

const jobs = readdirSync(join(root, 'jobs'))
	.filter((name) => name.endsWith('.json'))
	.map((name) => join(root, 'jobs', name));
const jobNames = jobs.map((path): string => JSON.parse(readFileSync(path, 'utf8')).name);

/** Milliseconds from the start of Node to its end. */
async function timeRun(args: readonly string[]): Promise<number> {
	const start = performance.now();
	const { status, stderr } = spawnSync(process.execPath, [...args], {
		cwd: root,
		env,
		stdio: ['ignore', 'pipe', 'pipe'],
	});
	const taken = performance.now() - start;
	if (status !== 0) throw new Error(`node ${args.join(' ')} ended with ${status}: ${stderr}`);
	return taken;
}

/** A session left at its first pull, whose home is a folder of its own. Gives its id. */
function sessionAtPull(folder: string): string {
	const { stdout, stderr } = spawnSync(process.execPath, [program, 'bend', jobs[0]!, '--lines', '--home', folder], {
		cwd: root,
		env,
		input: '{"ready":true}\n',
		encoding: 'utf8',
	});
	const id = /"id":"([\w-]+)"/.exec(stdout)?.[1];
	if (id === undefined || !stdout.includes('"ask":"pull"')) throw new Error(`No session came to a pull: ${stderr}`);
	return id;
}

/** Milliseconds from the start of Node to one of `wanted` on the screen. */
const timeFirstFrame = (args: readonly string[], wanted: readonly string[], keys = ''): Promise<number> =>
	timeInTerminal({ args: [program, ...args], cwd: root, home, keys, giveUpMs: GIVE_UP_MS }, wanted);

const pulls = mkdtempSync(join(tmpdir(), 'pullbook-bench-pull-'));
const pulled = sessionAtPull(pulls);

/** A job of 60 bends with checks from end to end: what takes more than its share of time with many bends shows here. */
function jobOfMany(folder: string): string {
	const bends = Array.from({ length: 60 }, (_, i) => ({
		straight: 8 + (i % 5),
		angle: 20 + ((7 * i) % 30),
		rotation: [180, 90, -90, 180, 35][i % 5],
	}));
	const checks = [
		{ name: 'apart', span: { from: { bend: 1 }, to: { bend: 60 } } },
		{ name: 'legs', angle: { between: [1, 61] } },
	];
	const tube = { material: '1020-dom', od: 1, wall: 0.065 };
	const tooling = { clr: 4, clamp: 3, follow: 1 };
	const job = { pullbook: 'job/1', name: 'Many bends', units: 'in', tube, tooling, shape: { bends, last: 10 }, checks };
	const path = join(folder, 'many.json');
	writeFileSync(path, JSON.stringify(job));
	return path;
}
const many = jobOfMany(home);

const measurements: Measurement[] = [
	{ name: 'node -e 0', limit: null, run: () => timeRun(['-e', '0']) },
	{ name: 'layout --json', limit: 2, run: () => timeRun([program, 'layout', jobs[0]!, '--json']) },
	{ name: 'layout of 60 bends', limit: 7, run: () => timeRun([program, 'layout', many, '--json']) },
	{ name: 'home screen, first frame', limit: 3.5, run: () => timeFirstFrame([], jobNames) },
	{
		name: 'session, first frame',
		limit: 3.5,
		run: () => timeFirstFrame(['bend', jobs[0]!, '--resume', pulled, '--home', pulls], ['Session goes on']),
	},
	{
		name: 'session, pull on the screen',
		limit: 3.5,
		run: () => timeFirstFrame(['bend', jobs[0]!, '--resume', pulled, '--home', pulls], ['Pull 1'], '+'),
	},
];

try {
	const results = await interleave(measurements, ROUNDS);
	console.log(table(results).join('\n'));
	process.exitCode = results.every(({ within }) => within) ? 0 : 1;
} finally {
	for (const folder of [home, pulls]) rmSync(folder, { recursive: true, force: true });
}
